using System.Globalization;
using PatternForge.Core.Binding;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Trials;

/// <summary>Reads what test makers send back: JSON from the form, or YAML that was filled in by hand (JSON is read as the YAML that it is). Never throws for bad input.</summary>
public static class AnswersReader
{
    /// <summary>The longest file of answers in UTF-16 units.</summary>
    public const int MaxLength = 256 * 1024;

    private const int MostEntries = 500;
    private const int LongestText = 4_000;

    private static readonly KeySet Keys = new("", ["test-sheet", "pattern", "version", "size", "name", "gauge|gauges|tension", "yarn|yarns", "measurements|measurement", "time|hours", "comments|comment|sections", .. TestQuestion.All.Select(q => q.Key)]);

    private static readonly KeySet GaugeKeys = new("gauge", "stitches|sts", "rows|rounds|rnds");

    /// <summary>Reads a file of answers.</summary>
    /// <param name="source">The file.</param>
    /// <param name="pattern">The pattern that was tested.</param>
    public static TestAnswers Read(SourceText source, Compilation pattern)
    {
        var bag = new FindingBag(source);
        var whole = new TextSpan(0, source.Text.Length);
        if (source.Text.Length > MaxLength)
        {
            bag.Add(FileRules.TooLarge(source, MaxLength));
        }

        if (bag.Count > 0 || !FileRules.Check(source, bag))
        {
            return new TestAnswers { Source = source, Findings = bag.ToSorted() };
        }

        var map = HeaderReader.Read(source, whole, CompileOptions.Default, bag);
        var context = new HeaderContext(source, bag) { KeyRule = AnswerRules.UnknownKey, Whole = "the answers", SizesKnown = false };
        foreach (var damaged in map.Damaged)
        {
            context.Damage(Keys.Find(damaged) ?? KeySet.Plain(damaged));
        }

        var reading = new Reading(context, pattern);
        return reading.All([.. context.Known(map, Keys)], whole) with { Source = source, Findings = bag.ToSorted() };
    }

    private sealed class Reading(HeaderContext context, Compilation pattern)
    {
        private readonly PatternFacts _facts = pattern.Pattern.Facts;

        public TestAnswers All((string Key, HeaderEntry Entry)[] entries, TextSpan whole)
        {
            var answers = new TestAnswers { Source = context.Source, Findings = [] };
            Pattern(entries);
            var size = Size(entries, whole);
            if (size is not { } at)
            {
                return answers;
            }

            var sheet = TestSheet.Of(pattern, at);
            answers = answers with { Size = at };
            foreach (var (key, entry) in entries)
            {
                var node = entry.Value;
                answers = key switch
                {
                    "version" => answers with { Version = Version(node) },
                    "name" => answers with { Name = Text(node, key) },
                    "gauge" => answers with { Gauges = [.. Gauges(node, sheet)] },
                    "yarn" => answers with { Yarns = [.. Amounts(node, "yarn", [.. sheet.Yarns.Select(y => y.Key)], Dimension.Mass)] },
                    "measurements" => answers with { Measures = [.. Lengths(node, sheet)] },
                    "time" => answers with { Hours = Number(node, key, null, out _) },
                    "comments" => answers with { Comments = [.. Texts(node, key)] },
                    TestQuestion.Errors => answers with { Errors = [.. Errors(node)] },
                    "test-sheet" or "pattern" or "size" => answers,
                    _ => Text(node, key) is { } said ? answers with { Questions = answers.Questions.Add(new SaidOf(key, said)) } : answers,
                };
            }

            return answers;
        }

        private void Pattern((string Key, HeaderEntry Entry)[] entries)
        {
            var title = _facts.Title?.Value.Trim() ?? "Untitled pattern";
            var node = entries.FirstOrDefault(e => e.Key == "pattern").Entry?.Value;
            if (node is not null && Text(node, "pattern") is { } said && !string.Equals(Plain(said), Plain(title), StringComparison.OrdinalIgnoreCase))
            {
                context.Report(AnswerRules.OtherPattern, node.Span, $"these are answers to `{HeaderContext.Short(said)}`, and the pattern is `{HeaderContext.Short(title)}`");
            }
        }

