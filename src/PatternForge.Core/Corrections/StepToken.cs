using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace PatternForge.Core.Corrections;

/// <summary>What one step of a row asks of one size, in a form that every way to write it shares: something worked so many times, or up to a place.</summary>
internal sealed record StepToken
{
    private const int MostUnits = 6_000;

    /// <summary>What is worked, by an identifier of its own.</summary>
    public string Unit { get; init; } = "";

    /// <summary>How makers write it once ("k", "k2tog").</summary>
    public string Said { get; init; } = "";

    /// <summary>How often; nothing of it where <see cref="Left"/> says how far.</summary>
    public int Times { get; init; } = 1;

    /// <summary>Worked until so many stitches are left; null where <see cref="Times"/> tells.</summary>
    public int? Left { get; init; }

    /// <summary>Stitches of the row below that one of it takes; null where that cannot be told.</summary>
    public int? Takes { get; init; }

    /// <summary>True where the number is written close to the letters ("k12").</summary>
    public bool IsPlain { get; init; }

    /// <summary>True where the same again behind it is one number with it.</summary>
    public bool Adds { get; init; }

    /// <summary>What is repeated; empty for a single thing.</summary>
    public ImmutableArray<StepToken> Body { get; init; } = [];

    /// <summary>The words, where they say the same thing in another way; empty where the unit says it all.</summary>
    public string Wording { get; init; } = "";

    /// <summary>What it is compared by.</summary>
    public string Key => (Body.IsEmpty ? Unit : $"[{KeyOf(Body)}]") + (Left is { } left ? string.Create(CultureInfo.InvariantCulture, $"→{left}") : string.Create(CultureInfo.InvariantCulture, $"×{Times}"));

    /// <summary>What is worked, without how often.</summary>
    public string Thing => Body.IsEmpty ? Unit : $"[{KeyOf(Body)}]";

    /// <summary>As a maker reads it.</summary>
    public string Words
    {
        get
        {
            var what = Body.IsEmpty ? Said : $"[{string.Join(", ", Body.Select(b => b.Words))}]";
            return Left is { } left ? left == 0 ? $"{what} to end" : $"{what} to last {left} {(left == 1 ? "st" : "sts")}"
                : IsPlain ? $"{what}{Times.ToString(CultureInfo.InvariantCulture)}"
                : Times == 1 ? what
                : Times == 2 ? $"{what} twice"
                : $"{what} {Times.ToString(CultureInfo.InvariantCulture)} times";
        }
    }

    /// <summary>What a row of them is compared by.</summary>
    public static string KeyOf(IEnumerable<StepToken> tokens) => string.Join(' ', tokens.Select(t => t.Key));

    /// <summary>The words of a row, where wording alone may differ.</summary>
    public static string WordingOf(IEnumerable<StepToken> tokens) => string.Join(' ', tokens.Select(t => t.Body.IsEmpty ? t.Wording : WordingOf(t.Body)));

    /// <summary>The same steps with neighbours that are alike made one, steps worked no time left out, and brackets that do nothing undone.</summary>
    public static ImmutableArray<StepToken> Tidy(IEnumerable<StepToken> tokens)
    {
        var tidy = new List<StepToken>();
        foreach (var token in tokens)
        {
            if (token is { Left: null, Times: <= 0 })
            {
                continue;
            }

            if (token is { Left: null, Times: 1, Body.IsEmpty: false })
            {
                foreach (var inner in token.Body)
                {
                    Add(inner);
                }
            }
            else if (token.Body is [{ Left: null, Adds: true } only])
            {
                Add(token.Left is not null && only.Times == 1 ? only with { Times = 1, Left = token.Left } : token.Left is null ? only with { Times = Multiplied(only.Times, token.Times) } : token);
            }
            else
            {
                Add(token);
            }
        }

        return [.. tidy];

        void Add(StepToken token)
        {
            if (tidy.Count > 0 && token is { Left: null, Adds: true, Body.IsEmpty: true } && tidy[^1] is { Left: null, Adds: true, Body.IsEmpty: true } last && last.Unit == token.Unit)
            {
                tidy[^1] = last with { Times = (int)Math.Min((long)last.Times + token.Times, int.MaxValue) };
            }
            else
            {
                tidy.Add(token);
            }
        }
    }

    /// <summary>Every single thing in the order of work, where the stitches before the row tell how often each repeat goes; null where they do not, or where there are too many.</summary>
    public static string? Unrolled(ImmutableArray<StepToken> tokens, int? before)
    {
        var text = new StringBuilder();
        var (used, units) = (0, 0);
        (string Unit, int Times) last = ("", 0);
        if (!Run(tokens, before))
        {
            return null;
        }

        Flush();
        return text.ToString();

        bool Run(ImmutableArray<StepToken> some, int? all)
        {
            foreach (var token in some)
            {
                var takes = token.Body.IsEmpty ? token.Takes : TakenBy(token.Body);
                var times = token.Times;
                if (token.Left is { } left)
                {
                    if (all is not { } stitches || takes is not > 0 || stitches - used - left < 0 || (stitches - used - left) % takes.Value != 0)
                    {
                        return false;
                    }

                    times = (stitches - used - left) / takes.Value;
                }

                if (token.Body.IsEmpty)
                {
                    if (takes is null && all is not null && some.Any(t => t.Left is not null))
                    {
                        return false;
                    }

                    used = (int)Math.Min((long)used + ((long)(takes ?? 0) * times), int.MaxValue / 2);
                    Put(token.Unit, times);
                    if (++units > MostUnits)
                    {
                        return false;
                    }

                    continue;
                }

                for (var i = 0; i < times; i++)
                {
                    if (units > MostUnits || !Run(token.Body, null))
                    {
                        return false;
                    }
                }
            }

            return true;
        }

        void Put(string unit, int times)
        {
            if (times <= 0)
            {
                return;
            }

            if (unit != last.Unit)
            {
                Flush();
                last = (unit, 0);
            }

            last = (unit, (int)Math.Min((long)last.Times + times, int.MaxValue / 2));
        }

        void Flush()
        {
            if (last.Times > 0)
            {
                text.Append(last.Unit).Append('×').Append(last.Times.ToString(CultureInfo.InvariantCulture)).Append(' ');
            }
        }
    }

    private static int? TakenBy(ImmutableArray<StepToken> body)
    {
        long sum = 0;
        foreach (var token in body)
        {
            if (token.Left is not null || (token.Body.IsEmpty ? token.Takes : TakenBy(token.Body)) is not { } one)
            {
                return null;
            }

            sum += (long)one * token.Times;
        }

        return sum <= int.MaxValue ? (int)sum : null;
    }

    private static int Multiplied(int a, int b) => (int)Math.Min((long)a * b, int.MaxValue);
}
