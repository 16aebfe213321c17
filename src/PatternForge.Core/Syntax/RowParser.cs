using System.Collections.Immutable;
using System.Runtime.InteropServices;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>
/// Reads an instruction line into rows. Always returns: one bad clause never hides the rest of the row.
/// Knows brackets, repeat marks and labels, but neither stitches nor sizes.
/// </summary>
public sealed class RowParser
{
    private readonly List<Atom> _atoms;
    private readonly SourceText _source;
    private readonly FindingBag _bag;
    private readonly int _maxDepth;

    // Steps of this level and of those around it that are not yet closed; a phrase is ended before a bracket is entered.
    private readonly List<StepNode> _steps = [];
    private readonly List<Atom> _phrase = [];
    private int _at;

    private RowParser(SourceText source, List<Atom> atoms, FindingBag bag, int maxDepth)
    {
        _source = source;
        _atoms = atoms;
        _bag = bag;
        _maxDepth = maxDepth;
    }

    /// <summary>The rows of one instruction line, given by its tokens; usually one.</summary>
    public static ImmutableArray<RowNode> Parse(SourceText source, List<Token> line, FindingBag bag, int maxDepth)
    {
        var folder = NumberFolder.Fold(source, line);
        var atoms = StarAsTimes(folder.Atoms);
        var parser = new RowParser(source, atoms, bag, maxDepth);
        var rows = ImmutableArray.CreateBuilder<RowNode>(1);
        while (parser._at < atoms.Count)
        {
            rows.Add(parser.Row());
        }

        folder.Release();
        return rows.DrainToImmutable();
    }

    /// <summary>"(K1, p1) *6": the only star of the line, between a bracket and a number, is a multiplication sign.</summary>
    private static List<Atom> StarAsTimes(List<Atom> atoms)
    {
        var stars = 0;
        foreach (var atom in atoms)
        {
            stars += atom is { Kind: TokenKind.Mark, Text: "*" } ? 1 : 0;
        }

        for (var i = 1; i + 1 < atoms.Count && stars == 1; i++)
        {
            if (atoms[i] is { Kind: TokenKind.Mark, Text: "*" } star && atoms[i - 1].Kind == TokenKind.Close && atoms[i + 1].Kind == TokenKind.Number)
            {
                atoms[i] = new Atom(TokenKind.Times, star.Span, Spelling.Of("×"), star.SpaceBefore);
            }
        }

        return atoms;
    }

    /// <summary>The parts of a stretch that has no label: a stitch's "how", say.</summary>
    public static ImmutableArray<StepNode> ParseSteps(SourceText source, TextSpan span, FindingBag bag, int maxDepth)
    {
        var folder = NumberFolder.Fold(source, Lexer.Lex(source, span));
        var parser = new RowParser(source, folder.Atoms, bag, maxDepth);
        var steps = ImmutableArray.CreateBuilder<StepNode>();
        while (parser._at < parser._atoms.Count)
        {
            steps.AddRange(parser.Steps(0, out _));
        }

        folder.Release();
        return RepeatFolder.Fold(steps.ToImmutable());
    }

    private RowNode Row()
    {
        var start = _at;
        var label = LabelParser.TryParse(_atoms, ref _at);
        if (label is { IsTitle: true } && _at < _atoms.Count && LabelParser.TryParse(_atoms, ref _at) is { IsTitle: false } second)
        {
            label = second with { StartsPart = true };
        }

        var body = _at;
        var steps = RepeatFolder.Fold(Steps(0, out _));
        if (_at == start)
        {
            _at++; // every pass takes at least one atom
        }

        var last = Math.Min(_at, _atoms.Count) - 1;
        var span = _atoms[start].Span.Cover(_atoms[last].Span);
        var bodySpan = body <= last ? _atoms[body].Span.Cover(_atoms[last].Span) : new TextSpan(span.End, 0);
        return new RowNode(label, span, bodySpan, steps);
    }

