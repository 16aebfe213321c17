using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using CsCheck;

namespace PatternForge.Tests.Work;

/// <summary>How the same row is put on paper: in whose terms, and all the differences that mean nothing.</summary>
internal sealed record MetamorphicStyle
{
    private static readonly (string, string)[] Brackets = [("[", "]"), ("(", ")")];

    public static MetamorphicStyle Plain { get; } = new();

    /// <summary>Any way of writing that means the same.</summary>
    public static Gen<MetamorphicStyle> Any { get; } =
        Gen.Select(
            Gen.Select(Gen.Int[0, 3], Gen.Bool, Gen.Int[0, 1], Gen.Int[0, 4]),
            Gen.Select(Gen.Int[0, 4], MetamorphicRows.OneOf(" ", "\u00A0", "  ", "\u2009", "\u202F"), MetamorphicRows.OneOf("–", "—", "-", "−"), Gen.Bool),
            Gen.Select(MetamorphicRows.OneOf(", ", ",", " , ", ",  ", ",\u00A0"), Gen.Bool, MetamorphicRows.OneOf("'", "’", "′"), Gen.Bool),
            Gen.Select(Gen.Bool, MetamorphicRows.OneOf("to end", "across", "to the end", "to end of row")),
            (a, b, c, d) => new MetamorphicStyle
            {
                Letters = a.Item1,
                NumberApart = a.Item2,
                GroupBrackets = Brackets[a.Item3],
                SizeLists = a.Item4,
                Star = b.Item1 switch { 0 => "*", 1 => "* ", 2 => "∗", 3 => "＊ ", _ => "⁎" },
                Space = b.Item2,
                Dash = b.Item3,
                Stop = b.Item4,
                Comma = c.Item1,
                TogApart = c.Item2,
                Apostrophe = c.Item3,
                LabelStop = c.Item4,
                WholeWords = d.Item1,
                ToEnd = d.Item2,
            });

    /// <summary>The names of the stitches; null leaves those of the words.</summary>
    public IReadOnlyDictionary<string, string>? Names { get; init; }

    /// <summary>0 as a sentence, 1 capitals, 2 small letters, 3 as it is.</summary>
    public int Letters { get; init; }

    /// <summary>"K 2" for "k2".</summary>
    public bool NumberApart { get; init; }

    /// <summary>"k2 tog" for "k2tog".</summary>
    public bool TogApart { get; init; }

    public (string Open, string Close) GroupBrackets { get; init; } = ("[", "]");

    /// <summary>0 "5 (6, 7)", 1 "5 [6, 7]", 2 "5(6,7)", 3 "5 (6: 7)", 4 "5 (6-7)".</summary>
    public int SizeLists { get; init; }

    public string Star { get; init; } = "*";

    public string Space { get; init; } = " ";

    public string Dash { get; init; } = "—";

    public string Comma { get; init; } = ", ";

    /// <summary>"repeat" and "stitches" for "rep" and "sts".</summary>
    public bool WholeWords { get; init; }

    /// <summary>"to end" or another word for it.</summary>
    public string ToEnd { get; init; } = "to end";

    /// <summary>"–" for the sizes in which nothing is worked.</summary>
    public string Nothing { get; init; } = "0";

    public string Apostrophe { get; init; } = "'";

    public bool Stop { get; init; } = true;

    /// <summary>"Row 2." for "Row 2:".</summary>
    public bool LabelStop { get; init; }

    public string Words(string words, ImmutableArray<int>? numbers = null)
    {
        var said = new StringBuilder(words);
        foreach (var (name, meant) in Names ?? ImmutableDictionary<string, string>.Empty)
        {
            said.Replace("{" + name + "}", meant);
        }

        said.Replace("{", "").Replace("}", "");
        if (TogApart)
        {
            said.Replace("k2tog", "k2 tog").Replace("p2tog", "p2 tog");
        }

        if (NumberApart)
        {
            said.Replace("k#", "k #").Replace("p#", "p #").Replace("k1", "k 1").Replace("p1", "p 1");
        }

        return said.Replace("#", numbers is { } n ? List(n) : "").Replace(", ", Comma).ToString();
    }

    public string Join(IEnumerable<MadePart> parts) => string.Join(Comma, parts.Select(p => p.Write(this)));

    public string Group(string inner) => GroupBrackets.Open + inner + GroupBrackets.Close;

    /// <summary>"to end" or "to last 3 (4, 5) sts, ...".</summary>
    public string Until(ImmutableArray<MadePart> tail, int sizes) =>
        tail.IsEmpty ? ToEnd : $"to last {Stitches([.. Enumerable.Range(0, sizes).Select(s => MadePart.Takes(tail, s))])}{Comma}{Join(tail)}";

    /// <summary>A number for each size; one alone where all are alike.</summary>
    public string List(ImmutableArray<int> values)
    {
        var texts = values.Select(v => v == 0 ? Nothing : v.ToString(CultureInfo.InvariantCulture)).ToArray();
        return values.All(v => v == values[0])
            ? texts[0]
            : SizeLists switch
            {
                1 => $"{texts[0]} [{string.Join(", ", texts[1..])}]",
                2 => $"{texts[0]}({string.Join(",", texts[1..])})",
                3 => $"{texts[0]} ({string.Join(": ", texts[1..])})",
                4 => $"{texts[0]} ({string.Join("-", texts[1..])})",
                _ => $"{texts[0]} ({string.Join(", ", texts[1..])})",
            };
    }

    /// <summary>The whole row with its label, as it stands in the file.</summary>
    public string Label(string label, string row) => (Letters == 1 ? label.ToUpperInvariant() : Letters == 2 ? label.ToLowerInvariant() : label) + (LabelStop ? ". " : ": ") + row;

    public string Finish(string row, string count) => Case(WholeWords ? (row + count).Replace(" sts", " stitches", StringComparison.Ordinal).Replace("rep from", "repeat from", StringComparison.Ordinal) : row + count).Replace(" ", Space, StringComparison.Ordinal) + (Stop ? "." : "");

    private string Stitches(ImmutableArray<int> n) => n.All(v => v == 1) ? "st" : $"{List(n)} sts";

    private string Case(string text)
    {
        if (Letters is 1 or 2)
        {
            return Letters == 1 ? text.ToUpperInvariant() : text.ToLowerInvariant();
        }

        var first = text.AsSpan().IndexOfAnyInRange('a', 'z');
        return Letters == 3 || first is < 0 or > 2 ? text : text[..first] + char.ToUpperInvariant(text[first]) + text[(first + 1)..];
    }
}
