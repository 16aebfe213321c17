using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>
/// The pattern for those who work in mirror image, from left to right. Rows stay as they are, because every stitch is worked as it is defined with the hands exchanged; what
/// comes of it is the mirror image. So left and right change places where they are sides of the piece, of its wearer or of the work, and the page mirrors charts, diagrams
/// and schematics. Where it is not sure that a word is a side, it stays and is told.
/// </summary>
internal sealed class MirrorEdition : Edition
{
    /// <inheritdoc/>
    public override string Name => "left-handed";

    /// <inheritdoc/>
    public override string Title => "for left-handed makers, in mirror image";

    /// <inheritdoc/>
    public override EditionForm Form => new(Name, null, false) { IsMirrored = true };

    /// <inheritdoc/>
    public override EditionStage Stage => EditionStage.Sides;

    /// <inheritdoc/>
    public override RewrittenSource Rewrite(Compilation plain)
    {
        var text = plain.Text.Text;
        var words = WordsOf(plain.Pattern.Facts.TermsInForce);
        var edits = new List<Edit>();
        var findings = new List<Finding>();
        var stretches = Stretches.Of(plain);
        var pictures = stretches.Header?.Entries.Where(e => e.Name.Trim().ToLowerInvariant() is "photos" or "photo").Select(e => e.Span).ToList() ?? []; // they show what a right-handed maker made
        foreach (var stretch in stretches.Found.Concat(stretches.Named.Select(n => new Stretch(n, StretchKind.Heading))).Where(s => !pictures.Exists(p => p.Contains(s.Span)) && s.Kind is not (StretchKind.YarnLabel or StretchKind.Weight or StretchKind.Tool)))
        {
            var run = new WordRun(text, stretch);
            for (var i = 0; i < run.Count; i++)
            {
                var (tokens, now) = words.At(run, i);
                if (tokens == 0)
                {
                    continue;
                }

                if (now is not null)
                {
                    Wordings.Replace(run, i, tokens, now, edits);
                }
                else if (stretch.Kind != StretchKind.Definition)
                {
                    findings.Add(Say(plain, EditionRules.SideLeft, run.SpanOf(i), $"`{run.Said(i)}` stands as it was written: it is not sure that it is a side", "say \"left-hand\" or \"right-hand\" where it is one"));
                }
            }
        }

        return new RewrittenSource(plain.Text, edits, [.. findings]);
    }

    /// <summary>Words of the page itself, on a drawing or its rows, in mirror image.</summary>
    internal static string Told(string said, Dialect? terms)
    {
        if (said.Length == 0)
        {
            return said;
        }

        var run = new WordRun(new SourceText("", said + "\n"), new Stretch(new TextSpan(0, said.Length), StretchKind.Prose));
        var words = WordsOf(terms);
        var edits = new List<Edit>();
        for (var i = 0; i < run.Count; i++)
        {
            if (words.At(run, i) is var (tokens, now) && tokens > 0 && now is not null)
            {
                Wordings.Replace(run, i, tokens, now, edits);
            }
        }

        foreach (var edit in edits.OrderByDescending(e => e.Span.Start))
        {
            said = string.Concat(said.AsSpan(0, edit.Span.Start), edit.NewText, said.AsSpan(edit.Span.End));
        }

        return said;
    }

    private static SideWords WordsOf(Dialect? terms) => new(terms == Dialect.Uk ? "anticlockwise" : "counterclockwise");
}

/// <summary>Words of a page in mirror image.</summary>
public static class MirrorWords
{
    /// <summary>"Read right-side rows from right to left" as "Read right-side rows from left to right".</summary>
    public static string In(string said, Dialect? terms) => MirrorEdition.Told(said, terms);
}