    /// <summary>Reads steps up to the closing bracket, or at depth 0 up to the next label or the end.</summary>
    private ImmutableArray<StepNode> Steps(int depth, out Atom? close)
    {
        var (steps, phrase) = (_steps, _phrase);
        var from = steps.Count;
        var before = Separator.None;
        close = null;

        void EndPhrase()
        {
            if (phrase.Count > 0)
            {
                steps.Add(new PhraseNode([.. phrase], before));
                phrase.Clear();
                before = Separator.None;
            }
        }

        while (_at < _atoms.Count)
        {
            var atom = _atoms[_at];
            if (depth == 0 && phrase.Count == 0 && (steps.Count > 0 || before != Separator.None) && StartsNumberedRow(atom))
            {
                return StepsFrom(from);
            }

            switch (atom.Kind)
            {
                case TokenKind.Comma or TokenKind.Semicolon or TokenKind.Colon or TokenKind.Stop:
                    if (atom.Kind == TokenKind.Stop && IsAbbreviationStop(phrase))
                    {
                        _at++;
                        break;
                    }

                    EndPhrase();
                    before = Stronger(before, atom.Kind);
                    _at++;
                    if (depth == 0 && atom.Kind == TokenKind.Stop && StartsLabel())
                    {
                        return StepsFrom(from);
                    }

                    break;
                case TokenKind.Dash when IsRangeDash(phrase):
                    phrase.Add(atom);
                    _at++;
                    break;
                case TokenKind.Dash:
                    EndPhrase();
                    before = before == Separator.None ? Separator.Dash : before;
                    _at++;
                    break;
                case TokenKind.Open:
                    EndPhrase();
                    steps.Add(Group(depth, before));
                    before = Separator.None;
                    break;
                case TokenKind.Close:
                    EndPhrase();
                    if (depth > 0)
                    {
                        close = atom;
                        _at++;
                        return StepsFrom(from);
                    }

                    _bag.Add(RowSyntaxRules.BracketNotOpened, atom.Span, $"there is a closing `{atom.Text}` without an opening bracket", "add the opening bracket, or take this one out");
                    _at++;
                    break;
                case TokenKind.Mark:
                    EndPhrase();
                    steps.Add(new MarkNode(atom.Span, before, atom.Text));
                    before = Separator.None;
                    _at++;
                    break;
                default:
                    phrase.Add(atom);
                    _at++;
                    break;
            }
        }

        EndPhrase();
        return StepsFrom(from);
    }

    private ImmutableArray<StepNode> StepsFrom(int from)
    {
        var steps = CollectionsMarshal.AsSpan(_steps)[from..].ToImmutableArray();
        _steps.RemoveRange(from, _steps.Count - from);
        return steps;
    }

    private GroupNode Group(int depth, Separator before)
    {
        var open = _atoms[_at++];
        if (depth >= _maxDepth)
        {
            _bag.Add(RowSyntaxRules.TooDeep, open.Span, $"brackets stand more than {_maxDepth} deep here", "write the inner part as a row or a special stitch of its own");
            SkipToClose();
            return new GroupNode(open.Span, before, []);
        }

        var body = Steps(depth + 1, out var close);
        if (close is null)
        {
            NotClosed(open);
        }
        else if (body is [PhraseNode { Atoms: [{ Kind: TokenKind.Number }, ..] and { Length: < 4 } }])
        {
            // "[12)": a count, whatever its brackets.
        }
        else if ((open.Text, close.Text) is not (("(", ")") or ("[", "]") or ("{", "}")))
        {
            _bag.Add(RowSyntaxRules.BracketsDiffer, close.Span, $"the bracket opened with `{open.Text}` is closed with `{close.Text}`", "use the same kind of bracket at both ends");
        }

        var end = close?.Span ?? _atoms[Math.Min(_at, _atoms.Count) - 1].Span;
        return new GroupNode(open.Span.Cover(end), before, RepeatFolder.Fold(body));
    }

    /// <summary>"(K2, p2 3 times": the bracket belongs before the number of times.</summary>
    private void NotClosed(Atom open)
    {
        var at = _atoms.IndexOf(open) + 1;
        while (at + 1 < _atoms.Count && !IsTimes(at))
        {
            at++;
        }

        var found = at + 1 < _atoms.Count && at > 0 && _atoms[at - 1] != open;
        var close = open.Text switch { "(" => ")", "[" => "]", _ => "}" };
        var times = found ? _source.ToString(_atoms[at].Span.Cover(_atoms[at + 1].Span)) : "";
        _bag.Add(new Finding(RowSyntaxRules.BracketNotClosed, _source, open.Span, $"the bracket `{open.Text}` is never closed")
        {
            Help = found ? $"close it before `{times}`, if that says how often the bracket is worked" : "add the closing bracket where the repeat ends",
            Fix = found ? new Fix($"Close the bracket before `{times}`", [new Edit(new TextSpan(_atoms[at - 1].Span.End, 0), close)]) : null,
        });
    }

