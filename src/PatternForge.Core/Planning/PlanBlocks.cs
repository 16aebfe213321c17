using System.Collections.Immutable;
using PatternForge.Core.Binding;
using PatternForge.Core.Drafts;
using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Planning;

/// <summary>Writes the rows of the plans that a pattern asks for in place of the blocks that ask. The rows are then read, worked and checked like any others; what is found in them is told at the block.</summary>
internal static class PlanBlocks
{
    private const string Info = "plan";
    private const int MostBlocks = 200;

    // A row that nobody understands: the count is not known behind a plan that could not be made.
    private const string NotMade = "Next row: Work as planned.";

    /// <summary>The draft with its plans written out; the same where it asks for none.</summary>
    public static Draft Write(Draft draft, CompileOptions options)
    {
        var read = draft.Mended.Text;
        if (!read.Text.Contains("```" + Info, StringComparison.Ordinal) && !read.Text.Contains("~~~" + Info, StringComparison.Ordinal))
        {
            return draft;
        }

        // What is wrong with the header is told when it is bound for the pattern itself.
        var muted = new FindingBag(read);
        var file = FileSplitter.Split(read, muted);
        var header = file.Header is { } span ? HeaderReader.Read(read, span, options, muted) : null;
        var context = new HeaderContext(read, new FindingBag(read)) { ReadFile = options.ReadFile };
        var facts = HeaderBinder.Bind(header, context, options.House);
        var bag = new FindingBag(read);
        var own = new HeaderContext(read, bag) { Sizes = context.Sizes, SizesKnown = context.SizesKnown };
        own.Numbers = context.Numbers?.For(own) ?? new NumberBook(own, []);
        var mends = new List<Mend>();
        foreach (var block in Find(read, file.Body).Take(MostBlocks))
        {
            var lines = new PlanReader(own, facts, bag).Read(block, options) ?? [NotMade];
            mends.Add(new Mend(block.Whole, string.Join("\n\n", lines)));
        }

        return new Draft(draft.Mended.With(mends), [.. draft.Notes, .. bag.ToSorted().Select(draft.Mended.ToSource)]);
    }

    /// <summary>The findings without those that only repeat, in other words, that a plan could not be made.</summary>
    public static IEnumerable<Finding> WithoutEchoes(IEnumerable<Finding> findings, Draft draft)
    {
        var blocks = draft.Notes.Where(n => PlanRules.All.Contains(n.Rule)).Select(n => n.Span).ToArray();
        return blocks.Length == 0 ? findings : findings.Where(f => !Array.Exists(blocks, b => f.Span.Start <= b.Start && b.Start < f.Span.End && !PlanRules.All.Contains(f.Rule)));
    }

    private static IEnumerable<PlanBlock> Find(SourceText source, TextSpan body)
    {
        var text = source.Text;
        PlanBlock? open = null;
        var mark = "";
        for (var at = body.Start; at < body.End;)
        {
            var line = FileSplitter.LineAt(text, at);
            var said = text.AsSpan(line.Start, line.Length).Trim();
            var next = Math.Max(line.End + 1, line.Start + 1);
            if (line.End + 1 < text.Length && text[line.End] == '\r' && text[line.End + 1] == '\n')
            {
                next = line.End + 2;
            }

            if (mark.Length > 0)
            {
                if (said.StartsWith(mark) && said.TrimStart(mark[0]).IsEmpty)
                {
                    if (open is not null)
                    {
                        yield return open with { Whole = TextSpan.FromBounds(open.Whole.Start, line.End), Content = TextSpan.FromBounds(open.Content.Start, line.Start) };
                    }

                    (open, mark) = (null, "");
                }
            }
            else if (said.StartsWith("```") || said.StartsWith("~~~"))
            {
                var length = said.Length - said.TrimStart(said[0]).Length;
                mark = new string(said[0], length);
                open = said[length..].Trim().Equals(Info, StringComparison.OrdinalIgnoreCase) ? new PlanBlock(line, FileSplitter.Trimmed(text, line), TextSpan.FromBounds(next, next)) : null;
            }

            at = next;
        }
    }
}

/// <summary>A block that asks for a plan.</summary>
/// <param name="Whole">From its opening line to the end of its closing one.</param>
/// <param name="Opening">Its opening line.</param>
/// <param name="Content">What stands between them.</param>
internal sealed record PlanBlock(TextSpan Whole, TextSpan Opening, TextSpan Content);
