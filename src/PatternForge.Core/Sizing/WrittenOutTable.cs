using System.Globalization;
using System.Text;
using PatternForge.Core.Binding;
using PatternForge.Core.Drafts;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Sizing;

/// <summary>A size table that does not have the new size, written out in the header as the pattern's own: what formulas ask of it, so that the new size can be given beside the others.</summary>
internal static class WrittenOutTable
{
    /// <summary>The source with its table written out; null where it has none, or it cannot be written where it stands.</summary>
    public static (MendedText Text, string Name)? In(MendedText mended, SizeLists found, SizeSet sizes, CompileOptions options)
    {
        var text = mended.Text;
        if (found.From is not { Value: not HeaderMap } from)
        {
            return null;
        }

        var indent = text.Text[text.Lines.StartOf(text.Lines.PositionOf(from.Key.Span.Start).Line)..from.Key.Span.Start];
        if (!string.IsNullOrWhiteSpace(indent))
        {
            return null; // within brackets on one line
        }

        var context = new HeaderContext(text, new FindingBag(text)) { Sizes = sizes, ReadFile = options.ReadFile };
        var colon = text.Text.IndexOf(':', from.Key.Span.End);
        if (colon < 0 || colon >= from.Value.Span.Start || SizeTableBinder.Read(context, from.Value) is not { } table)
        {
            return null;
        }

        var asked = Asked(text, found);
        var main = SizeTableBinder.Main(table, from.Key.Span)?.Name;
        var newLine = text.Text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        var lines = new StringBuilder();
        foreach (var measure in table.Measures.Where(m => m == main || asked.Contains(m)))
        {
            lines.Append(newLine).Append(indent).Append("  ").Append(measure.Replace('-', ' ')).Append(": ").Append(Written(table.Find(measure)!));
        }

        var end = from.Value.Span.End;
        while (end > colon + 1 && char.IsWhiteSpace(text.Text[end - 1]))
        {
            end--;
        }

        var name = text.ToString(TextSpan.FromBounds(from.Value.Span.Start, end)).Split(' ', '(', '\n')[0];
        return lines.Length == 0 ? null : (mended.With([new Mend(TextSpan.FromBounds(colon + 1, end), lines.ToString())]), name);
    }

    /// <summary>The names that the formulas of the header call.</summary>
    private static HashSet<string> Asked(SourceText text, SizeLists found)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var formula in found.Formulas)
        {
            foreach (var word in text.ToString(formula).Split(" ()*/+,=<>".ToCharArray(), StringSplitOptions.RemoveEmptyEntries))
            {
                names.Add(KeySet.Plain(word.StartsWith("body.", StringComparison.OrdinalIgnoreCase) ? word["body.".Length..] : word));
            }
        }

        return names;
    }

    /// <summary>"71–76 (81–86, 91.5–96.5) cm".</summary>
    private static string Written(PerSize<Quantity?> values)
    {
        string[] each = [.. values.Values.Select(One)];
        var unit = values.Values.First(v => v is not null)!.Unit.Symbol;
        return each.Length == 1 ? $"{each[0]} {unit}" : $"{each[0]} ({string.Join(", ", each[1..])}) {unit}";

        static string One(Quantity? q) => q is null ? "–"
            : q.UpTo is { } upTo ? string.Create(CultureInfo.InvariantCulture, $"{q.Value:0.####}–{upTo:0.####}")
            : string.Create(CultureInfo.InvariantCulture, $"{q.Value:0.####}");
    }
}
