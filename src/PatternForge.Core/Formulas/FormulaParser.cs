using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Formulas;

/// <summary>Reads a formula: sums of products of numbers, names and functions, with conditions where a choice wants them.</summary>
internal sealed class FormulaParser
{
    private const int MostDepth = 32;
    private const int MostTokens = 600;

    private readonly List<FormulaToken> _tokens;
    private int _at;
    private int _depth;

    private FormulaParser(List<FormulaToken> tokens) => _tokens = tokens;

    private FormulaFault? Fault { get; set; }

    private FormulaToken Here => _tokens[_at];

    /// <summary>The formula of a text, without its equals sign; else what is wrong with it.</summary>
    public static (FormulaNode? Formula, FormulaFault? Fault) Read(string text)
    {
        var lexer = new FormulaLexer(text);
        var tokens = lexer.Read();
        if (lexer.Fault is { } fault)
        {
            return (null, fault);
        }

        if (tokens.Count > MostTokens)
        {
            return (null, new(FaultKind.NotUnderstood, 0, text.Length, "this formula is too long to be read", "give parts of it names of their own"));
        }

        var parser = new FormulaParser(tokens);
        var formula = parser.Condition();
        if (parser.Fault is null && parser.Here.Kind != FormulaTokenKind.End)
        {
            parser.Unexpected();
        }

        return parser.Fault is null ? (formula, null) : (null, parser.Fault);
    }

    private FormulaNode? Condition() => Chain(Both, ("or", FormulaSign.Or));

    private FormulaNode? Both() => Chain(Negation, ("and", FormulaSign.And));

    private FormulaNode? Negation()
    {
        if (!Here.Is("not"))
        {
            return Comparison();
        }

        var start = Here.Start;
        _at++;
        return Deeper(Negation) is { } of ? new SignNode(FormulaSign.Not, of, start, of.End) : null;
    }

    private FormulaNode? Comparison()
    {
        var left = Sum();
        FormulaSign? sign = Here.Kind != FormulaTokenKind.Sign ? null : Here.Text switch
        {
            "<" => FormulaSign.Less,
            "<=" => FormulaSign.AtMost,
            ">" => FormulaSign.More,
            ">=" => FormulaSign.AtLeast,
            "=" => FormulaSign.Equal,
            _ => null,
        };
        if (left is null || sign is null)
        {
            return left;
        }

        var token = Here;
        _at++;
        return Sum() is { } right ? new PairNode(sign.Value, left, right, token.Start, token.End) : null;
    }

    private FormulaNode? Sum() => Chain(Product, ("+", FormulaSign.Plus), ("-", FormulaSign.Minus));

    private FormulaNode? Product() => Chain(Signed, ("*", FormulaSign.Times), ("/", FormulaSign.Per));

    private FormulaNode? Chain(Func<FormulaNode?> part, params ReadOnlySpan<(string Text, FormulaSign Sign)> signs)
    {
        var left = part();
        while (left is not null)
        {
            var (token, found) = (Here, false);
            foreach (var (text, sign) in signs)
            {
                if (token.Is(text))
                {
                    _at++;
                    left = part() is { } right ? new PairNode(sign, left, right, token.Start, token.End) : null;
                    found = true;
                    break;
                }
            }

            if (!found)
            {
                return left;
            }
        }

        return null;
    }

    private FormulaNode? Signed()
    {
        if (!Here.Is("-"))
        {
            return Single();
        }

        var start = Here.Start;
        _at++;
        return Deeper(Signed) is { } of ? new SignNode(FormulaSign.Minus, of, start, of.End) : null;
    }

    private FormulaNode? Single()
    {
        var token = Here;
        switch (token.Kind)
        {
            case FormulaTokenKind.Number:
                _at++;
                return new NumberNode(token.Number, token.Unit, token.Start, token.End);
            case FormulaTokenKind.Size:
                _at++;
                return new SizeNode(token.Text, token.Start, token.End);
            case FormulaTokenKind.Name when _tokens[_at + 1].Is("("):
                return Function(token);
            case FormulaTokenKind.Name when !token.Is("and") && !token.Is("or"):
                _at++;
                return new NameNode(token.Text, token.Start, token.End);
            case FormulaTokenKind.Sign when token.Is("("):
                _at++;
                if (Deeper(Condition) is not { } inner || !Closes(token.Start))
                {
                    return null;
                }

                return inner;
            default:
                Unexpected();
                return null;
        }
    }

