using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>A draft as it is read, and the notes on what was guessed.</summary>
/// <param name="Mended">The text with its way back to the file.</param>
/// <param name="Notes">One note a kind of repair, at places of the file; none for mere typography.</param>
public sealed record Draft(MendedText Mended, ImmutableArray<Finding> Notes);

/// <summary>
/// Reads a draft as it comes out of a word processor, a web page or an old file as it was meant: first single signs, then rows that were set off,
/// then what became of lists, tables and stars. Every later stage sees the mended text alone; findings go back to the file's own places.
/// </summary>
public static class DraftReader
{
    private const int MostEdits = 2000;

    /// <summary>Reads a file; at once, without a copy, where there is nothing to mend.</summary>
    public static Draft Read(SourceText source)
    {
        var notes = new Notes(source);
        var mended = MendedText.Unchanged(source);
        mended = notes.Apply(mended, SignMender.Find(mended.Text));
        var body = FileSplitter.Split(mended.Text, new FindingBag(mended.Text)).Body;
        if (notes.Apply(mended, SetOffRows.Find(mended.Text, body)) is var set && set != mended)
        {
            mended = set;
            body = FileSplitter.Split(mended.Text, new FindingBag(mended.Text)).Body;
        }

        mended = notes.Apply(mended, LineMender.Find(mended.Text, body));
        return new Draft(mended, notes.ToFindings());
    }

    /// <summary>Gathers the mends that are told, by their kind.</summary>
    private sealed class Notes
    {
        private readonly SourceText _source;
        private readonly Dictionary<Rule, (List<TextSpan> Places, List<Edit> Edits)> _kinds = [];

        public Notes(SourceText source) => _source = source;

        public MendedText Apply(MendedText text, List<Mend> mends)
        {
            foreach (var mend in mends)
            {
                if (mend.Why is { } rule)
                {
                    if (!_kinds.TryGetValue(rule, out var kind))
                    {
                        _kinds[rule] = kind = ([], []);
                    }

                    kind.Edits.Add(new Edit(text.ToSource(mend.Span), mend.NewText));
                    if (mend.Shown is { } shown)
                    {
                        kind.Places.Add(text.ToSource(shown));
                    }
                }
            }

            return text.With(mends);
        }

        public ImmutableArray<Finding> ToFindings() => _kinds.Count == 0 ? [] :
        [
            .. _kinds.Where(k => k.Value.Places.Count > 0).OrderBy(k => k.Key.Code, StringComparer.Ordinal).Select(k =>
            {
                var (places, edits) = k.Value;
                var (message, help, title) = DraftRules.Words(k.Key, places.Count, _source.ToString(places[0]));
                return new Finding(k.Key, _source, places[0], message)
                {
                    Help = help,
                    Fix = edits.Count <= MostEdits ? new Fix(title, [.. edits]) : null,
                };
            }),
        ];
    }
}
