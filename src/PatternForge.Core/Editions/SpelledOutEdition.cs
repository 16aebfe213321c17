using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>The pattern without abbreviations: each one is replaced by its words. A line that would not be read as the same stitches then stays as it is.</summary>
internal sealed class SpelledOutEdition : Edition
{
    /// <inheritdoc/>
    public override string Name => "spelled-out";

    /// <inheritdoc/>
    public override string Title => "no abbreviations";

    /// <inheritdoc/>
    public override EditionForm Form => new(Name, null, true);

    /// <inheritdoc/>
    public override EditionStage Stage => EditionStage.Words;

    /// <inheritdoc/>
    public override bool MayLeaveLines => true;

    /// <inheritdoc/>
    public override RewrittenSource Rewrite(Compilation plain)
    {
        var stretches = Stretches.Of(plain);
        var edits = new List<Edit>();
        var list = ListOf(plain.Text.Text, stretches);
        if (list is { } span)
        {
            edits.Add(new Edit(span, "")); // nothing is left that it could explain
        }

        var words = new SpelledWords(plain.Pattern.Facts);
        foreach (var stretch in stretches.Found.Where(s => list is null || !list.Value.Contains(s.Span)))
        {
            var run = new WordRun(plain.Text.Text, stretch);
            for (var i = 0; i < run.Count; i++)
            {
                var (tokens, now) = words.At(run, i);
                if (tokens > 0 && now is not null)
                {
                    var said = run.SpanOf(i).Cover(run.SpanOf(i + tokens - 1));
                    var apart = !run.IsApart(i + tokens) && run.KindOf(i + tokens) is TokenKind.Placeholder or TokenKind.Number;
                    edits.Add(new Edit(said, Letters(run, i, now) + (apart ? " " : "")));
                    Wordings.Article(run, i, now, edits);
                }

                i += Math.Max(0, tokens - 1);
            }
        }

        return new RewrittenSource(plain.Text, edits, []);
    }

    /// <summary>Words begin with a capital where the abbreviation has one for the sentence's sake, and not where all of its letters are capitals anyway.</summary>
    private static string Letters(WordRun run, int at, string words)
    {
        var said = run.Said(at);
        var isCapital = char.IsUpper(said[0]) && (said.Length > 1 && said.All(c => !char.IsLower(c)) && said.Count(char.IsLetter) > 1 ? at == 0 || run.KindOf(at - 1) is TokenKind.Stop or TokenKind.Colon : run.BeginsSentence(at) || said.Skip(1).All(c => !char.IsUpper(c)));
        return isCapital && words.Length > 0 ? char.ToUpperInvariant(words[0]) + words[1..] : words;
    }

    /// <summary>The pattern's own list of abbreviations with its lines; null where it has none.</summary>
    private static TextSpan? ListOf(SourceText text, Stretches stretches)
    {
        if (stretches.Header is not { } header || header.Entries.FirstOrDefault(e => e.Name.Trim().Equals("abbreviations", StringComparison.OrdinalIgnoreCase)) is not { } entry)
        {
            return null;
        }

        var start = Wordings.LineStart(text, entry.Key.Span.Start);
        var next = header.Entries.Select(e => e.Key.Span.Start).Where(s => s > entry.Key.Span.Start).DefaultIfEmpty(-1).Min();
        var end = next >= 0 ? Wordings.LineStart(text, next) : FileSplitter.Split(text, new FindingBag(text)).Header!.Value.End;
        return TextSpan.FromBounds(start, end);
    }
}
