using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Which abbreviations the lines of a pattern use: stitches by their short names, and the short words of the trade. A word is looked at once, however often it comes.</summary>
internal sealed class Abbreviations
{
    private static readonly HashSet<string> WordsInFull = new[] { "knit", "purl", "slip", "work", "increase", "decrease", "inches", "inch", "row", "rows", "round", "rounds", "skip", "miss", "in", "ins", "cm", "mm", "m", "g", "yd", "yds", "oz" }.ToHashSet(StringComparer.OrdinalIgnoreCase);

    private readonly PatternFacts _facts;
    private readonly StitchBook _book;
    private readonly SourceText _source;
    private readonly Dialect _terms;
    private readonly List<AbbreviationUse> _uses = [];
    private readonly HashSet<string> _keys = new(StringComparer.Ordinal);
    private readonly HashSet<(string Id, string Said)> _stitches = [];
    private readonly HashSet<string> _ends = new(StringComparer.Ordinal);
    private readonly HashSet<string> _words = new(StringComparer.Ordinal);

    public Abbreviations(PatternFacts facts, StitchBook book, SourceText source)
    {
        _facts = facts;
        _book = book;
        _source = source;
        _terms = facts.TermsInForce ?? Dialect.Us;
    }

    /// <summary>Every word of the lines as it is written, each once.</summary>
    public ImmutableArray<string> Words => [.. _words.Union(_ends, StringComparer.Ordinal)];

    /// <summary>Notes what one line uses.</summary>
    public void Note(List<(Operation Operation, string Said, TextSpan Span)> used, List<Token> tokens)
    {
        foreach (var (operation, said, span) in used)
        {
            if (said.Length > 0 && _stitches.Add((operation.Id, said)) && !IsInFull(said, OperationTable.SpokenIn(operation, _terms)))
            {
                if (!operation.IsSpecial && !IsName(operation, said) && _book.Find(said) is { IsSpecial: false } named && named.Id != operation.Id)
                {
                    Use(new AbbreviationUse(OperationTable.NameIn(named, _terms) ?? said, OperationTable.SpokenIn(named, _terms), false, span)); // "inc", which is worked as one stitch or another
                    continue;
                }

                var name = operation.IsSpecial ? operation.Id : said.Equals(OperationTable.NameIn(operation, _terms), StringComparison.OrdinalIgnoreCase) || !IsName(operation, said) ? OperationTable.NameIn(operation, _terms) ?? operation.Id : said;
                Use(new AbbreviationUse(name, operation.IsSpecial && operation.Spoken == operation.Id ? operation.Definition : OperationTable.SpokenIn(operation, _terms), operation.IsSpecial, span));
            }
        }

        var (words, ends) = (_words.GetAlternateLookup<ReadOnlySpan<char>>(), _ends.GetAlternateLookup<ReadOnlySpan<char>>());
        for (var i = 0; i < tokens.Count; i++)
        {
            var token = tokens[i];
            if (token.Kind != TokenKind.Word)
            {
                continue;
            }

            var text = _source.Slice(token.Span);
            if (i > 0 && tokens[i - 1].Kind == TokenKind.Number && !token.SpaceBefore && NumberFolder.IsOrdinalEnd(text))
            {
                ends.Add(text); // the end of "3rd" is no abbreviation
            }
            else if (i > 0 && text is "st" or "sts" && tokens[i - 1].Kind == TokenKind.Word && _source.Slice(tokens[i - 1].Span).Equals("sl", StringComparison.OrdinalIgnoreCase))
            {
                ends.Add(text); // "sl st" is one abbreviation
            }
            else if (i + 1 < tokens.Count && Fabric(text, tokens[i + 1]) is { } fabric)
            {
                ends.Add(text); // "St st" is one abbreviation
                ends.Add(_source.Slice(tokens[i + 1].Span));
                Use(new AbbreviationUse(fabric.Names[0].Text, fabric.MeaningIn(_terms), false, token.Span.Cover(tokens[i + 1].Span)));
                i++;
            }
            else if (words.Add(text))
            {
                Word(text.ToString(), token.Span);
            }
        }
    }

