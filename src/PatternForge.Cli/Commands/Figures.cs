using System.Buffers;
using System.Globalization;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Plans;

namespace PatternForge.Cli.Commands;

/// <summary>A gauge as it is said: stitches, rows, and the centimetres that they are counted over.</summary>
internal sealed record GaugeSaid(decimal? Stitches, decimal? Rows, decimal OverCm);

/// <summary>Reads the figures of a command line; the first that cannot be read is told, in a sentence, and fails the command.</summary>
internal sealed class Figures(string command, Surroundings around)
{
    private const decimal UsualCm = 10;

    private static readonly SearchValues<char> Digits = SearchValues.Create("0123456789.");

    /// <summary>True after a figure could not be read.</summary>
    public bool Failed { get; private set; }

    /// <summary>A whole number; null where none was said.</summary>
    public int? Whole(string? said, string what, int least = 0, int most = PlanLimits.MostStitches)
    {
        if (said is null)
        {
            return null;
        }

        if (int.TryParse(said.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most)
        {
            return number;
        }

        Refuse(string.Create(CultureInfo.InvariantCulture, $"`{said}` is no {what}: a whole number from {least} to {most} is meant"));
        return null;
    }

    /// <summary>A number above 0; null where none was said.</summary>
    public decimal? Number(string? said, string what)
    {
        if (said is null || (Decimal(said.Trim()) is { } number && number > 0))
        {
            return said is null ? null : Decimal(said.Trim());
        }

        Refuse($"`{said}` is no {what}: a number above 0 is meant, such as 4.5");
        return null;
    }

    /// <summary>A length in centimetres, from "43", "43 cm" or "17in"; null where none was said.</summary>
    public decimal? Cm(string? said, string what)
    {
        if (said is null)
        {
            return null;
        }

        if (Measure(said) is { } cm && cm > 0)
        {
            return cm;
        }

        Refuse($"`{said}` is no {what}: a length is meant, such as 43cm or 17in");
        return null;
    }

    /// <summary>An area in square centimetres, from "9900" or "1534 sq in"; null where none was said.</summary>
    public decimal? SquareCm(string? said, string what)
    {
        if (said is null)
        {
            return null;
        }

        var (number, unit) = Split(said);
        if (number is > 0 and <= PlanLimits.MostMeasure && unit is "" or "cm2" or "sqcm")
        {
            return number;
        }

        if (number is > 0 and <= PlanLimits.MostMeasure && unit is "in2" or "sqin")
        {
            return number * GaugeMath.CmPerInch * GaugeMath.CmPerInch;
        }

        Refuse($"`{said}` is no {what}: an area is meant, such as 9900 (square centimetres) or \"1534 sq in\"");
        return null;
    }

    /// <summary>A gauge, from "22 sts and 30 rows = 10 cm" or "5.5 sts = 1 in"; without a length it is over 10 cm. Null where none was said.</summary>
    public GaugeSaid? Gauge(string? said, string what)
    {
        if (said is null)
        {
            return null;
        }

        decimal? stitches = null;
        decimal? rows = null;
        decimal? over = null;
        decimal? loose = null;
        foreach (var word in Words(said))
        {
            if (Decimal(word) is { } number)
            {
                loose = number;
                continue;
            }

            switch (word.TrimEnd('.').ToLowerInvariant())
            {
                case "st" or "sts" or "stitch" or "stitches":
                    stitches ??= loose;
                    loose = null;
                    break;
                case "row" or "rows" or "rnd" or "rnds" or "round" or "rounds":
                    rows ??= loose;
                    loose = null;
                    break;
                case "cm":
                    over ??= loose ?? 1;
                    loose = null;
                    break;
                case "in" or "inch" or "inches" or "\"":
                    over ??= (loose ?? 1) * GaugeMath.CmPerInch;
                    loose = null;
                    break;
                default:
                    break;
            }
        }

        if ((stitches ?? rows) is not null && (stitches ?? 1) > 0 && (rows ?? 1) > 0 && (over ?? UsualCm) is > 0 and <= PlanLimits.MostMeasure)
        {
            return new(stitches, rows, over ?? UsualCm);
        }

        Refuse($"`{said}` is no {what}: a gauge is meant, such as \"22 sts and 30 rows = 10 cm\"");
        return null;
    }

    /// <summary>Fails the command with a sentence of its own; only the first is told.</summary>
    public int Refuse(string sentence)
    {
        if (!Failed)
        {
            CommandLine.Refuse(sentence, around, command);
        }

        Failed = true;
        return ExitCode.Usage;
    }

    /// <summary>Fails the command because there is no plan.</summary>
    public int Refuse<T>(Planned<T> planned)
        where T : class => Refuse(planned.Help is null ? planned.Reason ?? "" : $"{planned.Reason}: {planned.Help}");

    /// <summary>Centimetres with inches beside them.</summary>
    public static string Both(decimal cm) => $"{Answer.Figure(cm)} cm ({Answer.Figure(cm / GaugeMath.CmPerInch)} in)";

    /// <summary>Centimetres of a length with or without unit; null where it is none.</summary>
    public static decimal? Measure(string said)
    {
        var (number, unit) = Split(said);
        return number is not (>= 0 and <= PlanLimits.MostMeasure) ? null : unit switch
        {
            "" or "cm" => number,
            "mm" => number / 10,
            "m" => number * 100,
            "in" or "inch" or "inches" or "\"" => number * GaugeMath.CmPerInch,
            _ => null,
        };
    }

    /// <summary>True where a unit stands behind the number.</summary>
    public static bool HasUnit(string said) => Split(said) is (not null, { Length: > 0 });

    private static (decimal? Number, string Unit) Split(string said)
    {
        var text = said.Trim();
        var end = text.AsSpan().IndexOfAnyExcept(Digits);
        return (Decimal(end < 0 ? text : text[..end]), end < 0 ? "" : text[end..].Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant());
    }

    // Words and numbers, also where they stand together ("10cm").
    private static IEnumerable<string> Words(string said)
    {
        var begin = 0;
        for (var i = 1; i <= said.Length; i++)
        {
            if (i == said.Length || Kind(said[i]) != Kind(said[begin]))
            {
                if (Kind(said[begin]) != 0)
                {
                    yield return said[begin..i];
                }

                begin = i;
            }
        }
    }

    private static int Kind(char sign) => char.IsAsciiDigit(sign) || sign == '.' ? 1 : char.IsLetter(sign) ? 2 : sign == '"' ? 3 : 0;

    private static decimal? Decimal(string said) =>
        decimal.TryParse(said, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number <= PlanLimits.MostMeasure ? number : null;
}
