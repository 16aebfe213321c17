using System.Collections.Immutable;
using System.Text.Json;

namespace PatternForge.Exam;

/// <summary>Reads the cases: one JSON object a line, a pattern where it has rows of its own.</summary>
public static class CaseReader
{
    private static readonly string[] GaugeKeys = ["gauge", "tension"];
    private static readonly string[] ToolKeys = ["needles", "needle", "hook", "hooks", "tools"];

    /// <summary>The cases of the files, in their order.</summary>
    public static CaseSet ReadFiles(IEnumerable<string> paths) => Read(paths.SelectMany(File.ReadLines));

    /// <summary>The cases of the lines; blank lines are passed over.</summary>
    public static CaseSet Read(IEnumerable<string> lines)
    {
        var rows = ImmutableArray.CreateBuilder<RowCase>();
        var patterns = ImmutableArray.CreateBuilder<PatternCase>();
        foreach (var line in lines.Where(l => !string.IsNullOrWhiteSpace(l)))
        {
            using var json = JsonDocument.Parse(line);
            if (json.RootElement.TryGetProperty("rows", out _))
            {
                patterns.Add(ReadPattern(json.RootElement));
            }
            else
            {
                rows.Add(ReadRow(json.RootElement));
            }
        }

        return new CaseSet(rows.ToImmutable(), patterns.ToImmutable());
    }

    private static RowCase ReadRow(JsonElement json)
    {
        var context = json.TryGetProperty("context", out var c) ? c : default;
        var accept = json.TryGetProperty("also_accept", out var a) ? a : default;
        var question = new RowQuestion
        {
            Id = Text(json, "id"),
            Craft = Text(json, "craft"),
            Dialect = Text(json, "dialect"),
            InTheRound = Text(json, "worked") == "round",
            Sizes = SizesOf(json),
            Before = CountOf(json, "before"),
            Text = Text(json, "text"),
            Setup = Texts(json, "setup"),
            Defs = [.. Pairs(json, "defs").Select(p => (p.Name, p.Value.ToString()))],
            Markers = MarkersOf(json),
            Notes = Texts(context, "notes"),
            Charts = [.. Pairs(context, "charts").Where(p => p.Value.ValueKind == JsonValueKind.Number).Select(p => (p.Name, p.Value.GetInt32()))],
            Needles = [.. Items(context, "needles").Where(n => n.ValueKind == JsonValueKind.Number).Select(n => n.GetInt32())],
            Gauge = OptionalText(context, "gauge"),
        };
        var answer = new RowAnswer
        {
            After = CountOf(json, "after"),
            Stated = CountOf(json, "stated"),
            Fault = Text(json, "verdict") == "error" && json.TryGetProperty("error", out var error) ? FaultOf(error, question.Sizes) : null,
            FairFinding = OptionalText(accept, "finding"),
            AlsoAfter = Has(accept, "after") ? CountOf(accept, "after") : null,
        };
        return new RowCase(question, Texts(json, "forms"), answer);
    }

    private static PatternCase ReadPattern(JsonElement json)
    {
        var header = json.TryGetProperty("header", out var h) ? h : default;
        var sizes = SizesOf(json);
        var rows = Items(json, "rows");
        var question = new PatternQuestion
        {
            Id = Text(json, "id"),
            Title = Text(json, "title"),
            Craft = Text(json, "craft"),
            Dialect = OptionalText(header, "terms") ?? Text(json, "dialect"),
            InTheRound = Text(json, "worked") == "round",
            Sizes = sizes,
            Gauge = GaugeKeys.Select(k => OptionalText(header, k)).FirstOrDefault(g => g is not null),
            Tool = ToolKeys.Select(k => OptionalText(header, k)).FirstOrDefault(t => t is not null),
            Finished = [.. Pairs(header).Where(p => p.Name.StartsWith("finished", StringComparison.Ordinal)).SelectMany(p => Measurements(p.Name, p.Value.ToString()))],
            Abbreviations = Has(header, "abbreviations") ? Texts(header, "abbreviations") : null,
            Special = SpecialOf(header),
            Notes = Texts(header, "notes"),
            Rows = [.. rows.Select(r => new PatternRow(r.GetProperty("n").GetInt32(), OptionalText(r, "section") ?? "Main", Text(r, "text")))],
        };
        var faults = Items(json, "findings").Select(f => new ExpectedPatternFault(
            FaultOf(f, sizes),
            f.TryGetProperty("row", out var row) && row.ValueKind == JsonValueKind.Number ? row.GetInt32() : null,
            f.TryGetProperty("optional", out var optional) && optional.ValueKind == JsonValueKind.True));
        var answer = new PatternAnswer(
            [.. rows.Select(r => WithKinds(CountOf(r, "after"), CountOf(r, "after_by_kind")))],
            [.. rows.Select(r => CountOf(r, "stated"))],
            [.. faults]);
        return new PatternCase(question, answer);
    }