    /// <summary>Notes what prose uses, of a section of the body or of the header. Only what is surely an abbreviation counts: "alt" and "rep" are words of the language there.</summary>
    /// <param name="source">The text that it stands in.</param>
    /// <param name="span">The prose.</param>
    /// <param name="origin">Where to point; null for the word's own place in the text.</param>
    public void NoteProse(SourceText source, TextSpan span, TextSpan? origin = null)
    {
        var tokens = Lexer.Lex(source, span);
        for (var i = 0; i < tokens.Count; i++)
        {
            var token = tokens[i];
            if (token.Kind != TokenKind.Word || token.Span.Length > 9 || !StandsAlone(source.Text, token.Span) || (i > 0 && tokens[i - 1].Kind == TokenKind.Number && !token.SpaceBefore && NumberFolder.IsOrdinalEnd(source.Slice(token.Span))))
            {
                continue;
            }

            var word = source.ToString(token.Span);
            var next = i + 1 < tokens.Count && tokens[i + 1].Kind == TokenKind.Word ? source.ToString(tokens[i + 1].Span) : "";
            if (!ProseWords.IsAbbreviation(_facts.Craft, word, next) || (word is "CO" && i > 0 && tokens[i - 1].Kind == TokenKind.Comma))
            {
                continue; // behind a town and a comma, CO is a state
            }

            var place = origin ?? token.Span;
            if (next is "st" && IsFabric(word) && TradeWords.Find(_terms, word + " st") is { } fabric)
            {
                Use(new AbbreviationUse(fabric.Names[0].Text, fabric.MeaningIn(_terms), false, place));
                i++;
            }
            else
            {
                Short(word, next, place);
            }
        }
    }

    /// <summary>A stitch or word of the trade outside the rows.</summary>
    private void Short(string word, string next, TextSpan place)
    {
        var (stem, count) = StitchReader.Split(word);
        var name = word is "sl" && next is "st" ? "sl st" : _book.Find(word) is not null ? word : stem;
        if ((name.Length > 1 || count >= 0) && _book.Find(name) is { } stitch && !IsInFull(name, OperationTable.SpokenIn(stitch, _terms)))
        {
            if (!stitch.IsSpecial && IsName(stitch, name))
            {
                var usual = OperationTable.NameIn(stitch, _terms);
                Use(new AbbreviationUse(usual is not null && usual.Equals(name, StringComparison.OrdinalIgnoreCase) ? usual : name, OperationTable.SpokenIn(stitch, _terms), false, place));
            }
        }
        else
        {
            Word(word, place);
        }
    }

    private TradeWord? Fabric(ReadOnlySpan<char> word, Token next) =>
        _facts.Craft == Craft.Knitting && next.Kind == TokenKind.Word && IsFabric(word) && _source.Slice(next.Span).Equals("st", StringComparison.OrdinalIgnoreCase) ? TradeWords.Find(_terms, string.Concat(word, " st")) : null;

    private static bool IsFabric(ReadOnlySpan<char> word) => word is "St" or "st" or "ST" or "g" or "gar";

    // A part of an address or of a file's name is no word.
    private static bool StandsAlone(string text, TextSpan span)
    {
        var (before, after) = (span.Start > 0 ? text[span.Start - 1] : ' ', span.End < text.Length ? text[span.End] : ' ');
        return before is not ('/' or '@' or '.' or '_' or '`' or '#' or '{') && after is not ('/' or '@' or '_' or '`' or '}') && !(after == '.' && span.End + 1 < text.Length && char.IsLetterOrDigit(text[span.End + 1]));
    }

