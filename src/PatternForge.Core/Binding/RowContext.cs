using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>What the readers of a row share: the pattern's facts, the sizes that the row is for, and what they note on the way.</summary>
internal sealed class RowContext
{
    private static readonly HashSet<string> None = [];

    private Dictionary<string, NamedNumber>? _numbers;

    public RowContext(SourceText source, PatternFacts facts, StitchBook book, FindingBag bag, CompileOptions options)
    {
        Source = source;
        Facts = facts;
        Book = book;
        Bag = bag;
        Options = options;
    }

    public SourceText Source { get; }

    public PatternFacts Facts { get; }

    public StitchBook Book { get; }

    public FindingBag Bag { get; }

    public CompileOptions Options { get; }

    /// <summary>True when the rows are crochet, Tunisian crochet counted in.</summary>
    public bool IsCrochet => Facts.Craft != Craft.Knitting;

    /// <summary>The declared terms; American where none are.</summary>
    public Dialect Terms => Facts.TermsInForce ?? Dialect.Us;

    public int SizeCount => Facts.Sizes.Count;

    /// <summary>The sizes that the row is for; empty for all.</summary>
    public ImmutableArray<int> Scope { get; set; } = [];

    /// <summary>The end of the row's body: a lone bracketed number there may be a count.</summary>
    public int RowEnd { get; set; }

    /// <summary>Set when a number of the row cannot be used, so that the row is taken on trust.</summary>
    public bool HasBadNumber { get; set; }

    /// <summary>True once the row has named a chart: rows named after it are the chart's.</summary>
    public bool HasChart { get; set; }

    /// <summary>True when the phrase in hand is all that its row says.</summary>
    public bool IsAlone { get; set; }

    /// <summary>True when the last slipped stitches were slipped together: psso passes both over.</summary>
    public bool SlippedTogether { get; set; }

    /// <summary>Counts found inside phrases.</summary>
    public List<Claim> Claims { get; } = [];

    /// <summary>Pieces that hold a place marked with two stars, by their names in lower case.</summary>
    public HashSet<string> MarkedPieces { get; init; } = None;

    /// <summary>Stitch patterns that may be called by their names.</summary>
    public ImmutableArray<StitchPattern> StitchPatterns { get; init; } = [];

    /// <summary>The headings of the pattern's pieces, in lower case.</summary>
    public ImmutableArray<string> Pieces { get; init; } = [];

    /// <summary>Operations met, in order.</summary>
    public List<(Operation Operation, string Said, TextSpan Span)> Used { get; } = [];

    /// <summary>Crochet: how many stitches the step read last skips; 0 for other steps.</summary>
    public int LastSkip { get; set; }

    /// <summary>The name by which the stitch read last was called, without its number.</summary>
    public string LastName { get; set; } = "";

