using System.Text;

namespace PatternForge.Core.Trials;

/// <summary>Writes the blank for test makers who prefer a text to a form.</summary>
public static class BlankAnswers
{
    /// <summary>The blank of a sheet, as YAML with a word on each key.</summary>
    public static string Write(TestSheet sheet)
    {
        var page = new StringBuilder();
        page.Append("# ").Append(OneLine(sheet.Title)).Append(sheet.Size.Length > 0 ? $", size {OneLine(sheet.Size)}" : "").Append('\n');
        page.Append("# Fill in what you can behind the colons and send the file back; what stays empty is not read.\n");
        page.Append("# The file holds what you write into it and nothing else about you.\n\n");
        page.Append("test-sheet: 1\npattern: ").Append(Quoted(sheet.Title)).Append('\n');
        Line(page, "version", sheet.Version.Length > 0 ? Quoted(sheet.Version) : null);
        Line(page, "size", sheet.Size.Length > 0 ? Quoted(sheet.Size) : null);
        page.Append("\n# What shall we call you? (optional)\nname:\n");
        if (!sheet.Gauges.IsEmpty)
        {
            page.Append("\n# The gauge that you got, counted over the same length\ngauge:\n");
            foreach (var gauge in sheet.Gauges)
            {
                page.Append("  ").Append(Quoted(gauge.Key)).Append(":\n");
                page.Append("    stitches:").Append(Told(gauge.Stitches is { } n ? $"{n:0.##}{(gauge.Width is { } w ? $" to {w}" : "")}" : null)).Append('\n');
                page.Append("    rows:").Append(Told(gauge.Rows is { } r ? $"{r:0.##}{(gauge.Height is { } h ? $" to {h}" : "")}" : null)).Append('\n');
            }
        }

        if (!sheet.Yarns.IsEmpty)
        {
            page.Append("\n# The yarn that you used, in grams: weigh what is left\nyarn:\n");
            foreach (var yarn in sheet.Yarns)
            {
                page.Append("  ").Append(Quoted(yarn.Key)).Append(':').Append(Told(yarn.Needs is null ? null : $"{yarn.Needs}{(yarn.Grams is { } g && yarn.Needs.Unit.Symbol != "g" ? $", about {g:0} g" : "")}")).Append('\n');
            }
        }

        if (!sheet.Measures.IsEmpty)
        {
            page.Append("\n# What the finished piece measures\nmeasurements:\n");
            foreach (var measure in sheet.Measures)
            {
                page.Append("  ").Append(Quoted(measure.Key)).Append(':').Append(Told(measure.Told.ToString())).Append('\n');
            }
        }

        page.Append("\n# Hours that it took\ntime:\n");
        if (!sheet.Sections.IsEmpty)
        {
            page.Append("\n# Comments, section by section\ncomments:\n");
            foreach (var section in sheet.Sections)
            {
                page.Append("  ").Append(Quoted(section)).Append(":\n");
            }
        }

        foreach (var question in TestQuestion.All)
        {
            page.Append("\n# ").Append(question.Text).Append(question.Hint is null ? "" : $"\n# {question.Hint}").Append('\n').Append(question.Key).Append(question.Key == TestQuestion.Errors ? ":\n  # - \"Crown, Rnd 3: the count is one stitch too few\"\n" : ":\n");
        }

        return page.ToString();
    }

    private static void Line(StringBuilder page, string key, string? value)
    {
        if (value is not null)
        {
            page.Append(key).Append(": ").Append(value).Append('\n');
        }
    }

    private static string Told(string? words) => words is null ? "" : $"  # told: {OneLine(words)}";

    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) || c is '\u2028' or '\u2029' or '\u0085' ? ' ' : c));

    private static string Quoted(string text) => "\"" + OneLine(text).Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";
}
