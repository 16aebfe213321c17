using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Exam;

namespace PatternForge.Tests.Rows;

/// <summary>A row of the row books, and what it must come to.</summary>
/// <param name="Place">File and line.</param>
/// <param name="Question">The row, what stands before it, and the facts in force.</param>
/// <param name="Expected">Counts after it, one a size, or by kind; <c>?</c> where they cannot be known; then findings as <c>PF302[M L]=46</c>.</param>
internal sealed record RowEntry(string Place, RowQuestion Question, string Expected);

/// <summary>
/// Reads the row books: lines <c>before | row | after</c>. "before" is one count or one a size, then markers as <c>@12,24</c> or needles as
/// <c>#10,10</c>. A line <c>= round, uk, sizes S M L, gauge ..., chart A 12</c> sets the facts up to the next such line; <c>= let C6F: how</c> adds a stitch that the
/// pattern defines; <c>= note ...</c> a note. Lines beginning with <c>+</c> are rows before the next entry. <c>//</c> begins a comment.
/// Crochet (<c>= crochet, round</c>) may count by kind, before and after: <c>24 dc, 4 ch-2 sp</c>; a plain number counts stitches alone.
/// </summary>
internal static class RowBook
{
    public static IEnumerable<RowEntry> Read(string name, IEnumerable<string> lines)
    {
        var facts = Plain;
        var setup = ImmutableArray.CreateBuilder<string>();
        var number = 0;
        foreach (var line in lines)
        {
            number++;
            if (line.Length == 0 || line.StartsWith("//", StringComparison.Ordinal))
            {
                continue;
            }

            if (line.StartsWith("= ", StringComparison.Ordinal))
            {
                facts = Facts(facts, line[2..]);
            }
            else if (line.StartsWith("+ ", StringComparison.Ordinal))
            {
                setup.Add(line[2..]);
            }
            else
            {
                yield return Entry(facts, $"{name}:{number}", line.Split(" | "), setup.ToImmutable());
                setup.Clear();
            }
        }
    }

    private static RowQuestion Plain => new() { Id = "", Craft = "knit", Dialect = "US", InTheRound = false, Before = CaseCount.Unknown, Text = "" };

    private static RowQuestion Facts(RowQuestion facts, string line)
    {
        if (line.StartsWith("let ", StringComparison.Ordinal))
        {
            var colon = line.IndexOf(": ", StringComparison.Ordinal);
            return facts with { Defs = facts.Defs.Add((line[4..colon], line[(colon + 2)..])) };
        }

        if (line.StartsWith("note ", StringComparison.Ordinal))
        {
            return facts with { Notes = facts.Notes.Add(line[5..]) };
        }

        facts = Plain;
        foreach (var part in line.Split(", "))
        {
            facts = part.Split(' ') switch
            {
                ["crochet"] => facts with { Craft = "crochet" },
                ["tunisian"] => facts with { Craft = "tunisian" },
                ["round"] => facts with { InTheRound = true },
                ["uk"] => facts with { Dialect = "UK" },
                ["sizes", .. var names] => facts with { Sizes = [.. names] },
                ["chart", var chart, var width] => facts with { Charts = facts.Charts.Add(($"Chart {chart}", int.Parse(width, CultureInfo.InvariantCulture))) },
                ["gauge", ..] => facts with { Gauge = part["gauge ".Length..] },
                _ => facts,
            };
        }

        return facts;
    }

