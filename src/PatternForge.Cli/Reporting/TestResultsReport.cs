using System.Globalization;
using System.Text;
using System.Text.Json;
using PatternForge.Core.Trials;

namespace PatternForge.Cli.Reporting;

/// <summary>What came back of a test.</summary>
internal static class TestResultsReport
{
    /// <summary>For people.</summary>
    public static string Text(TestResults results, Paint paint)
    {
        var page = new StringBuilder();
        page.Append(paint.Strong(DisplayText.OneLine(Heading(results)))).Append('\n');
        foreach (var size in results.Numbers.GroupBy(n => n.Size, StringComparer.Ordinal))
        {
            page.Append('\n').Append(paint.Strong(size.Key.Length > 0 ? $"size {DisplayText.OneLine(size.Key)}" : "all answers")).Append('\n');
            var rows = size.Select(n => new[] { DisplayText.OneLine($"{Word(n.Kind)}: {n.Name}"), Told(n), Got(n), Off(n), DisplayText.OneLine(n.Maker), n.Flag ?? "" }).ToArray();
            var widths = Enumerable.Range(0, 6).Select(c => rows.Max(r => DisplayText.Width(r[c]))).ToArray();
            foreach (var row in rows)
            {
                page.Append("  ").Append(string.Join("  ", row.Select((cell, c) => c is 0 or 4 or 5 ? cell + new string(' ', widths[c] - DisplayText.Width(cell)) : new string(' ', widths[c] - DisplayText.Width(cell)) + cell)).TrimEnd()).Append('\n');
            }
        }

        if (!results.Hours.IsEmpty)
        {
            page.Append('\n').Append(paint.Strong("time")).Append('\n');
            foreach (var (size, from, to) in results.Hours)
            {
                page.Append("  ").Append(Hours(size, from, to)).Append('\n');
            }
        }

        foreach (var (heading, comments) in Groups(results))
        {
            page.Append('\n').Append(paint.Strong(DisplayText.OneLine(heading))).Append('\n');
            foreach (var comment in comments)
            {
                page.Append("  ").Append(DisplayText.OneLine(Said(comment, heading))).Append('\n');
            }
        }

        return page.ToString();
    }

    /// <summary>For a repository or a letter.</summary>
    public static string Markdown(TestResults results)
    {
        var page = new StringBuilder();
        page.Append("# Test: ").Append(DiffReport.Escaped(Heading(results))).Append('\n');
        foreach (var size in results.Numbers.GroupBy(n => n.Size, StringComparer.Ordinal))
        {
            page.Append("\n## ").Append(size.Key.Length > 0 ? $"Size {DiffReport.Escaped(size.Key)}" : "All answers").Append("\n\n| | told | got | difference | maker | |\n| --- | --: | --: | --: | --- | --- |\n");
            foreach (var n in size)
            {
                page.Append("| ").Append(DiffReport.Escaped($"{Word(n.Kind)}: {n.Name}")).Append(" | ").Append(DiffReport.Escaped(Told(n))).Append(" | ").Append(DiffReport.Escaped(Got(n))).Append(" | ").Append(Off(n)).Append(" | ").Append(DiffReport.Escaped(n.Maker)).Append(" | ").Append(n.Flag is null ? "" : $"**{n.Flag}**").Append(" |\n");
            }
        }

        if (!results.Hours.IsEmpty)
        {
            page.Append("\n## Time\n\n");
            foreach (var (size, from, to) in results.Hours)
            {
                page.Append("- ").Append(DiffReport.Escaped(Hours(size, from, to))).Append('\n');
            }
        }

        foreach (var (heading, comments) in Groups(results))
        {
            page.Append("\n## ").Append(DiffReport.Escaped(char.ToUpperInvariant(heading[0]) + heading[1..])).Append("\n\n");
            foreach (var comment in comments)
            {
                page.Append("- ").Append(DiffReport.Escaped(Said(comment, heading))).Append('\n');
            }
        }

        return page.ToString();
    }

    /// <summary>For spreadsheets: the numbers first, then what was said; quoted and ended as RFC 4180 says.</summary>
    public static string Csv(TestResults results)
    {
        var page = new StringBuilder("size,maker,kind,name,told,got,unit,difference,flag,text\r\n");
        foreach (var n in results.Numbers)
        {
            Line(page, n.Size, n.Maker, Word(n.Kind), n.Name, Number(n.Told), Number(n.Got), n.Unit, n.Off is { } off ? off.ToString("0.###", CultureInfo.InvariantCulture) : "", n.Flag ?? "", "");
        }

        foreach (var (kind, comments) in new[] { ("mistake", results.Errors), ("comment", results.Comments), ("question", results.Questions) })
        {
            foreach (var c in comments)
            {
                Line(page, c.Size, c.Maker, kind, c.About, "", "", "", "", "", c.Text);
            }
        }

        return page.ToString();
    }

