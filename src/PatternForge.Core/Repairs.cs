using System.Text;
using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core;

/// <summary>A source with its exact repairs made.</summary>
/// <param name="Source">The text as it was.</param>
/// <param name="Compilation">What the compiler makes of the repaired text; its source is that text.</param>
/// <param name="Made">How many repairs were made.</param>
/// <param name="Refused">How many were left out because a new error would have followed.</param>
public sealed record RepairedText(SourceText Source, Compilation Compilation, int Made, int Refused)
{
    /// <summary>True when the text is another one now.</summary>
    public bool IsChanged => !string.Equals(Source.Text, Compilation.Source.Text, StringComparison.Ordinal);
}

/// <summary>
/// Makes the exact repairs that findings offer, and reads the text again after each pass. A pass that would bring a new error, or a line that is no longer
/// understood, is taken back and its repairs are tried one by one.
/// </summary>
public static class Repairs
{
    private const int MostPasses = 8;

    // What one pass changes at most; the rest is the next pass's.
    private const int MostEdits = 4000;

    // Each try is a whole compilation.
    private const int MostTries = 48;

    /// <summary>Repairs a text; nothing is changed where nothing is exact. Accepted findings are left alone.</summary>
    public static RepairedText Make(SourceText source, CompileOptions? options = null, CancellationToken cancel = default)
    {
        var now = Compiler.Compile(source, options, cancel);
        var refused = new HashSet<(string, string)>();
        var (made, tries) = (0, 0);

        // Characters that were lost would be lost for good.
        if (source.Text.Contains('\uFFFD', StringComparison.Ordinal))
        {
            return new(source, now, 0, 0);
        }

        for (var pass = 0; pass < MostPasses && tries < MostTries; pass++)
        {
            var open = now.Findings.Where(f => f is { Accepted: null, Fix.Edits.IsDefaultOrEmpty: false } && !refused.Contains((f.Rule.Code, f.Message))).ToArray();
            var chosen = Apart(open);
            if (chosen.Count == 0)
            {
                break;
            }

            tries++;
            if (Try(now, chosen) is { } next)
            {
                (now, made) = (next, made + chosen.Count);
                continue;
            }

            foreach (var finding in chosen)
            {
                // Places move with every repair that is made, so after one the rest waits for the next pass.
                if (tries++ < MostTries && Try(now, [finding]) is { } one)
                {
                    (now, made) = (one, made + 1);
                    break;
                }

                refused.Add((finding.Rule.Code, finding.Message));
            }
        }

        return new(source, now, made, refused.Count);

        Compilation? Try(Compilation before, List<Finding> findings)
        {
            var text = With(before.Source.Text, findings.SelectMany(f => f.Fix!.Edits));
            var after = Compiler.Compile(new SourceText(source.Path, text), options, cancel);
            return !after.Findings.Any(FileRules.IsRefusal) && Errors(after) <= Errors(before) && after.Coverage.Unread <= before.Coverage.Unread ? after : null;
        }
    }

    /// <summary>The text with edits that do not overlap. A new line ends as the text's first line does.</summary>
    public static string With(string text, IEnumerable<Edit> edits)
    {
        var mended = new StringBuilder(text.Length + 64);
        var at = 0;
        var lineEnd = LineEndOf(text);
        foreach (var edit in edits.OrderBy(e => e.Span.Start).ThenBy(e => e.Span.End))
        {
            mended.Append(text, at, edit.Span.Start - at).Append(lineEnd == "\n" ? edit.NewText : edit.NewText.ReplaceLineEndings(lineEnd));
            at = edit.Span.End;
        }

        return mended.Append(text, at, text.Length - at).ToString();
    }

    /// <summary>The findings whose repairs neither overlap nor touch the same place; the first one wins, and a repair is made whole or not at all.</summary>
    private static List<Finding> Apart(IEnumerable<Finding> findings)
    {
        var chosen = new List<Finding>();
        var taken = new List<TextSpan>();
        foreach (var finding in findings)
        {
            var spans = finding.Fix!.Edits.Select(e => e.Span).OrderBy(s => s.Start).ThenBy(s => s.End).ToArray();
            var isSound = spans.All(s => s.Start >= 0 && s.End <= finding.Source.Text.Length) && spans.Zip(spans.Skip(1)).All(pair => pair.First.End <= pair.Second.Start);
            if (isSound && taken.Count + spans.Length <= MostEdits && !spans.Any(s => taken.Exists(t => t.Start <= s.End && s.Start <= t.End)))
            {
                chosen.Add(finding);
                taken.AddRange(spans);
            }
        }

        return chosen;
    }

    private static int Errors(Compilation compilation) => compilation.Findings.Count(f => f.Severity == Severity.Error && f.Accepted is null);

    private static string LineEndOf(string text)
    {
        var at = text.AsSpan().IndexOfAny('\r', '\n');
        return at < 0 || text[at] == '\n' ? "\n" : at + 1 < text.Length && text[at + 1] == '\n' ? "\r\n" : "\r";
    }
}