    private static RowEntry Entry(RowQuestion facts, string place, string[] cells, ImmutableArray<string> setup)
    {
        if (cells.Length != 3)
        {
            throw new InvalidDataException($"{place}: three cells are needed, not {cells.Length}.");
        }

        var before = cells[0].Split(' ', StringSplitOptions.RemoveEmptyEntries);
        ImmutableArray<int> List(char sign) => [.. before.Where(w => w[0] == sign).SelectMany(w => w[1..].Split(',')).Select(n => int.Parse(n, CultureInfo.InvariantCulture))];
        var question = facts with
        {
            Id = place,
            Text = cells[1].Trim(),
            Setup = setup,
            Before = IsByKind(cells[0]) ? new CaseCount([], [Kinds(cells[0])]) : new CaseCount([.. before.Where(w => w[0] is not ('@' or '#')).Select(Count)], []),
            Markers = List('@') is { IsEmpty: false } markers ? [markers] : [],
            Needles = List('#'),
        };
        return new RowEntry(place, question, cells[2].Trim());
    }

    private static bool IsByKind(string cell) => cell.Any(char.IsAsciiLetter);

    /// <summary>"24 dc, 4 ch-2 sp" as a table.</summary>
    private static ImmutableSortedDictionary<string, int> Kinds(string cell) =>
        cell.Split(',', StringSplitOptions.TrimEntries).Select(part => part.Split(' ', 2)).ToImmutableSortedDictionary(p => p[1].Trim(), p => int.Parse(p[0], CultureInfo.InvariantCulture), StringComparer.Ordinal);

    private static int? Count(string word) => word == "-" ? null : int.Parse(word, CultureInfo.InvariantCulture);

    /// <summary>What the compiler made of an entry, told in the words of its expectation; the same text when all agrees.</summary>
    public static string Tell(RowEntry entry)
    {
        var outcome = Examiner.Work(entry.Question);
        var expected = entry.Expected.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var told = new List<string>();
        var count = string.Join(' ', expected.TakeWhile(w => !w.StartsWith("PF", StringComparison.Ordinal)));
        if (IsByKind(count))
        {
            told.Add(ByKind(outcome, Kinds(count), count));
        }
        else if (expected[0] != "?")
        {
            var counts = outcome.IsChecked || expected.Any(w => w.StartsWith("PF", StringComparison.Ordinal)) ? outcome.After : [null];
            told.AddRange((counts.Distinct().Count() == 1 ? counts.Take(1) : counts).Select(n => n?.ToString(CultureInfo.InvariantCulture) ?? "-"));
        }
        else
        {
            told.Add(outcome.IsChecked ? outcome.After[0]?.ToString(CultureInfo.InvariantCulture) ?? "checked" : "?");
        }

        foreach (var finding in outcome.Findings.Where(f => f.Severity != Core.Findings.Severity.Note))
        {
            var sizes = finding.Sizes.IsDefaultOrEmpty || entry.Question.Sizes.Length < 2 ? "" : $"[{string.Join(',', finding.Sizes.Select(s => entry.Question.Sizes[s]))}]";
            var wanted = expected.FirstOrDefault(w => w.StartsWith(finding.Code, StringComparison.Ordinal)) is { } word && word.IndexOf('=', StringComparison.Ordinal) is var at and > 0 ? word[(at + 1)..] : null;
            var names = wanted is not null && finding.Message.Split([' ', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries).Contains(wanted, StringComparer.Ordinal);
            told.Add($"{finding.Code}{sizes}{(names ? "=" + wanted : "")}");
        }

        var text = string.Join(' ', told);
        return text == entry.Expected ? text : $"{text} ({outcome.Status.ToString().ToLowerInvariant()}; {string.Join("; ", outcome.Findings.Select(f => $"{f.Code} {f.Message}"))})";
    }

    /// <summary>The kinds made, in the words of the expectation where they agree with it.</summary>
    private static string ByKind(SeenRow outcome, ImmutableSortedDictionary<string, int> expected, string words)
    {
        if (outcome is not { IsChecked: true, Kinds: [var made, ..] })
        {
            return outcome.IsChecked ? outcome.After[0]?.ToString(CultureInfo.InvariantCulture) ?? "-" : "?";
        }

        return made.SequenceEqual(expected) ? words : string.Join(", ", made.Select(k => $"{k.Value.ToString(CultureInfo.InvariantCulture)} {k.Key}"));
    }
}
