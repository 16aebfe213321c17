using System.Collections.Immutable;

namespace PatternForge.Core.Model;

/// <summary>What the words around a yarn's letters say of it.</summary>
public enum YarnSaid
{
    /// <summary>Nothing that is a common way to put it.</summary>
    Beside,

    /// <summary>It is worked with from here: "with B", "join B".</summary>
    Use,

    /// <summary>It comes after what has just been worked: "change to B".</summary>
    Change,

    /// <summary>It is cut, left or carried.</summary>
    Off,
}

/// <summary>The letters of a yarn where they stand in a text.</summary>
/// <param name="At">Where they begin.</param>
/// <param name="Label">The letters.</param>
/// <param name="Said">What the words before them say.</param>
public readonly record struct YarnMention(int At, string Label, YarnSaid Said)
{
    private const int MostText = 20_000;

    /// <summary>The letters of the header's yarns; empty where there are not at least two that can be found in words.</summary>
    /// <param name="facts">The header.</param>
    public static ImmutableArray<string> Labels(PatternFacts facts)
    {
        if (facts.Yarns.Length < 2)
        {
            return [];
        }

        ImmutableArray<string> labels = [.. facts.Yarns.Select(y => y.Label).OfType<string>().Where(l => l.Length > 0)];
        return labels.Length > 1 && labels.All(l => l.Length < 12 && l.All(char.IsLetterOrDigit)) && labels.Distinct(StringComparer.Ordinal).Count() == labels.Length ? labels : [];
    }

    /// <summary>The mentions in a text, in their order.</summary>
    /// <param name="text">The text.</param>
    /// <param name="labels">The letters of the header's yarns.</param>
    public static ImmutableArray<YarnMention> In(ReadOnlySpan<char> text, ImmutableArray<string> labels)
    {
        var mentions = ImmutableArray.CreateBuilder<YarnMention>();
        var (last, before, touches) = ("", "", false);
        for (var at = 0; at < Math.Min(text.Length, MostText);)
        {
            if (!char.IsLetterOrDigit(text[at]))
            {
                touches &= text[at] is ' ' or '\t' or '\r' or '\n' or '(' or '-' or '"' or '“' or '*' or '_' or '[';
                at++;
                continue;
            }

            var end = at;
            while (end < text.Length && char.IsLetterOrDigit(text[end]))
            {
                end++;
            }

            var word = text[at..end];
            if (LabelOf(word, labels) is { } label)
            {
                var said = touches ? Words(before, last) : YarnSaid.Beside;
                if (said != YarnSaid.Beside || !IsArticle(label, text[end..]))
                {
                    mentions.Add(new YarnMention(end - label.Length, label, said));
                }
            }
            else if (word.Length < 16 && Array.IndexOf(Between, word.ToString().ToLowerInvariant()) < 0)
            {
                (before, last, touches) = (touches ? last : "", word.ToString().ToLowerInvariant(), true);
            }

            at = end;
        }

        return mentions.ToImmutable();
    }

    // Words between the verb and the letters.
    private static readonly string[] Between = ["color", "colour", "yarn", "shade", "the", "and", "main", "contrast"];

    private static string? LabelOf(ReadOnlySpan<char> word, ImmutableArray<string> labels)
    {
        foreach (var label in labels)
        {
            if (word.EndsWith(label, StringComparison.Ordinal) && (word.Length == label.Length || char.IsAsciiDigit(word[^(label.Length + 1)])))
            {
                return label;
            }
        }

        return null;
    }

    private static YarnSaid Words(string before, string last) => last switch
    {
        "with" or "using" or "in" or "join" or "joining" or "rejoin" or "rejoining" or "attach" or "attaching" => YarnSaid.Use,
        "to" when before is "change" or "changing" or "switch" or "switching" or "back" or "return" or "returning" => YarnSaid.Change,
        "off" or "cut" or "cutting" or "break" or "breaking" or "drop" or "dropping" or "leave" or "leaving" or "carry" or "carrying" or "fasten" => YarnSaid.Off,
        _ => YarnSaid.Beside,
    };

    /// <summary>"A stitch": no yarn.</summary>
    private static bool IsArticle(string label, ReadOnlySpan<char> rest) => label is "A" or "I" && rest.Length > 1 && rest[0] == ' ' && char.IsAsciiLetterLower(rest[1]);
}

/// <summary>What a row of a pattern in several yarns says of the yarn that it is worked with.</summary>
/// <param name="First">The letters of the yarn of its stitches; null where it goes on with the one in hand.</param>
/// <param name="Names">The yarns between which it changes from stitch to stitch; empty where it is worked with one.</param>
/// <param name="Last">The yarn in hand when it is done; null where the row leaves the one that it was worked with.</param>
/// <param name="IsSure">False where its words may say something else.</param>
public sealed record RowYarns(string? First, ImmutableArray<string> Names, string? Last, bool IsSure)
{
    /// <summary>False for a line that makes no stitches of a row: a ring, a foundation chain, words on the yarn.</summary>
    public bool HasStitches { get; init; } = true;

    /// <summary>The same for a part of the row: what is said of the whole is not sure of a part.</summary>
    public RowYarns OfPart() => First is null && Last is null && Names.IsEmpty ? this : this with { IsSure = false };
}