    /// <summary>For other programs, on one line.</summary>
    public static string Json(string path, TestResults results) => JsonSerializer.Serialize(
        new TestResultsShape(
            1,
            Words.WellFormed(path),
            Words.WellFormed(results.Title),
            Words.WellFormed(results.Version),
            [.. results.Sizes.Select(s => new TestedSizeShape(Words.WellFormed(s.Size), s.Answers, Hour(results, s.Size)?.From, Hour(results, s.Size)?.To))],
            [.. results.Numbers.Select(n => new TestNumberShape(Words.WellFormed(n.Size), Words.WellFormed(n.Maker), Word(n.Kind), Words.WellFormed(n.Name), n.Told, n.Got, n.Unit, n.Off is { } off ? decimal.Round(off, 4) : null, n.Flag))],
            [.. results.Errors.Select(Shape)],
            [.. results.Comments.Select(Shape)],
            [.. results.Questions.Select(Shape)]),
        JsonReport.Shapes.TestResultsShape) + "\n";

    private static (string Size, decimal From, decimal To)? Hour(TestResults results, string size) => results.Hours.Where(h => h.Size == size).Select(h => ((string, decimal, decimal)?)h).FirstOrDefault();

    private static TestCommentShape Shape(TestComment c) => new(Words.WellFormed(c.Size), Words.WellFormed(c.Maker), Words.WellFormed(c.About), Words.WellFormed(c.Text));

    private static string Heading(TestResults results)
    {
        var all = results.Sizes.Sum(s => s.Answers);
        var sizes = string.Join(", ", results.Sizes.Where(s => s.Answers > 0 && s.Size.Length > 0).Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Size} {s.Answers}")));
        return string.Create(CultureInfo.InvariantCulture, $"{results.Title}{(results.Version.Length > 0 ? $", version {results.Version}" : "")}: {all} {(all == 1 ? "answer" : "answers")}{(sizes.Length > 0 ? $" ({sizes})" : "")}");
    }

    private static IEnumerable<(string Heading, IEnumerable<TestComment> Comments)> Groups(TestResults results)
    {
        if (!results.Errors.IsEmpty)
        {
            yield return ("mistakes found", results.Errors);
        }

        foreach (var about in results.Comments.GroupBy(c => c.About, StringComparer.Ordinal))
        {
            yield return (about.Key.Length > 0 ? $"on {about.Key}" : "comments", about);
        }

        foreach (var question in results.Questions.GroupBy(c => c.About, StringComparer.Ordinal))
        {
            yield return (question.Key, question);
        }
    }

    private static string Said(TestComment comment, string heading)
    {
        var who = comment.Size.Length > 0 ? $"{comment.Maker}, size {comment.Size}" : comment.Maker;
        return heading == "mistakes found" && comment.About.Length > 0 ? $"{comment.About}: {comment.Text} ({who})" : $"{comment.Text} ({who})";
    }

    private static string Hours(string size, decimal from, decimal to) => $"{(size.Length > 0 ? $"size {size}: " : "")}{(from == to ? Number(from) : $"{Number(from)} to {Number(to)}")} {(to == 1 ? "hour" : "hours")}";

    private static string Word(ResultKind kind) => kind switch
    {
        ResultKind.Gauge => "gauge",
        ResultKind.Yarn => "yarn",
        _ => "measurement",
    };

    private static string Told(TestResult n) => n.Told is { } told ? $"{Number(told)} {n.Unit}".TrimEnd() : "–";

    private static string Got(TestResult n) => $"{Number(n.Got)} {n.Unit}".TrimEnd();

    private static string Off(TestResult n) => n.Off is not { } off ? "" : Math.Round(off * 100) is var percent && percent == 0 ? "0 %" : string.Create(CultureInfo.InvariantCulture, $"{(percent > 0 ? "+" : "-")}{Math.Abs(percent):0} %");

    private static string Number(decimal? value) => value?.ToString("0.##", CultureInfo.InvariantCulture) ?? "";

    private static void Line(StringBuilder page, params string[] cells) => page.AppendJoin(',', cells.Select(c => CountsCsv.Quoted(Guarded(Words.WellFormed(c))))).Append("\r\n");

    // What a stranger wrote must not become a formula of a spreadsheet.
    private static string Guarded(string cell) => (cell.Length > 0 && cell[0] is '=' or '+' or '@' or '\t' or '\r') || (cell.Length > 0 && cell[0] == '-' && !decimal.TryParse(cell, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _)) ? "'" + cell : cell;
}
