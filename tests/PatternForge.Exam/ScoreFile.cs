using System.Collections.Immutable;
using System.Text;
using System.Text.Json;

namespace PatternForge.Exam;

/// <summary>The score that is kept beside the cases: agreed cases by craft, for rows and for patterns. It may only rise.</summary>
/// <param name="Rows">Agreed rows by craft.</param>
/// <param name="Patterns">Agreed patterns by craft.</param>
public sealed record ScoreFile(ImmutableSortedDictionary<string, int> Rows, ImmutableSortedDictionary<string, int> Patterns)
{
    /// <summary>The score of judged cases.</summary>
    public static ScoreFile Of(IReadOnlyList<JudgedCase> cases) => new(Agreed(cases, patterns: false), Agreed(cases, patterns: true));

    /// <summary>Reads a kept score; one that is not there is nought everywhere.</summary>
    public static ScoreFile Read(string path)
    {
        if (!File.Exists(path))
        {
            return new(ImmutableSortedDictionary<string, int>.Empty, ImmutableSortedDictionary<string, int>.Empty);
        }

        using var json = JsonDocument.Parse(File.ReadAllText(path));
        return new(Table(json.RootElement, "rows"), Table(json.RootElement, "patterns"));
    }

    /// <summary>Writes the score.</summary>
    public void Write(string path)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            foreach (var (name, table) in new[] { ("rows", Rows), ("patterns", Patterns) })
            {
                json.WriteStartObject(name);
                foreach (var (craft, agreed) in table)
                {
                    json.WriteNumber(craft, agreed);
                }

                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        File.WriteAllText(path, Encoding.UTF8.GetString(buffer.ToArray()) + "\n");
    }

    /// <summary>"knit rows: 210, kept 214" for each number that is lower here than in the kept score.</summary>
    public IEnumerable<string> LowerThan(ScoreFile kept) => Compare(kept, (now, before) => now < before);

    /// <summary>The same for each number that is higher here.</summary>
    public IEnumerable<string> HigherThan(ScoreFile kept) => Compare(kept, (now, before) => now > before);

    private IEnumerable<string> Compare(ScoreFile kept, Func<int, int, bool> differs)
    {
        foreach (var (what, now, before) in new[] { ("rows", Rows, kept.Rows), ("patterns", Patterns, kept.Patterns) })
        {
            foreach (var craft in now.Keys.Union(before.Keys).Order(StringComparer.Ordinal))
            {
                var (n, b) = (now.GetValueOrDefault(craft), before.GetValueOrDefault(craft));
                if (differs(n, b))
                {
                    yield return $"{craft} {what}: {n}, kept {b}";
                }
            }
        }
    }

    private static ImmutableSortedDictionary<string, int> Agreed(IEnumerable<JudgedCase> cases, bool patterns) =>
        cases.Where(c => c.IsPattern == patterns).GroupBy(c => c.Craft, StringComparer.Ordinal)
            .ToImmutableSortedDictionary(g => g.Key, g => g.Count(c => c.Judgement.Verdict == Verdict.Agreed), StringComparer.Ordinal);

    private static ImmutableSortedDictionary<string, int> Table(JsonElement json, string key) =>
        json.GetProperty(key).EnumerateObject().ToImmutableSortedDictionary(p => p.Name, p => p.Value.GetInt32(), StringComparer.Ordinal);
}