    /// <summary>True for the letters that one of the header's yarns goes by in the rows.</summary>
    public bool IsYarn(ReadOnlySpan<char> word)
    {
        foreach (var yarn in Facts.Yarns)
        {
            if (yarn.Label is { Length: > 0 } label && word.Equals(label, label.Length == 1 ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Notes the use of a stitch that is always known by that name.</summary>
    public void UseNamed(string name, TextSpan span)
    {
        if (Book.Find(name) is { } operation)
        {
            Used.Add((operation, name, span));
        }
    }

    public void Use(Operation operation, TextSpan span) => Used.Add((operation, LastName, span));

    /// <summary>A number of the row as an amount, one value a size; problems are reported once and leave it empty.</summary>
    public Amount AmountOf(Lexeme lexeme) => lexeme.Atom.Kind == TokenKind.Placeholder ? Named(lexeme.Atom) : AmountOf(lexeme.Number!);

    public Amount AmountOf(SizedNumber number)
    {
        // "k4 (20)" in a pattern of one size: the bracket is the row's count.
        return number.Span.End >= RowEnd - 1 || (IsCrochet && EndsSentence(number.Span)) ? CountBehind(number) : new Amount(Spread(number) ?? Unknown(), number.Span);
    }

    /// <summary>How often: "x 6 (12)" in a pattern of one size is six times, and the bracket is the row's count.</summary>
    public Amount TimesOf(SizedNumber number) => IsCrochet ? CountBehind(number) : AmountOf(number);

    private Amount CountBehind(SizedNumber number)
    {
        if (SizeCount == 1 && number.Values.Length == 2 && Whole(number.Values[1]) is { } stated)
        {
            Claims.Add(new Claim(number.Span, ClaimKind.Total, PerSize.Shared<int?>(stated)));
            return new Amount(PerSize.Shared(Whole(number.Values[0])), number.Span);
        }

        return new Amount(Spread(number) ?? Unknown(), number.Span);
    }

    private bool EndsSentence(TextSpan span)
    {
        var text = Source.Text.AsSpan(Math.Min(span.End, Source.Text.Length)).TrimStart();
        return text.IsEmpty || text[0] is '.' or ';' or '\n' or '\r';
    }

    public static Amount Constant(int value, TextSpan origin) => new(PerSize.Shared<int?>(value), origin);

    public static Amount Negative(Amount amount) => amount with { Values = amount.Values.Map(v => -v) };

    public static Amount Times(Amount amount, int factor) => amount with { Values = amount.Values.Map(v => v is { } n ? Clamp((long)n * factor) : (int?)null) };

    /// <summary>The values of a list laid out over the sizes; null, with a finding, when their number fits neither all sizes nor those the row is for.</summary>
    public PerSize<int?>? Spread(SizedNumber number)
    {
        var values = number.Values;
        if (values.Length == 1)
        {
            if (Whole(values[0]) is { } one)
            {
                return PerSize.Shared<int?>(one);
            }

            HasBadNumber = true;
            return null;
        }

        if (values.Length == SizeCount)
        {
            return PerSize.Each([.. values.Select(Whole)]);
        }

        if (!Scope.IsEmpty && values.Length == Scope.Length)
        {
            var each = new int?[SizeCount];
            for (var i = 0; i < Scope.Length; i++)
            {
                each[Scope[i]] = Whole(values[i]);
            }

            return PerSize.Each([.. each]);
        }

        var sizes = Scope.IsEmpty ? Facts.Sizes.Names : [.. Scope.Select(i => Facts.Sizes.Names[i])];
        var many = sizes.Length == 1 ? "there is one size" : $"there are {Wording.Number(sizes.Length)} sizes";
        Bag.Add(new Finding(RowRules.WrongNumberOfValues, Source, number.Span, $"this list has {Wording.Number(values.Length)} values, but {many}")
        {
            Help = sizes.Length == 1 ? "give one number, or name the sizes in the header" : $"give one number for each of {string.Join(", ", sizes)}; write - for a size that skips it",
            Sizes = Scope,
        });
        HasBadNumber = true;
        return null;
    }

    /// <summary>A list that is a whole instruction by itself ("Ch 8 (10, 12, 14, 16)"): where it has a value too many, which has been said, its first values go on being used.</summary>
    public Amount LongList(Lexeme lexeme)
    {
        var bad = HasBadNumber;
        var amount = AmountOf(lexeme);
        if (HasBadNumber && !bad && Scope.IsEmpty && lexeme.Number is { } number && number.Values.Length == SizeCount + 1 && number.Values.All(v => Whole(v) is not null))
        {
            HasBadNumber = false;
            return new Amount(PerSize.Each([.. number.Values.Take(SizeCount).Select(Whole)]), number.Span);
        }

        return amount;
    }

    private static PerSize<int?> Unknown() => PerSize.Shared<int?>(null);

    /// <summary>The header's number that a name in braces calls.</summary>
    public Amount Named(Atom placeholder)
    {
        var name = placeholder.Text.Trim('{', '}');
        _numbers ??= Facts.Numbers.DistinctBy(n => n.Name, StringComparer.OrdinalIgnoreCase).ToDictionary(n => n.Name, StringComparer.OrdinalIgnoreCase);
        if (_numbers.TryGetValue(name, out var number))
        {
            return new Amount(number.Values.Map(q => q is null ? null : Whole(q.Value)), placeholder.Span);
        }

        HasBadNumber = true;
        return new Amount(Unknown(), placeholder.Span);
    }

    private static int? Whole(decimal? value) => value is { } v && v == decimal.Truncate(v) ? Clamp(v > long.MaxValue ? long.MaxValue : (long)v) : null;

    private static int Clamp(long value) => (int)Math.Clamp(value, -1_000_000_000, 1_000_000_000);
}
