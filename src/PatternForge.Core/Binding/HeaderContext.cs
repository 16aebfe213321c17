using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>What the binders of the header's parts share: the source, the bag, the sizes, and the ways to read a node.</summary>
internal sealed class HeaderContext(SourceText source, FindingBag bag)
{
    private readonly List<string> _unread = [];
    private readonly HashSet<string> _damaged = new(StringComparer.Ordinal);

    /// <summary>The file.</summary>
    public SourceText Source { get; } = source;

    /// <summary>What has been found.</summary>
    public FindingBag Bag { get; } = bag;

    /// <summary>The rule for a key that nobody knows.</summary>
    public Rule KeyRule { get; init; } = HeaderRules.UnknownKey;

    /// <summary>What the keys of the outermost level belong to, for messages.</summary>
    public string Whole { get; init; } = "the header";

    /// <summary>The sizes, once they are read.</summary>
    public SizeSet Sizes { get; set; } = SizeSet.One;

    /// <summary>False when the sizes could not be made out: lists of values are then not counted.</summary>
    public bool SizesKnown { get; set; } = true;

    /// <summary>What formulas may call by name; null where no formulas are read.</summary>
    public NumberBook? Numbers { get; set; }

    /// <summary>Reads a file that the header names; null where nobody reads.</summary>
    public Func<string, string?>? ReadFile { get; init; }

    /// <summary>Keys whose value could not be made out.</summary>
    public ImmutableArray<string> Unread => [.. _unread.Distinct(StringComparer.Ordinal)];

    /// <summary>Notes that a key's value could not be made out.</summary>
    public void GiveUp(string path) => _unread.Add(path);

    /// <summary>Notes that a key of the header could not be read to its end: what seems to be of the wrong kind in it is what was left of it.</summary>
    public void Damage(string key)
    {
        _damaged.Add(key);
        GiveUp(key);
    }

    /// <summary>True when a key's value could not be made out.</summary>
    public bool HasGivenUp(string path) => _unread.Contains(path);

    /// <summary>Adds a finding.</summary>
    public void Report(Rule rule, TextSpan span, string message, string? help = null) => Bag.Add(rule, span, message, help);

    /// <summary>The entries of a map whose keys are known, each with its plain key. Others are reported with the nearest known key.</summary>
    public IEnumerable<(string Key, HeaderEntry Entry)> Known(HeaderMap map, KeySet keys)
    {
        var seen = new Dictionary<string, HeaderEntry>(StringComparer.Ordinal);
        foreach (var entry in map.Entries)
        {
            if (keys.Find(entry.Name) is not { } key)
            {
                UnknownKey(entry, keys);
            }
            else if (!seen.TryAdd(key, entry))
            {
                Bag.Add(new Finding(SyntaxRules.DuplicateKey, Source, entry.Key.Span, $"`{entry.Name}` says the same as `{seen[key].Name}`")
                {
                    Labels = [new Label(seen[key].Key.Span, "it stands here first; this one was read")],
                    Help = "keep one of the two",
                });
            }
            else if (entry.Value is not HeaderScalar { IsBlank: true })
            {
                yield return (key, entry);
            }
        }
    }

    private void UnknownKey(HeaderEntry entry, KeySet keys)
    {
        var near = Suggest.Nearest(KeySet.Plain(entry.Name), keys.Words, 2);
        var where = keys.Path.Length == 0 ? Whole : $"`{keys.Path}`";
        var said = entry.Name.Length > 60 ? entry.Name[..60] + "…" : entry.Name;
        var finding = new Finding(KeyRule, Source, entry.Key.Span, $"`{said}` is no key of {where}");
        if (near.Count > 0)
        {
            GiveUp(keys.PathOf(keys.Find(near[0])!));
            finding = finding with
            {
                Help = $"did you mean `{near[0]}`?",
                Fix = near.Count == 1 ? new Fix($"Write `{near[0]}`", [new Edit(entry.Key.Span, near[0])]) : null,
            };
        }
        else if (entry.Value is HeaderScalar { IsBlank: true } && entry.Name.Contains(' ', StringComparison.Ordinal))
        {
            finding = finding with { Help = "if it belongs to the text before it, put that text in quotes" };
        }
        else if (keys.Path.Length > 0)
        {
            finding = finding with { Help = $"the keys here are {Listed(keys.Names)}" };
        }

        Bag.Add(finding);
    }

    /// <summary>"a, b and c", each in backticks.</summary>
    public static string Listed(IReadOnlyList<string> words, string last = "and")
    {
        var quoted = words.Select(w => $"`{w}`").ToArray();
        return quoted.Length == 1 ? quoted[0] : $"{string.Join(", ", quoted[..^1])} {last} {quoted[^1]}";
    }

    /// <summary>The text of a node; null where it says nothing or is no text, which is reported.</summary>
    public string? Text(HeaderNode node, string path) => Scalar(node, path)?.Text.Trim() is { Length: > 0 } text ? text : null;