    /// <summary>Notes what the description of a special stitch uses, so that the table made for the page explains it as well ("shell: (2 dc, ch 2, 2 dc) in next sp").</summary>
    public void NoteDescription(StitchDefinition definition)
    {
        var how = new SourceText("", definition.How);
        foreach (var token in Lexer.Lex(how, new TextSpan(0, definition.How.Length)).Where(t => t.Kind == TokenKind.Word && t.Span.Length <= 10))
        {
            var word = how.ToString(token.Span);
            var (stem, count) = StitchReader.Split(word);
            var name = _book.Find(word) is not null ? word : stem;
            if ((name.Length > 1 || count >= 0) && _book.Find(name) is { IsSpecial: false } stitch && IsName(stitch, name) && !IsInFull(name, OperationTable.SpokenIn(stitch, _terms)))
            {
                Use(new AbbreviationUse(OperationTable.NameIn(stitch, _terms) is { } usual && usual.Equals(name, StringComparison.OrdinalIgnoreCase) ? usual : name, OperationTable.SpokenIn(stitch, _terms), false, definition.Origin));
            }
            else
            {
                Word(word, definition.Origin);
            }
        }
    }

    /// <summary>The uses as one table, sorted; where the pattern's own list has it, in the words of that list.</summary>
    public ImmutableArray<AbbreviationUse> Table()
    {
        var own = (_facts.Abbreviations ?? []).Select(a => a with { Meaning = a.Meaning ?? TradeMeaning(a.Name) }).Where(a => a.Meaning is not null)
            .DistinctBy(a => AbbreviationUse.KeyOf(a.Name), StringComparer.Ordinal).ToDictionary(a => AbbreviationUse.KeyOf(a.Name), StringComparer.Ordinal);
        var used = _uses.ToDictionary(u => u.Key, StringComparer.Ordinal);
        return
        [
            .. _uses
                .Where(u => !own.ContainsKey(u.Key))
                .Concat(own.Select(entry => used.TryGetValue(entry.Key, out var use) ? use with { Name = entry.Value.Name, Meaning = entry.Value.Meaning! } : new AbbreviationUse(entry.Value.Name, entry.Value.Meaning!, false, entry.Value.Origin)))
                .OrderBy(u => u.Name, StringComparer.OrdinalIgnoreCase).ThenBy(u => u.Name, StringComparer.Ordinal),
        ];
    }

    private string? TradeMeaning(string name)
    {
        var stitch = _book.Find(name);
        return _uses.Find(u => u.Key == AbbreviationUse.KeyOf(name))?.Meaning ?? TradeWords.Find(_terms, name)?.MeaningIn(_terms) ?? (stitch is null ? null : OperationTable.SpokenIn(stitch, _terms));
    }

    private void Word(string word, TextSpan span)
    {
        if ((word is not ("CO" or "BO") && word.Length > 6) || (word.Length == 1 && _facts.Yarns.Any(y => y.Label == word)))
        {
            return; // a colour's letter stands in the list of yarns
        }

        var isKnown = _keys.Contains(AbbreviationUse.KeyOf(word));
        if (word is "CO" or "BO" && _book.Find(word) is { } edge && !isKnown)
        {
            Use(new AbbreviationUse(word, edge.Spoken, false, span));
            return;
        }

        if (!isKnown && TradeWords.Find(_terms, word) is { } trade && !IsInFull(word, trade.MeaningIn(_terms)))
        {
            var name = trade.Names.FirstOrDefault(n => string.Equals(n.Text, word, StringComparison.OrdinalIgnoreCase))?.Text ?? word;
            Use(new AbbreviationUse(name, trade.MeaningIn(_terms), false, span));
        }
    }

    private void Use(AbbreviationUse use)
    {
        if (_keys.Add(use.Key))
        {
            _uses.Add(use);
        }
    }

    private static bool IsName(Operation operation, string said) => operation.Names.Any(n => AbbreviationUse.KeyOf(n.Text) == AbbreviationUse.KeyOf(said));

    private static bool IsInFull(string said, string meaning)
    {
        var first = said.IndexOf(' ', StringComparison.Ordinal) is var blank and > 0 ? said[..blank] : said;
        return WordsInFull.Contains(first) || string.Equals(said, meaning, StringComparison.OrdinalIgnoreCase)
            || (said.Length >= 5 && meaning.Contains(said, StringComparison.OrdinalIgnoreCase))
            || (said.Length >= 8 && said.AsSpan().IndexOfAny(' ', '-') > 0 && said.Split(' ', '-').All(word => word.Length > 3 || word.All(char.IsAsciiDigit))); // "cable 4 front", "slip-slip-knit"
    }
}