        private int? Size((string Key, HeaderEntry Entry)[] entries, TextSpan whole)
        {
            var sizes = _facts.Sizes;
            var node = entries.FirstOrDefault(e => e.Key == "size").Entry?.Value;
            var said = node is null ? null : Text(node, "size");
            if (said is null)
            {
                if (sizes.Count == 1)
                {
                    return 0;
                }

                context.Report(AnswerRules.UnknownSize, context.FirstLine(whole), "the answers do not say of which size they are", $"add a line `size: {sizes.Names[0]}`");
                return null;
            }

            var at = sizes.IndexOf(said);
            if (at >= 0)
            {
                return at;
            }

            context.Report(AnswerRules.UnknownSize, node!.Span, $"the pattern has no size `{HeaderContext.Short(said)}`", sizes is { Count: 1, Names: [""] } ? "the pattern names no sizes" : $"the sizes are {string.Join(", ", sizes.Names.Select(n => $"`{n}`"))}");
            return null;
        }

        private string? Version(HeaderNode node)
        {
            if (Text(node, "version") is not { } said)
            {
                return null;
            }

            if (_facts.Version?.Trim() is { } own && own != said)
            {
                context.Report(AnswerRules.OtherVersion, node.Span, $"version {HeaderContext.Short(said)} was tested, and the pattern is version {HeaderContext.Short(own)}", "`patternforge diff` tells what changed between them");
            }

            return said;
        }

        private IEnumerable<GaugeGot> Gauges(HeaderNode node, TestSheet sheet)
        {
            if (context.Map(node, "gauge", "`stitches: 22` and `rows: 30` under it") is not { } map)
            {
                yield break;
            }

            // With one gauge its numbers may stand without its name.
            if (map.Entries.All(e => GaugeKeys.Find(e.Name) is not null) && sheet.Gauges.Length > 0)
            {
                yield return One(map, sheet.Gauges[0].Key);
                yield break;
            }

            foreach (var entry in map.Entries.Take(MostEntries))
            {
                if (KnownName(entry, [.. sheet.Gauges.Select(g => g.Key)], "gauge") is { } key && entry.Value is not HeaderScalar { IsBlank: true } && context.Map(entry.Value, "gauge", "`stitches: 22` and `rows: 30` under it") is { } one)
                {
                    yield return One(one, key);
                }
            }

            GaugeGot One(HeaderMap numbers, string key)
            {
                decimal? stitches = null;
                decimal? rows = null;
                foreach (var (name, entry) in context.Known(numbers, GaugeKeys))
                {
                    var value = Number(entry.Value, $"gauge.{name}", null, out _);
                    (stitches, rows) = name == "stitches" ? (value, rows) : (stitches, value);
                }

                return new GaugeGot(key, stitches, rows);
            }
        }

        private IEnumerable<(string, decimal)> Amounts(HeaderNode node, string path, string[] known, Dimension dimension)
        {
            if (node is HeaderScalar { IsBlank: false } && known.Length == 1)
            {
                if (Number(node, path, dimension, out var only) is { } grams)
                {
                    yield return (known[0], only is null ? grams : grams * only.InBase);
                }

                yield break;
            }

            if (context.Map(node, path, "`MC: 180` under it") is not { } map)
            {
                yield break;
            }

            foreach (var entry in map.Entries.Take(MostEntries))
            {
                if (KnownName(entry, known, path) is { } key && Number(entry.Value, path, dimension, out var unit) is { } value)
                {
                    yield return (key, unit is null ? value : value * unit.InBase);
                }
            }
        }

        private IEnumerable<(string, decimal)> Lengths(HeaderNode node, TestSheet sheet)
        {
            if (context.Map(node, "measurements", "`bust: 96 cm` under it") is not { } map)
            {
                yield break;
            }

            foreach (var entry in map.Entries.Take(MostEntries))
            {
                if (KnownName(entry, [.. sheet.Measures.Select(m => m.Key)], "measurement") is { } key && Number(entry.Value, "measurements", Dimension.Length, out var unit) is { } value)
                {
                    yield return (key, value * (unit ?? sheet.Measures.First(m => m.Key == key).Told.Unit).InBase);
                }
            }
        }

