using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using PatternForge.Core.Findings;

namespace PatternForge.Exam;

/// <summary>Prints what was made of a case as one line of JSON.</summary>
public static class OutcomeWriter
{
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The line of a row case.</summary>
    public static string Line(RowQuestion question, SeenRow outcome) => Write(json =>
    {
        json.WriteStartObject();
        json.WriteString("id", question.Id);
        Body(json, outcome, question.Sizes);
        json.WriteEndObject();
    });

    /// <summary>The line of a pattern case.</summary>
    public static string Line(PatternQuestion question, SeenPattern outcome) => Write(json =>
    {
        json.WriteStartObject();
        json.WriteString("id", question.Id);
        json.WriteStartArray("rows");
        foreach (var (row, made) in question.Rows.Zip(outcome.Rows))
        {
            json.WriteStartObject();
            json.WriteNumber("n", row.Number);
            Body(json, made, question.Sizes);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    });

    /// <summary>An area in the word that reports use.</summary>
    public static string Word(Area area) => area.ToString().ToLowerInvariant();

    /// <summary>A severity in the word that reports use.</summary>
    public static string Word(Severity severity) => severity.ToString().ToLowerInvariant();

    private static string Write(Action<Utf8JsonWriter> body)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, Plain))
        {
            body(json);
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    private static void Body(Utf8JsonWriter json, SeenRow outcome, ImmutableArray<string> sizes)
    {
        json.WriteString("status", outcome.Status.ToString().ToLowerInvariant());
        json.WriteStartArray("after");
        foreach (var count in outcome.After)
        {
            if (count is { } n)
            {
                json.WriteNumberValue(n);
            }
            else
            {
                json.WriteNullValue();
            }
        }

        json.WriteEndArray();
        Kinds(json, outcome);
        json.WriteStartArray("findings");
        foreach (var finding in outcome.Findings)
        {
            Finding(json, finding, sizes);
        }

        json.WriteEndArray();
    }

    private static void Kinds(Utf8JsonWriter json, SeenRow outcome)
    {
        if (outcome.Kinds.IsDefaultOrEmpty)
        {
            json.WriteNull("kinds");
            return;
        }

        json.WriteStartArray("kinds");
        foreach (var table in outcome.Kinds)
        {
            json.WriteStartObject();
            foreach (var (kind, count) in table)
            {
                json.WriteNumber(kind, count);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Finding(Utf8JsonWriter json, SeenFinding finding, ImmutableArray<string> sizes)
    {
        json.WriteStartObject();
        json.WriteString("code", finding.Code);
        json.WriteString("name", finding.Name);
        json.WriteString("area", Word(finding.Area));
        json.WriteString("severity", Word(finding.Severity));
        if (finding.Sizes.IsDefaultOrEmpty || sizes.IsEmpty)
        {
            json.WriteNull("sizes");
        }
        else
        {
            json.WriteStartArray("sizes");
            foreach (var size in finding.Sizes.Where(s => s >= 0 && s < sizes.Length))
            {
                json.WriteStringValue(sizes[size]);
            }

            json.WriteEndArray();
        }

        json.WriteString("message", finding.Message);
        json.WriteEndObject();
    }
}
