namespace PatternForge.Exam;

/// <summary>
/// Makes each case into a source text as a designer would write it: a full header, the rows before, a starting line where nothing leads to the
/// count, the row. Only the question is known here.
/// </summary>
public static class SourceBuilder
{
    // A study of rows leaves out on purpose what a whole pattern would explain.
    private const string NoList = "omit: [abbreviations]";

    /// <summary>The source of a row case; its one row is the one asked about.</summary>
    public static CaseSource Of(RowQuestion question)
    {
        var writer = new SourceWriter();
        Head(writer, $"Study {question.Id}", question.Craft, question.Dialect, question.Gauge, null, question.InTheRound);
        if (!question.Sizes.IsEmpty)
        {
            writer.Lines("sizes:");
            writer.Key("  names", SourceWriter.Sized(question.Sizes));
        }

        writer.Table("stitches", question.Defs);
        writer.List("notes", question.Notes);
        writer.Lines([.. question.Charts.Length > 0 ? ["charts:", .. question.Charts.Select(c => $"  {c.Name}: {c.Width}")] : Array.Empty<string>()]);
        writer.Lines(NoList);
        writer.EndHeader();
        writer.Heading("Piece");
        foreach (var row in question.Setup)
        {
            writer.Paragraph(row);
        }

        if (StartingLine.For(question) is { } start)
        {
            writer.Paragraph(start);
        }

        writer.Row(question.Text);
        return writer.ToSource(question.Id);
    }

    /// <summary>The source of a pattern case; all its rows are asked about.</summary>
    public static CaseSource Of(PatternQuestion question)
    {
        var writer = new SourceWriter();
        Head(writer, question.Title, question.Craft, question.Dialect, question.Gauge, question.Tool, question.InTheRound);
        if (!question.Sizes.IsEmpty || !question.Finished.IsEmpty)
        {
            writer.Lines("sizes:");
            writer.Key("  names", question.Sizes.IsEmpty ? "One size" : SourceWriter.Sized(question.Sizes));
            writer.Table("finished", question.Finished, "  ");
        }

        if (question.Abbreviations is not { } abbreviations)
        {
            writer.Lines(NoList);
        }
        else
        {
            writer.List("abbreviations", [.. abbreviations, .. question.Special.Where(s => s.How is null).Select(s => s.Name)]);
        }

        writer.Table("stitches", question.Special.Where(s => s.How is not null).Select(s => (s.Name, s.How!)));
        writer.List("notes", question.Notes);
        writer.EndHeader();
        var section = "";
        foreach (var row in question.Rows)
        {
            if (!string.Equals(row.Section, section, StringComparison.Ordinal))
            {
                section = row.Section;
                writer.Heading(section);
            }

            writer.Row(row.Text);
        }

        return writer.ToSource(question.Id);
    }

    private static void Head(SourceWriter writer, string title, string craft, string dialect, string? gauge, string? tool, bool inTheRound)
    {
        var knit = craft == "knit";
        writer.Key("title", title);
        writer.Lines("designer: Orla Fenwick", "version: \"1.0\"", "date: 2024-03-01");
        writer.Key("craft", knit ? "knitting" : craft);
        writer.Key("terms", dialect == "UK" ? "uk" : "us");
        writer.Lines("level: intermediate", "level-reason: A few shapings to keep count of.", "summary: A small study in rows and counts.");
        writer.Key("gauge", gauge ?? (knit
            ? $"20 sts and 28 {(inTheRound ? "rounds" : "rows")} = 10 cm in {(dialect == "UK" ? "stocking stitch" : "stockinette")} on 4 mm, blocked"
            : $"16 sts and 18 {(inTheRound ? "rounds" : "rows")} = 10 cm in pattern on 4 mm, blocked"));
        writer.Lines("yarn:", "  - name: Fellgate Wool", "    fibre: wool", "    weight: 4", "    put-up: 100 g = 180 m", "    needs: 180 m");
        writer.List("tools", [tool ?? (knit ? "4 mm needles" : "4 mm hook")]);
    }
}
