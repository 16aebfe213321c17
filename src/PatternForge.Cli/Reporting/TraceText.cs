using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Cli.Reporting;

/// <summary>For people: how the counts of one row come about, clause by clause, in each size that is asked for.</summary>
internal static class TraceText
{
    private const int LeastWords = 24;
    private static readonly string[] Head = ["uses", "makes", "left"];

    /// <summary>The row of a pattern of which such notes were kept.</summary>
    /// <param name="line">The row's line.</param>
    /// <param name="number">Its number in the file.</param>
    /// <param name="source">The text that was worked.</param>
    /// <param name="sizes">The sizes to show: their places and names.</param>
    /// <param name="width">The columns that there are.</param>
    /// <param name="paint">The colours.</param>
    public static string Of(WorkedLine line, int number, SourceText source, IReadOnlyList<(int Size, string Name)> sizes, int width, Paint paint)
    {
        var page = new StringBuilder();
        foreach (var (size, called) in sizes)
        {
            var name = called.Length == 0 ? "" : $", size {DisplayText.OneLine(called)}";
            var label = line.Label.Length > 0 ? DisplayText.OneLine(line.Label) : "no label";
            page.Append(paint.Strong($"line {number}, {label}{name}")).Append('\n');
            var stretches = size < line.Trace.Length ? line.Trace[size] : [];
            if (stretches.IsEmpty)
            {
                page.Append("  nothing is known of this row: it was taken on trust, or this size skips it\n");
            }

            WorkedStretch? before = null;
            foreach (var stretch in stretches)
            {
                if (before is { Clauses.IsEmpty: false } && stretch.Origin == before.Origin)
                {
                    page.Append(paint.Faint($"  the same again: {Count(stretch.Before)} to {Count(stretch.After)}")).Append('\n');
                }
                else
                {
                    Append(page, stretch, source, Math.Max(LeastWords, width - 24), paint);
                }

                before = stretch;
            }

            page.Append('\n');
        }

        return page.ToString().TrimEnd('\n') + "\n";
    }

    private static void Append(StringBuilder page, WorkedStretch stretch, SourceText source, int room, Paint paint)
    {
        if (stretch.Clauses.IsEmpty)
        {
            var rows = stretch.Rows > 1 ? $" over {Words.Counted(stretch.Rows, "row")}" : "";
            page.Append("  ").Append(ClauseWords.Of(stretch.Origin, source, room)).Append('\n');
            page.Append(paint.Faint($"    {Count(stretch.Before)} to {Count(stretch.After)}{rows}")).Append('\n');
            return;
        }

        page.Append(paint.Faint($"  {Count(stretch.Before)} when it begins")).Append('\n');
        var lines = Lines(stretch.Clauses, source, 1, room).ToArray();
        var widest = Math.Max(lines.Max(l => DisplayText.Width(l.Words)), 8);
        page.Append(paint.Faint(Row(new string(' ', widest), Head[0], Head[1], Head[2]))).Append('\n');
        foreach (var (words, clause) in lines)
        {
            var padded = words + new string(' ', widest - DisplayText.Width(words));
            page.Append(clause is null or { Used: 0, Made: 0 } ? words : Row(padded, Number(clause.Used), Number(clause.Made), Number(clause.Left))).Append('\n');
        }

        if (stretch.Times > 1)
        {
            page.Append(paint.Faint($"  worked through {stretch.Times} times to the end of the row")).Append('\n');
        }

        page.Append(paint.Faint($"  {Count(stretch.After)} when it ends")).Append('\n');
    }

    private static IEnumerable<(string Words, WorkedClause? Clause)> Lines(ImmutableArray<WorkedClause> clauses, SourceText source, int depth, int room)
    {
        foreach (var clause in clauses)
        {
            var indent = new string(' ', 2 * depth);
            var times = clause.Times > 0 ? $"{(clause.Times == 1 ? "once" : $"{clause.Times} times")}: " : "";
            var words = ClauseWords.Of(clause.Origin, source, Math.Max(LeastWords, room - (2 * depth) - times.Length));
            yield return ($"{indent}{times}{words}", clause);
            foreach (var inner in Lines(clause.Within, source, depth + 2, room))
            {
                yield return inner;
            }
        }
    }

    private static string Row(string words, string uses, string makes, string left) => $"{words}  {uses,5}  {makes,5}  {left,5}".TrimEnd();

    private static string Number(int? number) => number is { } known ? known.ToString(CultureInfo.InvariantCulture) : "";

    private static string Count(int? count) => count is { } known ? (known == 1 ? "1 stitch" : $"{known} stitches") : "not known";
}