    /// <summary>The node as a text; null where it is a list or a map, which is reported.</summary>
    public HeaderScalar? Scalar(HeaderNode node, string path, string wanted = "one text")
    {
        if (node is HeaderScalar scalar)
        {
            return scalar;
        }

        WrongKind(node, path, wanted);
        return null;
    }

    /// <summary>The node as a map; null where it is none, which is reported.</summary>
    public HeaderMap? Map(HeaderNode node, string path, string example)
    {
        if (node is HeaderMap map)
        {
            return map;
        }

        if (node is not HeaderScalar { IsBlank: true })
        {
            WrongKind(node, path, "keys with values", example);
        }

        return null;
    }

    /// <summary>Reports a node of the wrong kind.</summary>
    public void WrongKind(HeaderNode node, string path, string wanted, string? example = null)
    {
        if (_damaged.Contains(path.Split('.')[0]))
        {
            return;
        }

        GiveUp(path);
        var got = node switch { HeaderList => "a list", HeaderMap => "keys with values", _ => "a text" };
        Report(HeaderRules.WrongKind, FirstLine(node.Span), $"`{path}` wants {wanted}, but here stands {got}", example is null ? null : $"write it as {example}");
    }

    /// <summary>The items of a list; a single text or map counts as a list of one, nothing as none.</summary>
    public static ImmutableArray<HeaderNode> Items(HeaderNode node) => node switch
    {
        HeaderList list => [.. list.Items.Where(i => i is not HeaderScalar { IsBlank: true })],
        HeaderScalar { IsBlank: true } => [],
        _ => [node],
    };

    /// <summary>
    /// An item that is meant as text: a scalar, or a map of one unknown key and a text ("circular: 80 cm"), which is text with a colon. Null otherwise.
    /// </summary>
    public string? PlainText(HeaderNode node, KeySet keys) => node switch
    {
        HeaderScalar { IsBlank: false } scalar => scalar.Text.Trim(),
        HeaderMap { Entries: [{ Value: HeaderScalar { IsBlank: false } } entry] } when keys.Find(entry.Name) is null && Suggest.Nearest(KeySet.Plain(entry.Name), keys.Words, 1).Count == 0 =>
            Source.ToString(entry.Span),
        _ => null,
    };

    /// <summary>A list of texts. One text alone is split at its commas where <paramref name="atCommas"/> says so.</summary>
    public ImmutableArray<Located<string>> Texts(HeaderNode node, string path, bool atCommas = false)
    {
        var texts = ImmutableArray.CreateBuilder<Located<string>>();
        foreach (var item in Items(node))
        {
            if (item is HeaderScalar scalar)
            {
                if (atCommas && node is HeaderScalar)
                {
                    texts.AddRange(SplitAtCommas(scalar));
                }
                else
                {
                    texts.Add(new Located<string>(scalar.Text.Trim(), scalar.Span));
                }
            }
            else if (item is HeaderMap { Entries: [{ Value: HeaderScalar } entry] })
            {
                texts.Add(new Located<string>(Source.ToString(entry.Span), entry.Span));
            }
            else
            {
                WrongKind(item, path, "texts");
            }
        }

        return texts.ToImmutable();
    }

    private static IEnumerable<Located<string>> SplitAtCommas(HeaderScalar scalar)
    {
        var (start, depth) = (0, 0);
        for (var i = 0; i <= scalar.Text.Length; i++)
        {
            var c = i < scalar.Text.Length ? scalar.Text[i] : ',';
            depth += c switch { '(' or '[' => 1, ')' or ']' when depth > 0 => -1, _ => 0 };
            if (i == scalar.Text.Length || (depth == 0 && c is ',' or ';'))
            {
                var part = scalar.Text[start..i];
                if (!string.IsNullOrWhiteSpace(part))
                {
                    var lead = part.Length - part.TrimStart().Length;
                    var said = part.Trim();
                    yield return new Located<string>(said, scalar.SpanOf(start + lead, said.Length));
                }

                start = i + 1;
            }
        }
    }

    /// <summary>A whole number; null where none stands, which is reported.</summary>
    public int? WholeNumber(HeaderNode node, string path)
    {
        if (Scalar(node, path, "a whole number") is not { } scalar)
        {
            return null;
        }

        if (int.TryParse(scalar.Text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            return number;
        }

        GiveUp(path);
        Report(HeaderRules.UnreadableNumber, scalar.Span, $"`{path}` wants a whole number, but says `{Short(scalar.Text)}`");
        return null;
    }

    /// <summary>A text cut to a length that a message can hold.</summary>
    public static string Short(string text)
    {
        var line = text.AsSpan().Trim();
        var end = line.IndexOfAny('\n', '\r');
        line = end < 0 ? line : line[..end];
        return line.Length <= 60 ? line.ToString() : string.Concat(line[..(char.IsHighSurrogate(line[59]) ? 59 : 60)], "…");
    }

    /// <summary>The first line of a span, without blanks at its end.</summary>
    public TextSpan FirstLine(TextSpan span)
    {
        var end = Source.Slice(span).IndexOfAny('\n', '\r');
        return end < 0 ? span : FileSplitter.Trimmed(Source.Text, new TextSpan(span.Start, end));
    }
}