    private FunctionNode? Function(FormulaToken name)
    {
        if (FormulaFunction.Find(name.Text) is not { } function)
        {
            var near = Suggest.Nearest(name.Text, FormulaFunction.All.Select(f => f.Name), 1);
            Fail(name, $"there is no function `{name.Text}`", near.Count > 0 ? $"did you mean `{near[0]}`?" : $"there are {string.Join(", ", FormulaFunction.All.Select(f => f.Name))}");
            return null;
        }

        _at += 2;
        var parts = ImmutableArray.CreateBuilder<FormulaNode>();
        RoundingNode? rounding = null;
        while (Fault is null)
        {
            if (function.Rounds && parts.Count == 1 && Rounding() is { } way)
            {
                rounding = way;
            }
            else if (function == FormulaFunction.Table && parts.Count >= 2)
            {
                Step(parts);
            }
            else if (Deeper(Condition) is { } part)
            {
                parts.Add(part);
            }

            if (Fault is not null || !Here.Is(","))
            {
                break;
            }

            _at++;
        }

        var end = Here.End;
        if (Fault is not null || !Closes(name.Start))
        {
            return null;
        }

        if (parts.Count < function.Least || parts.Count > function.Most)
        {
            Fault = new(FaultKind.NotUnderstood, name.Start, end - name.Start, $"`{function.Name}` has {parts.Count} {(parts.Count == 1 ? "part" : "parts")} here", $"it is written `{function.Form}`");
            return null;
        }

        return new FunctionNode(function, parts.ToImmutable(), rounding, name.Start, end);
    }

    // "multiple 8 plus 1", "odd", "even".
    private RoundingNode? Rounding()
    {
        if (Here.Is("odd") || Here.Is("even"))
        {
            var parity = Here.Is("odd") ? Parity.Odd : Parity.Even;
            _at++;
            return new(null, null, parity);
        }

        if (!Here.Is("multiple"))
        {
            return null;
        }

        _at++;
        if (Here.Is("of"))
        {
            _at++;
        }

        var multiple = Deeper(Sum);
        FormulaNode? plus = null;
        if (Fault is null && Here.Is("plus"))
        {
            _at++;
            plus = Deeper(Sum);
        }

        return new(multiple, plus, Parity.Any);
    }

    // "from 80 cm use 5".
    private void Step(ImmutableArray<FormulaNode>.Builder parts)
    {
        if (!Here.Is("from"))
        {
            Fail(Here, "a step of this table should begin with `from`", $"it is written `{FormulaFunction.Table.Form}`");
            return;
        }

        _at++;
        if (Deeper(Sum) is not { } limit)
        {
            return;
        }

        if (!Here.Is("use"))
        {
            Fail(Here, "this step of the table does not say what to `use`", $"it is written `{FormulaFunction.Table.Form}`");
            return;
        }

        _at++;
        if (Deeper(Sum) is { } value)
        {
            parts.Add(limit);
            parts.Add(value);
        }
    }

    private FormulaNode? Deeper(Func<FormulaNode?> read)
    {
        if (++_depth > MostDepth)
        {
            Fail(Here, "this formula is nested too deeply", "give parts of it names of their own");
            return null;
        }

        var node = Fault is null ? read() : null;
        _depth--;
        return node;
    }

    private bool Closes(int opening)
    {
        if (Fault is null && Here.Is(")"))
        {
            _at++;
            return true;
        }

        if (Fault is null && Here.Kind == FormulaTokenKind.End)
        {
            Fault = new(FaultKind.NotUnderstood, opening, Math.Max(1, Here.Start - opening), "a bracket that opens here is not closed");
        }
        else if (Fault is null)
        {
            Unexpected();
        }

        return false;
    }

    private void Unexpected()
    {
        if (Here.Kind == FormulaTokenKind.End)
        {
            var last = _at > 0 ? _tokens[_at - 1] : Here;
            Fault ??= new(FaultKind.NotUnderstood, last.Start, Math.Max(1, last.End - last.Start), _at > 0 ? $"the formula ends after `{last.Text}`, where something should follow" : "there is no formula behind the equals sign");
            return;
        }

        var help = Here.Kind == FormulaTokenKind.Name && _at > 0 && _tokens[_at - 1].Kind == FormulaTokenKind.Name
            ? $"a name of several words is written with hyphens: `{_tokens[_at - 1].Text}-{Here.Text}`"
            : null;
        Fail(Here, $"`{Here.Text}` does not fit at this place of the formula", help);
    }

    private void Fail(FormulaToken token, string message, string? help) => Fault ??= new(FaultKind.NotUnderstood, token.Start, Math.Max(1, token.End - token.Start), message, help);
}
