using System.Buffers;
using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Reference;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>
/// Needles and hooks that a designer names by the number or letter of the other side: "US 7 needles" is "4.5 mm (UK 7) needles" to a British reader, and
/// "UK 8" is "4 mm (US 6)" to an American one. The millimetres lead, as they are the same everywhere; the reader's own name stands behind them where the
/// published tables have one. What the tables cannot decide stays, and is told.
/// </summary>
internal sealed class ToolTermWords(SourceText text, Dialect to, bool isCrochet)
{
    private const int MostSizes = 64;
    private const int Near = 28;

    private static readonly SearchValues<char> Apart = SearchValues.Create("0123456789.;:()");
    private static readonly string[] NeedleWords = ["needle", "dpn", "circular", "straights"];
    private static readonly string[] Leads = ["on", "with", "using"];

    /// <summary>The places of the sizes in the stretches looked at so far: their words are no others'.</summary>
    public List<TextSpan> Places { get; } = [];

    /// <summary>Sizes that no table decides.</summary>
    public List<(TextSpan Place, string Why)> Undecided { get; } = [];

    /// <summary>Finds the sizes of a stretch and says those that are the other side's in the reader's words.</summary>
    public void Look(Stretch stretch, List<Edit> edits)
    {
        if (stretch.Kind is StretchKind.Weight or StretchKind.YarnLabel or StretchKind.Definition)
        {
            return;
        }

        var said = text.ToString(stretch.Span);
        if (said.AsSpan().IndexOfAnyInRange('0', '9') < 0 && !said.Contains("hook", StringComparison.OrdinalIgnoreCase))
        {
            return;
        }

        var sizes = ToolText.Read(said, MostSizes);
        for (var i = 0; i < sizes.Length; i++)
        {
            if (ToolAt(said, sizes[i], stretch.Kind) is not { } isHook)
            {
                continue;
            }

            Places.Add(new TextSpan(stretch.Span.Start + sizes[i].Marks[0].Start, sizes[i].Marks[^1].End - sizes[i].Marks[0].Start));
            if (i + 1 < sizes.Length && AreApart(said, sizes[i], sizes[i + 1]))
            {
                Pair(said, stretch, sizes[i], sizes[i + 1], isHook, edits);
                Places.Add(new TextSpan(stretch.Span.Start + sizes[i + 1].Marks[0].Start, sizes[i + 1].Marks[^1].End - sizes[i + 1].Marks[0].Start));
                i++;
            }
            else
            {
                One(said, stretch, sizes[i], isHook, edits);
            }
        }
    }

    private bool IsForeign(ToolMark mark) => to == Dialect.Uk ? mark.Scale is ToolScale.Us or ToolScale.Letter : mark.Scale is ToolScale.Uk;

    private bool IsReaders(ToolMark mark) => to == Dialect.Uk ? mark.Scale is ToolScale.Uk : mark.Scale is ToolScale.Us or ToolScale.Letter;

    private void One(string said, Stretch stretch, ToolTold told, bool isHook, List<Edit> edits)
    {
        if (!told.Marks.Any(IsForeign) || told.Marks.Any(m => m.Scale is ToolScale.Steel or ToolScale.Japanese or ToolScale.Bare))
        {
            return;
        }

        var (start, end) = (told.Marks[0].Start, told.Marks[^1].End);
        var open = said.AsSpan(start, end - start);
        if (end < said.Length && ((said[end] == ')' && open.Contains('(')) || (said[end] == ']' && open.Contains('['))))
        {
            end++;
        }

        if (told.Mm is null && GoesOn(said, end))
        {
            Leave(stretch, start, end, said, "it is one of several sizes that are told by their numbers");
        }
        else if (Millimetres(told, isHook) is { } mm)
        {
            var now = Said(mm) + (NameOf(said, told, mm, isHook) is { } name ? $" ({name})" : "");
            edits.Add(new Edit(new TextSpan(stretch.Span.Start + start, end - start), now));
            Article(said, stretch, start, mm, edits);
        }
        else if (told.Mm is null)
        {
            Leave(stretch, start, end, said, Readings(told, isHook));
        }
    }

    // "US 7 needles (4.5 mm)", "4.5 mm needles (US 7)": the second stands in brackets by itself, a word or two behind the first.
    private void Pair(string said, Stretch stretch, ToolTold first, ToolTold second, bool isHook, List<Edit> edits)
    {
        var both = new ToolTold([.. first.Marks, .. second.Marks]);
        if (!both.Marks.Any(IsForeign) || both.Mm is not { } mm || Millimetres(both, isHook) is null)
        {
            return;
        }

        var name = NameOf(said, both, mm, isHook);
        var lead = first.Marks[0].Start;
        if (first.Marks.Length > 1 || first.Mm is null)
        {
            edits.Add(new Edit(new TextSpan(stretch.Span.Start + lead, first.Marks[^1].End - lead), Said(mm)));
            Article(said, stretch, lead, mm, edits);
        }

        var (start, end) = (second.Marks[0].Start, second.Marks[^1].End);
        if (name is not null)
        {
            edits.Add(new Edit(new TextSpan(stretch.Span.Start + start, end - start), name));
            return;
        }

        start = said.AsSpan(0, start - 1).TrimEnd().Length;
        edits.Add(new Edit(new TextSpan(stretch.Span.Start + start, end + 1 - start), ""));
    }

