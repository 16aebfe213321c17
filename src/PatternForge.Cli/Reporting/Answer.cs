using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace PatternForge.Cli.Reporting;

/// <summary>What a command about numbers answers: facts in their order, each with its key for programs and its words for people.</summary>
internal sealed class Answer(string command)
{
    private readonly List<Fact> _facts = [];

    private enum Form
    {
        Line,
        Lines,
        Table,
        Silent,
    }

    /// <summary>A number; people see it with its words, or not at all where these are empty.</summary>
    public Answer Number(string key, decimal? value, string words = "")
    {
        _facts.Add(new(key, words.Length > 0 ? Form.Line : Form.Silent, [words], writer =>
        {
            if (value is { } number)
            {
                writer.WritePropertyName(key);
                writer.WriteRawValue(number.ToString("0.######", CultureInfo.InvariantCulture));
            }
            else
            {
                writer.WriteNull(key);
            }
        }));
        return this;
    }

    /// <summary>A text.</summary>
    public Answer Text(string key, string? value, string words = "")
    {
        _facts.Add(new(key, words.Length > 0 ? Form.Line : Form.Silent, [words], writer => writer.WriteString(key, value is null ? null : Words.WellFormed(value))));
        return this;
    }

    /// <summary>A list of whole numbers, for programs alone.</summary>
    public Answer Numbers(string key, IEnumerable<int> values)
    {
        int[] all = [.. values];
        _facts.Add(new(key, Form.Silent, [], writer =>
        {
            writer.WriteStartArray(key);
            foreach (var value in all)
            {
                writer.WriteNumberValue(value);
            }

            writer.WriteEndArray();
        }));
        return this;
    }

    /// <summary>Lines of a pattern, set off for people.</summary>
    public Answer Lines(string key, IEnumerable<string> lines)
    {
        string[] all = [.. lines];
        _facts.Add(new(key, Form.Lines, all, writer =>
        {
            writer.WriteStartArray(key);
            foreach (var line in all)
            {
                writer.WriteStringValue(Words.WellFormed(line));
            }

            writer.WriteEndArray();
        }));
        return this;
    }

    /// <summary>A table: a key and a heading a column, cells null where nothing is known.</summary>
    public Answer Table(string key, string title, string[] columns, IEnumerable<string?[]> rows)
    {
        string?[][] all = [.. rows];
        _facts.Add(new(key, Form.Table, [title, .. Layout(columns, all)], writer =>
        {
            writer.WriteStartArray(key);
            foreach (var row in all)
            {
                writer.WriteStartObject();
                for (var i = 0; i < columns.Length; i++)
                {
                    writer.WriteString(JsonNamingPolicy.CamelCase.ConvertName(columns[i].Replace(" ", "", StringComparison.Ordinal)), row[i]);
                }

                writer.WriteEndObject();
            }

            writer.WriteEndArray();
        }));
        return this;
    }

    /// <summary>The answer in a form: <c>text</c> or <c>json</c>.</summary>
    public string In(string form) => form == "json" ? Json() : Plain();

    private string Plain()
    {
        var page = new StringBuilder();
        foreach (var fact in _facts.Where(f => f.Form != Form.Silent))
        {
            if (fact.Form == Form.Table && page.Length > 0)
            {
                page.Append('\n');
            }

            foreach (var line in fact.Words)
            {
                page.Append(fact.Form == Form.Lines ? "    " : "").Append(DisplayText.OneLine(line).TrimEnd()).Append('\n');
            }
        }

        return page.ToString();
    }

    private string Json()
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            writer.WriteStartObject();
            writer.WriteNumber("version", 1);
            writer.WriteString("command", command);
            foreach (var fact in _facts)
            {
                fact.Write(writer);
            }

            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static IEnumerable<string> Layout(string[] columns, string?[][] rows)
    {
        var widths = columns.Select((c, i) => rows.Select(r => DisplayText.Width(r[i] ?? "")).Append(DisplayText.Width(c)).Max()).ToArray();
        return rows.Prepend(columns).Select(row => "  " + string.Join("  ", row.Select((cell, i) => (cell ?? "") + new string(' ', widths[i] - DisplayText.Width(cell ?? "")))));
    }

    /// <summary>A figure with at most two decimals.</summary>
    public static string Figure(decimal figure) => figure.ToString("0.##", CultureInfo.InvariantCulture);

    private sealed record Fact(string Key, Form Form, IReadOnlyList<string> Words, Action<Utf8JsonWriter> Write);
}