    private static CaseCount WithKinds(CaseCount plain, CaseCount byKind) => plain with { ByKind = byKind.IsUnknown ? plain.ByKind : byKind.ByKind };

    // A single size goes by no name.
    private static ImmutableArray<string> SizesOf(JsonElement json)
    {
        var sizes = Texts(json, "sizes");
        return sizes.Length > 1 ? sizes : [];
    }

    // "6.4 in wide (unstretched), 60 in long" and "24 (25.2, 26.4) in" under "finished chest".
    private static IEnumerable<(string Name, string Values)> Measurements(string key, string text)
    {
        var name = key["finished".Length..].Trim();
        if (name.Length > 0)
        {
            yield return (name.Replace(' ', '-'), text);
            yield break;
        }

        foreach (var part in text.Split(", "))
        {
            foreach (var (word, measure) in new[] { (" wide", "width"), (" long", "length"), (" around", "circumference"), (" deep", "depth") })
            {
                if (part.IndexOf(word, StringComparison.Ordinal) is > 0 and var at)
                {
                    yield return (measure, part[..at]);
                }
            }
        }
    }

    private static ImmutableArray<(string Name, string? How)> SpecialOf(JsonElement header)
    {
        if (!Has(header, "special"))
        {
            return [];
        }

        var special = header.GetProperty("special");
        return special.ValueKind switch
        {
            JsonValueKind.Object => [.. Pairs(special).Select(p => (p.Name, (string?)p.Value.ToString()))],
            JsonValueKind.Array => [.. special.EnumerateArray().Select(s => (s.ToString(), (string?)null))],
            _ => [(special.ToString(), null)],
        };
    }

    private static ExpectedFault FaultOf(JsonElement error, ImmutableArray<string> sizes) => new(
        Text(error, "kind"),
        OptionalText(error, "detail") ?? "",
        Has(error, "sizes") ? [.. Items(error, "sizes").Select(s => s.ValueKind == JsonValueKind.Number ? s.GetInt32() : sizes.IndexOf(s.ToString()))] : null);

    private static ImmutableArray<ImmutableArray<int>> MarkersOf(JsonElement json)
    {
        var items = Items(json, "markers");
        return items.Length == 0 ? []
            : items[0].ValueKind == JsonValueKind.Array ? [.. items.Select(i => Numbers(i))]
            : [[.. items.Select(i => i.GetInt32())]];
    }

    private static ImmutableArray<int> Numbers(JsonElement list) => [.. list.EnumerateArray().Where(n => n.ValueKind == JsonValueKind.Number).Select(n => n.GetInt32())];

    private static CaseCount CountOf(JsonElement json, string key)
    {
        if (!Has(json, key))
        {
            return CaseCount.Unknown;
        }

        var value = json.GetProperty(key);
        JsonElement[] each = value.ValueKind == JsonValueKind.Array ? [.. value.EnumerateArray()] : [value];
        return each.Any(e => e.ValueKind == JsonValueKind.Object)
            ? new CaseCount([], [.. each.Select(KindsOf)])
            : new CaseCount([.. each.Select(e => e.ValueKind == JsonValueKind.Number ? e.GetInt32() : (int?)null)], []);
    }

    private static ImmutableSortedDictionary<string, int>? KindsOf(JsonElement json) => json.ValueKind == JsonValueKind.Object
        ? json.EnumerateObject().Where(p => p.Value.ValueKind == JsonValueKind.Number).ToImmutableSortedDictionary(p => p.Name, p => p.Value.GetInt32(), StringComparer.Ordinal)
        : null;

    private static bool Has(JsonElement json, string key) =>
        json.ValueKind == JsonValueKind.Object && json.TryGetProperty(key, out var value) && value.ValueKind != JsonValueKind.Null;

    private static string Text(JsonElement json, string key) => json.GetProperty(key).GetString() ?? "";

    private static string? OptionalText(JsonElement json, string key) => Has(json, key) && json.GetProperty(key).ValueKind == JsonValueKind.String ? json.GetProperty(key).GetString() : null;

    private static ImmutableArray<string> Texts(JsonElement json, string key) =>
        Has(json, key) && json.GetProperty(key).ValueKind == JsonValueKind.String ? [Text(json, key)] : [.. Items(json, key).Select(i => i.ToString())];

    private static JsonElement[] Items(JsonElement json, string key) =>
        Has(json, key) && json.GetProperty(key).ValueKind == JsonValueKind.Array ? [.. json.GetProperty(key).EnumerateArray()] : [];

    private static JsonProperty[] Pairs(JsonElement json, string key) => Has(json, key) ? Pairs(json.GetProperty(key)) : [];

    private static JsonProperty[] Pairs(JsonElement json) => json.ValueKind == JsonValueKind.Object ? [.. json.EnumerateObject()] : [];
}