    private static bool AreApart(string said, ToolTold first, ToolTold second)
    {
        var (from, at) = (first.Marks[^1].End, second.Marks[0].Start);
        return at - from is > 1 and <= Near && said[at - 1] is '(' && second.Marks[^1].End < said.Length && said[second.Marks[^1].End] == ')'
            && (first.Mm is null) != (second.Mm is null) && said.AsSpan(from, at - 1 - from).IndexOfAny(Apart) < 0;
    }

    /// <summary>The diameter: what is written, unless the number says another one; else the one that the usual charts give to the number.</summary>
    private static decimal? Millimetres(ToolTold told, bool isHook)
    {
        if (told.Mm is { } mm)
        {
            return told.Marks.All(m => m.Scale is ToolScale.Millimetres || ToolSizes.Of(m, isHook) is var sizes && (sizes.IsEmpty || sizes.Contains(mm))) ? mm : null;
        }

        var usual = told.Marks.SelectMany(m => ToolSizes.InUsualCharts(m, isHook)).Distinct().ToArray();
        return usual.Length == 1 ? usual[0] : null;
    }

    // The designer's own name for it where there is one: charts differ, and the designer has chosen.
    private string? NameOf(string said, ToolTold told, decimal mm, bool isHook)
    {
        foreach (var mark in told.Marks)
        {
            if (IsReaders(mark))
            {
                return said[mark.Start..mark.End];
            }
        }

        return ToolSizes.NameIn(mm, isHook, isUk: to == Dialect.Uk);
    }

    private static string Readings(ToolTold told, bool isHook)
    {
        var sizes = told.Marks.SelectMany(m => ToolSizes.InUsualCharts(m, isHook)).Distinct().Order().Select(Said).ToArray();
        return sizes.Length == 0 ? "no published chart has it" : $"published charts give it as {string.Join(" and ", sizes)}";
    }

    // "US 6 (7, 8)", "US 7 or 8", "US 6-8"
    private static bool GoesOn(string said, int end)
    {
        var rest = said.AsSpan(end).TrimStart();
        foreach (var sign in (ReadOnlySpan<string>)["(", "[", ",", "/", "-", "–", "or ", "and ", "to ", "&"])
        {
            if (rest.StartsWith(sign, StringComparison.OrdinalIgnoreCase))
            {
                var next = rest[sign.Length..].TrimStart();
                return next.Length > 0 && char.IsAsciiDigit(next[0]) && !IsOfUnit(next);
            }
        }

        return false;
    }

    private static bool IsOfUnit(ReadOnlySpan<char> number)
    {
        var unit = number.TrimStart("0123456789.,½¼¾ -").TrimStart();
        return unit.StartsWith("mm", StringComparison.OrdinalIgnoreCase) || unit.StartsWith("cm", StringComparison.OrdinalIgnoreCase) || unit.StartsWith("in", StringComparison.OrdinalIgnoreCase) || unit.StartsWith('"');
    }

    private void Leave(Stretch stretch, int start, int end, string said, string why) => Undecided.Add((new TextSpan(stretch.Span.Start + start, end - start), $"`{said[start..end]}` stands as it was written: {why}"));

    // "a US 11 hook" is "an 8 mm hook", and the other way about.
    private static void Article(string said, Stretch stretch, int start, decimal mm, List<Edit> edits)
    {
        var before = said.AsSpan(0, start).TrimEnd(' ');
        var isVowel = decimal.Truncate(mm) is 8 or 11 or 18;
        var word = before[(before.LastIndexOf(' ') + 1)..];
        var (from, now) = word is "an" && !isVowel ? (2, "a") : word is "a" && isVowel ? (1, "an") : (0, "");
        if (from > 0)
        {
            edits.Add(new Edit(new TextSpan(stretch.Span.Start + before.Length - from, from), now));
        }
    }

    /// <summary>Whether the size is that of a hook or of a needle; null where it is not surely a tool at all.</summary>
    private bool? ToolAt(string said, ToolTold told, StretchKind kind)
    {
        if (kind == StretchKind.Tool)
        {
            return ToolText.IsTool(said) ? ToolText.IsHook(said, isCrochet) : null;
        }

        var (start, end) = (told.Marks[0].Start, told.Marks[^1].End);
        var behind = said.AsSpan(end, Math.Min(Near, said.Length - end));
        behind = behind.IndexOfAny('.', ';', '\n') is >= 0 and var stop ? behind[..stop] : behind;
        if (Names(behind) is { } ofBehind)
        {
            return ofBehind;
        }

        var ahead = said.AsSpan(Math.Max(0, start - Near), Math.Min(Near, start));
        ahead = ahead.LastIndexOfAny('.', ';', '\n') is >= 0 and var from ? ahead[(from + 1)..] : ahead;
        if (Names(ahead) is { } ofAhead)
        {
            return ofAhead;
        }

        var word = ahead.TrimEnd();
        return kind == StretchKind.Row && Array.Exists(Leads, l => said.AsSpan(0, start).TrimEnd().EndsWith(" " + l, StringComparison.OrdinalIgnoreCase)) && word.Length > 0 ? isCrochet : null;
    }

    private static bool? Names(ReadOnlySpan<char> words)
    {
        var hook = words.IndexOf("hook", StringComparison.OrdinalIgnoreCase);
        var needle = -1;
        foreach (var word in NeedleWords)
        {
            var at = words.IndexOf(word, StringComparison.OrdinalIgnoreCase);
            needle = at >= 0 && (needle < 0 || at < needle) ? at : needle;
        }

        return hook < 0 && needle < 0 ? null : hook >= 0 && (needle < 0 || hook < needle);
    }

    private static string Said(decimal mm) => string.Create(CultureInfo.InvariantCulture, $"{mm:0.##} mm");
}
