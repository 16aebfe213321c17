using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Editions;

/// <summary>Editions of sources, and what must hold between a pattern and its editions.</summary>
internal static class EditionsOf
{
    public static Compilation Compile(string text) => Compiler.Compile(new SourceText("made.pattern.md", text));

    public static EditionCompilation In(Compilation plain, string name) => EditionCompiler.Compile(plain, Edition.Find(name)!);

    /// <summary>The text of an edition of a text.</summary>
    public static string Text(string text, string name) => In(Compile(text), name).Source.Text.Text;

    /// <summary>Where an edition does not come to the same as the pattern as it is written, and what is newly found in it; empty as it should be.</summary>
    public static string Differences(Compilation plain, EditionCompilation edition)
    {
        var told = edition.Findings.Where(f => f.Rule != EditionRules.LineLeft && f.Rule != EditionRules.UnitLeft && f.Rule != EditionRules.SideLeft && f.Rule != EditionRules.ChartWithoutWords).Select(f => $"{f.Rule.Code} {f.Message}");
        if (edition.Compilation is not { } made)
        {
            return string.Join("\n", told.Prepend("not made"));
        }

        var lines = plain.Lines.Length == made.Lines.Length
            ? plain.Lines.Zip(made.Lines).Where(p => !IsSame(p.First, p.Second)).Select(p => $"{p.First.Label} {p.First.Text} | {Counts(p.First)} | {Counts(p.Second)} | {p.Second.Text}")
            : [$"{plain.Lines.Length} lines and {made.Lines.Length}"];
        return string.Join("\n", told.Concat(lines));
    }

    private static bool IsSame(WorkedLine a, WorkedLine b) =>
        a.Status == b.Status && a.Before.SequenceEqual(b.Before) && a.After.SequenceEqual(b.After) && a.Stated.SequenceEqual(b.Stated) && a.Kinds.Length == b.Kinds.Length && a.Kinds.Zip(b.Kinds).All(k => Sorted(k.First).SequenceEqual(Sorted(k.Second)));

    private static IEnumerable<int> Sorted(ImmutableSortedDictionary<string, int> kinds) => kinds.Values.Order();

    private static string Counts(WorkedLine line) => $"{line.Status} {string.Join(" ", line.Before)} to {string.Join(" ", line.After)}";
}
