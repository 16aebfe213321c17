using System.Collections.Immutable;
using System.Text.Json;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Work;
using PatternForge.Rendering.Documents;

namespace PatternForge.Rendering.Data;

/// <summary>The body of a pattern as JSON: sections with their rows and counts, the charts square by square, and the files of the drawings.</summary>
internal static class BodyJson
{
    /// <summary>Writes the keys <c>sections</c>, <c>charts</c> and <c>drawings</c>.</summary>
    public static void Write(Utf8JsonWriter json, Compilation compilation, PatternView view)
    {
        var rows = new RowBuilder(compilation.Pattern.Facts.Sizes.Count, PageWords.Of(compilation));
        json.List("sections", compilation.Pattern.Sections, section =>
        {
            json.Text("heading", section.Heading);
            json.Text("role", section.Role);
            json.WriteNumber("level", section.Level);
            json.WriteStartArray("blocks");
            Blocks(json, section, compilation, rows);
            json.WriteEndArray();
        });
        json.List("charts", compilation.Charts, chart => Chart(json, chart, compilation.Pattern.Facts.Sizes));
        json.List("drawings", view.Drawings, drawing =>
        {
            json.Text("title", drawing.Title);
            json.WriteString("kind", drawing.Kind switch { DrawingKind.Schematic => "schematic", DrawingKind.Stripes => "stripes", DrawingKind.Diagram => "diagram", _ => "chart" });
            json.Text("description", drawing.Description);
            json.Text("file", Uri.UnescapeDataString(drawing.Address));
            json.Texts("notes", drawing.Notes);
        });
    }

    private static void Blocks(Utf8JsonWriter json, Section section, Compilation compilation, RowBuilder rows)
    {
        var isOpen = false;
        foreach (var block in section.Blocks)
        {
            if (block is InstructionBlock { Index: var i })
            {
                if (i < 0 || i >= compilation.Lines.Length)
                {
                    continue;
                }

                if (!isOpen)
                {
                    json.WriteStartObject();
                    json.WriteString("kind", "rows");
                    json.WriteStartArray("rows");
                    isOpen = true;
                }

                Row(json, compilation.Lines[i], rows.Build(compilation.Lines[i]));
                continue;
            }

            Close();
            json.WriteStartObject();
            json.WriteString("kind", block is ProseBlock ? "prose" : "fenced");
            if (block is FencedBlock fenced)
            {
                json.Text("word", fenced.Info);
            }

            json.Text("text", block switch { ProseBlock prose => prose.Markdown, FencedBlock { Text: var text } => text, _ => "" });
            json.WriteEndObject();
        }

        Close();

        void Close()
        {
            if (isOpen)
            {
                json.WriteEndArray();
                json.WriteEndObject();
                isOpen = false;
            }
        }
    }

    private static void Row(Utf8JsonWriter json, WorkedLine line, RowView row)
    {
        json.WriteStartObject();
        json.Text("label", row.Label);
        json.Text("side", SideOf(row.Label));
        json.Text("text", row.Text);
        json.Text("instruction", row.Instruction);
        json.Text("count", row.Count);
        json.WriteString("status", line.Status switch { LineStatus.Checked => "checked", LineStatus.Trusted => "trusted", _ => "unread" });
        json.Numbers("numbers", [.. line.Numbers.Select(n => (int?)n)]);
        json.Numbers("rows", line.Rows);
        if (line.InTheRound is { } round)
        {
            json.WriteBoolean("inTheRound", round);
        }
        else
        {
            json.WriteNull("inTheRound");
        }

        json.Numbers("before", line.Before);
        json.Numbers("after", line.After);
        json.Numbers("stated", line.Stated);
        json.WriteStartArray("kinds");
        foreach (var kinds in line.Kinds.IsDefault ? [] : line.Kinds)
        {
            json.WriteStartObject();
            foreach (var (kind, count) in kinds)
            {
                json.WriteNumber(kind, count);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.Text("reading", line.Reading);
        json.WriteEndObject();
    }

    // The side that the label names.
    private static string? SideOf(string label) => label.Contains("RS", StringComparison.Ordinal) ? "RS" : label.Contains("WS", StringComparison.Ordinal) ? "WS" : null;

    private static void Chart(Utf8JsonWriter json, Chart chart, SizeSet sizes)
    {
        json.Text("name", chart.Name);
        json.WriteNumber("section", chart.Section);
        json.Texts("sizes", chart.Sizes.Select(i => sizes.Names[i]));
        json.WriteBoolean("inTheRound", chart.IsRound);
        json.WriteNumber("columns", chart.Columns);
        if (chart.Repeat is { } repeat)
        {
            json.WriteStartObject("repeat");
            json.WriteNumber("from", repeat.From);
            json.WriteNumber("columns", repeat.Columns);
            json.Numbers("times", repeat.Times is { } times ? [.. Enumerable.Range(0, sizes.Count).Select(i => times[i])] : ImmutableArray<int?>.Empty);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("repeat");
        }

        json.List("rows", chart.Rows, row =>
        {
            json.WriteNumber("number", row.Number);
            json.WriteString("side", row.Side == FabricSide.Wrong ? "WS" : "RS");
            if (row.RepeatShift != 0)
            {
                json.WriteNumber("repeatShift", row.RepeatShift);
            }

            json.List("squares", row.Cells, cell =>
            {
                json.Text("stitch", cell.Operation?.Id);
                json.WriteNumber("column", cell.Column);
                json.WriteNumber("span", cell.Span);
                json.Text("colour", cell.Colour);
            });
        });
    }
}
