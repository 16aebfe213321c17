using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>
/// Says of a stretch that was not understood which word stopped the reading, and what would be understood in its place. A word is offered only where the row,
/// read again with it, is understood better than before; so no offer is a mere likeness of letters.
/// </summary>
internal sealed class Recovery
{
    private const int MostTrialsOfFile = 600;
    private const int MostTrialsOfRow = 40;
    private const int LongestLine = 1000;

    private readonly SourceText _source;
    private readonly PatternFacts _facts;
    private readonly StitchBook _book;
    private readonly CompileOptions _options;
    private readonly KnownWords _words;
    private int _trials;

    public Recovery(SourceText source, PatternFacts facts, StitchBook book, CompileOptions options)
    {
        _source = source;
        _facts = facts;
        _book = book;
        _options = options;
        _words = new KnownWords(book);
    }

    /// <summary>The finding for a stretch that was not understood.</summary>
    /// <param name="line">The instruction line that holds it.</param>
    /// <param name="row">Its row.</param>
    /// <param name="unread">The stretch.</param>
    public Finding Tell(TextSpan line, TextSpan row, TextSpan unread)
    {
        var said = Shortened(_source.ToString(unread));
        if (line.Length <= LongestLine && Misspelt(line, row, unread) is var (word, offers) && offers.Length > 0)
        {
            return new Finding(RowRules.NotRead, _source, word, $"`{_source.ToString(word)}` was not understood, so the counts of this row are not checked")
            {
                Help = $"did you mean {string.Join(" or ", offers.Select(o => $"`{o}`"))}?",
                Fix = offers.Length == 1 ? new Fix($"Write `{offers[0]}`", [new Edit(word, offers[0])]) : null,
            };
        }

        if (_facts.Craft != Stitches.Craft.Knitting && AtomsOf(unread) is [{ Kind: TokenKind.Word } stitch, { Kind: TokenKind.Word } place, ..] && (place.Is("in") || place.Is("into") || place.Is("around")) && !_words.Knows(stitch.Text))
        {
            return new Finding(RowRules.NotRead, _source, stitch.Span, $"`{stitch.Text}` was not understood, so the counts of this row are not checked")
            {
                Help = $"a stitch was expected here: define `{stitch.Text}` under `stitches` in the header, or state the count that the next rows can go on from",
            };
        }

        var before = _source.Slice(TextSpan.FromBounds(row.Start, Math.Max(row.Start, unread.Start))).ToString();
        var forms = ExpectedForms.For(Vocabulary.Normalise(AtomsOf(unread)), before, _facts.Craft != Stitches.Craft.Knitting);
        return new Finding(RowRules.NotRead, _source, unread, $"`{said}` was not understood, so the counts of this row are not checked")
        {
            Help = forms ?? "write it in other words, or state the count that the next rows can go on from",
        };
    }

    /// <summary>The word that, put right, lets the row be read, and how it may be put right; up to three ways.</summary>
    private (TextSpan Word, ImmutableArray<string> Offers)? Misspelt(TextSpan line, TextSpan row, TextSpan unread)
    {
        var text = _source.ToString(line);
        (int Unread, int Findings)? now = null;
        var trials = 0;
        foreach (var atom in Candidates(line, row, unread))
        {
            var offers = ImmutableArray.CreateBuilder<string>();
            foreach (var near in _words.Nearest(atom.Text, 8))
            {
                if (trials++ >= MostTrialsOfRow || _trials++ >= MostTrialsOfFile)
                {
                    return null;
                }

                var offer = KnownWords.LikeCase(near, atom.Text);
                now ??= Read(text);
                var at = atom.Span.Start - line.Start;
                var then = Read(string.Concat(text.AsSpan(0, at), offer, text.AsSpan(at + atom.Text.Length)));
                if (then.Unread < now.Value.Unread && then.Findings <= now.Value.Findings)
                {
                    offers.Add(offer);
                    if (offers.Count == 3 || KnownWords.HasSameLetters(near, atom.Text) || KnownWords.IsSlip(atom.Text))
                    {
                        break;
                    }
                }
            }

            if (offers.Count > 0)
            {
                return (new TextSpan(atom.Span.Start, atom.Text.Length), Best(offers, atom.Text));
            }
        }

        return null;
    }

    // Offers of a less likely slip say less than the first; two spellings of one word are one.
    private static ImmutableArray<string> Best(ImmutableArray<string>.Builder offers, string word)
    {
        var likely = KnownWords.Slip(word, offers[0]);
        return KnownWords.IsSlip(word) || likely == 0
            ? [offers[0]]
            : [.. offers.Where(o => KnownWords.Slip(word, o) == likely && Suggest.Distance(o, word) <= Suggest.Distance(offers[0], word)).DistinctBy(o => Vocabulary.NormOf(new Atom(TokenKind.Word, default, Spelling.Of(o), true)), StringComparer.Ordinal)];
    }

    /// <summary>The words in and beside the stretch that rows do not know, then those that are known and often slips.</summary>
    private List<Atom> Candidates(TextSpan line, TextSpan row, TextSpan unread)
    {
        var atoms = AtomsOf(row.Cover(unread)).Where(a => a.Kind == TokenKind.Word && line.Contains(a.Span)).ToList();
        var first = atoms.FindIndex(a => a.Span.End > unread.Start);
        first = first < 0 ? atoms.Count : first;
        var near = atoms.Skip(Math.Max(0, first - 2)).TakeWhile(a => a.Span.Start <= unread.End + 12).Take(16).ToList();
        return [.. near.Where(a => !_words.Knows(a.Text)), .. near.Where(a => KnownWords.IsSlip(a.Text) && _words.Knows(a.Text))];
    }

    private ImmutableArray<Atom> AtomsOf(TextSpan span)
    {
        var folder = NumberFolder.Fold(_source, Lexer.Lex(_source, span));
        ImmutableArray<Atom> atoms = [.. folder.Atoms];
        folder.Release();
        return atoms;
    }

    /// <summary>How much of a line is not understood, and how much is found wrong with it.</summary>
    private (int Unread, int Findings) Read(string line)
    {
        var source = new SourceText("", line);
        var bag = new FindingBag(source);
        var context = new RowContext(source, _facts, _book, bag, _options);
        var unread = 0;
        foreach (var node in RowParser.Parse(source, Lexer.Lex(source, new TextSpan(0, line.Length)), bag, _options.MaxDepth))
        {
            context.RowEnd = node.Body.End;
            var body = RowBinder.Bind(node.Steps, context);
            var count = UnreadSteps.In(body.Steps).Count();
            unread += count == 0 && body.HasUnread ? 1 : count;
        }

        return (unread, bag.Count);
    }

    private static string Shortened(string text)
    {
        const int Most = 60;
        if (text.Length <= Most)
        {
            return text;
        }

        var blank = text.LastIndexOf(' ', Most);
        return text[..(blank > 20 ? blank : Most)] + " …";
    }
}