        private IEnumerable<SaidOf> Texts(HeaderNode node, string path)
        {
            if (node is HeaderScalar)
            {
                if (Text(node, path) is { } alone)
                {
                    yield return new SaidOf("", alone);
                }

                yield break;
            }

            if (context.Map(node, path, "the heading of a section with the comment behind it") is not { } map)
            {
                yield break;
            }

            foreach (var entry in map.Entries.Take(MostEntries))
            {
                if (Text(entry.Value, path) is { } said)
                {
                    yield return new SaidOf(Cut(entry.Name.Trim()), said);
                }
            }
        }

        // "Crown, Rnd 3: the count is one too few": the row stands before the first colon.
        private static IEnumerable<SaidOf> Errors(HeaderNode node)
        {
            IEnumerable<string> lines = node switch
            {
                HeaderScalar scalar => scalar.Text.Split(['\n', '\r'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries),
                HeaderMap map => map.Entries.Select(e => $"{e.Name}: {(e.Value is HeaderScalar s ? s.Text : "")}"),
                HeaderList list => list.Items.Select(i => i switch
                {
                    HeaderScalar s => s.Text.Trim(),
                    HeaderMap { Entries: [var one] } => $"{one.Name}: {(one.Value is HeaderScalar s ? s.Text : "")}",
                    _ => "",
                }),
                _ => [],
            };
            foreach (var line in lines.Where(l => l.Length > 0).Take(MostEntries))
            {
                var colon = line.IndexOf(": ", StringComparison.Ordinal);
                yield return colon is > 0 and < 80 ? new SaidOf(line[..colon].Trim(), Cut(line[(colon + 2)..].Trim())) : new SaidOf("", Cut(line));
            }
        }

        private string? KnownName(HeaderEntry entry, string[] known, string what)
        {
            if (Array.Find(known, k => string.Equals(Plain(k), Plain(entry.Name), StringComparison.OrdinalIgnoreCase)) is { } key)
            {
                return key;
            }

            if (entry.Value is not HeaderScalar { IsBlank: true })
            {
                var near = Suggest.Nearest(entry.Name, known, 1);
                context.Report(AnswerRules.AboutNothing, entry.Key.Span, $"the pattern has no {what} `{HeaderContext.Short(entry.Name)}`", near.Count > 0 ? $"did you mean `{near[0]}`?" : known.Length == 0 ? null : $"there are {string.Join(", ", known.Select(k => $"`{HeaderContext.Short(k)}`"))}");
            }

            return null;
        }

        /// <summary>A number with a unit that may stand behind it: "180", "180 g", "37,5 cm", "14 1/2 in"; null where nothing is said, or nothing that can be read.</summary>
        private decimal? Number(HeaderNode node, string path, Dimension? dimension, out Unit? unit)
        {
            unit = null;
            if (node is HeaderScalar { IsBlank: true } || context.Scalar(node, path, "a number") is not { } scalar)
            {
                return null;
            }

            var text = scalar.Text.Trim();
            var end = 0;
            while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] is '.' or ','))
            {
                end++;
            }

            var behind = text[end..].Trim();
            if (end is > 0 and < 12 && decimal.TryParse(text[..end].Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value))
            {
                if (behind.Length == 0 || (dimension is null && behind.TrimEnd('.').ToLowerInvariant() is "h" or "hr" or "hrs" or "hour" or "hours" or "st" or "sts" or "stitches" or "row" or "rows" or "rnds" or "rounds"))
                {
                    return value;
                }

                if (dimension is { } wanted && Unit.Find(behind.TrimEnd('.')) is { } found && found.Dimension == wanted)
                {
                    unit = found;
                    return value;
                }
            }

            context.Report(AnswerRules.NotANumber, scalar.Span, $"`{HeaderContext.Short(text)}` is no number that can be read here", dimension switch { Dimension.Mass => "tell the grams: `180`", Dimension.Length => "tell the length with its unit: `96 cm`", _ => "tell a number alone: `22.5`" });
            return null;
        }

        private string? Text(HeaderNode node, string path) => node is HeaderList list
            ? Cut(string.Join("; ", list.Items.OfType<HeaderScalar>().Select(s => s.Text.Trim()).Where(t => t.Length > 0))) is { Length: > 0 } joined ? joined : null
            : context.Text(node, path) is { } text ? Cut(text) : null;

        private static string Cut(string text) => text.Length <= LongestText ? text : text[..(char.IsHighSurrogate(text[LongestText - 1]) ? LongestText - 1 : LongestText)] + "…";

        private static string Plain(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }
}