    private bool IsTimes(int at) =>
        (_atoms[at].Kind == TokenKind.Number && (_atoms[at + 1].Is("times") || _atoms[at + 1].Is("time"))) || ((_atoms[at].Kind == TokenKind.Times || _atoms[at].Is("x")) && _atoms[at + 1].Kind == TokenKind.Number);

    /// <summary>Passes over what stands in a bracket, its closing one included.</summary>
    private void SkipToClose()
    {
        for (var open = 1; open > 0 && _at < _atoms.Count; _at++)
        {
            open += _atoms[_at].Kind == TokenKind.Open ? 1 : _atoms[_at].Kind == TokenKind.Close ? -1 : 0;
        }
    }

    private bool StartsLabel()
    {
        var probe = _at;
        return LabelParser.TryParse(_atoms, ref probe) is { IsTitle: false } || (probe > _at && IsShortTitle(probe));
    }

    // "... (23 sts) Row 4: Knit", "...; Row 5: Purl": a number and a colon begin a row where nothing ends the one before.
    private bool StartsNumberedRow(Atom atom)
    {
        if (RowWords.WordOf(atom) == RowWord.None || !char.IsUpper(atom.Text[0]) || _at + 1 >= _atoms.Count || _atoms[_at + 1].Kind != TokenKind.Number)
        {
            return false;
        }

        var probe = _at;
        return LabelParser.TryParse(_atoms, ref probe) is { Numbers.IsEmpty: false } && _atoms[probe - 1].Kind == TokenKind.Colon;
    }

    // "Toe:" inside a line begins a part only where a row label follows it.
    private bool IsShortTitle(int probe) => LabelParser.TryParse(_atoms, ref probe) is not null;

    // "Rows 1-4", "an 8-in tail": a dash behind a number, without blanks.
    private bool IsRangeDash(List<Atom> phrase) =>
        phrase.Count > 0 && phrase[^1].Kind == TokenKind.Number && !_atoms[_at].SpaceBefore && _at + 1 < _atoms.Count && _atoms[_at + 1] is { Kind: TokenKind.Number or TokenKind.Word, SpaceBefore: false };

    private static Separator Stronger(Separator before, TokenKind kind)
    {
        var now = kind switch
        {
            TokenKind.Comma => Separator.Comma,
            TokenKind.Stop => Separator.Stop,
            _ => Separator.Semicolon,
        };
        return now > before ? now : before;
    }

    /// <summary>A stop after a shortened word ("rep.", "dec.,", "sts. rem") ends nothing when a lower-case word or a sign follows.</summary>
    private bool IsAbbreviationStop(List<Atom> phrase)
    {
        if (phrase.Count == 0 || _at + 1 >= _atoms.Count || phrase[^1].Kind != TokenKind.Word)
        {
            return false;
        }

        var next = _atoms[_at + 1];
        if (phrase[^1].Text.StartsWith("rep", StringComparison.OrdinalIgnoreCase) && (next.Is("until") || next.Is("to") || next.Is("from") || next.Is("across") || next.Is("around")))
        {
            return true;
        }

        if (next.Is("into") || (next.Is("in") && phrase[^1].Text.Length <= 4))
        {
            return true; // "1 tr. into 4th ch"
        }

        Span<char> lower = stackalloc char[Math.Min(phrase[^1].Text.Length, 8)];
        var isShort = phrase[^1].Text.AsSpan().ToLowerInvariant(lower) > 0
            && lower is "sc" or "hdc" or "dc" or "tr" or "htr" or "dtr" or "ch" or "rep" or "dec" or "inc" or "foll" or "beg" or "rem" or "tog" or "st" or "sts" or "rnd" or "rnds" or "approx" or "alt" or "patt" or "cont" or "ins" or "in";
        return isShort && (next.Kind is TokenKind.Comma or TokenKind.Semicolon || (next.Kind == TokenKind.Word && char.IsLower(next.Text[0])));
    }
}
