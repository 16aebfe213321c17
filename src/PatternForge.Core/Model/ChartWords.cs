using System.Globalization;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Model;

/// <summary>Writes the rows of a chart in words, as a maker reads them and as the notation is read back.</summary>
public static class ChartWords
{
    // Stitches that are told with their number: "k3", not "k, k, k".
    private static readonly string[] Counted = ["k", "p", "sl"];

    /// <summary>A row with its label: "Row 3 (RS): K2, *yo, ssk, k4; rep from * to last st, k1."</summary>
    /// <param name="row">The row.</param>
    /// <param name="chart">The chart that it stands in.</param>
    /// <param name="terms">Whose names to use.</param>
    public static string Row(ChartRow row, Chart chart, Dialect terms) => $"{Label(row, chart)}: {Instruction(row, chart, terms)}";

    /// <summary>The label of a row: "Row 3 (RS)", "Rnd 3".</summary>
    public static string Label(ChartRow row, Chart chart) => chart.IsRound
        ? string.Create(CultureInfo.InvariantCulture, $"Rnd {row.Number}")
        : string.Create(CultureInfo.InvariantCulture, $"Row {row.Number} ({(row.Side == FabricSide.Right ? "RS" : "WS")})");

    /// <summary>What to work in a row, without its label.</summary>
    public static string Instruction(ChartRow row, Chart chart, Dialect terms)
    {
        var words = Steps(row, chart, terms);
        return words.Length == 0 ? "" : $"{Capital(words)}.";
    }

    private static string Capital(string words) => words[0] == '*' ? $"*{char.ToUpperInvariant(words[1])}{words[2..]}" : $"{char.ToUpperInvariant(words[0])}{words[1..]}";

    private static string Steps(ChartRow row, Chart chart, Dialect terms)
    {
        var cells = row.InWorkingOrder();
        if (cells.Length == 0)
        {
            return "";
        }

        if (ChartRow.IsPlain(cells))
        {
            return $"{(cells[0].Colour is { } yarn ? $"with {yarn}, " : "")}{(cells[0].Operation!.Id == "k" ? "knit" : "purl")}";
        }

        if (chart.Repeat is not { } repeat)
        {
            return Of(cells, terms);
        }

        var (first, body, last) = repeat.Part(row);
        var rest = last.Sum(c => c.Operation!.Takes);
        var before = first.Length > 0 ? Of(first, terms) + ", " : "";
        var after = last.Length > 0 ? ", " + Of(last, terms) : "";
        return body.Length == 0 ? Of(cells, terms) : $"{before}*{Of(body, terms)}; rep from * {(rest == 0 ? chart.IsRound ? "around" : "to end" : rest == 1 ? "to last st" : string.Create(CultureInfo.InvariantCulture, $"to last {rest} sts"))}{after}";
    }

    private static string Of(ChartCell[] cells, Dialect terms)
    {
        var parts = new List<string>();
        for (var i = 0; i < cells.Length;)
        {
            var operation = cells[i].Operation!;
            var colour = cells[i].Colour;
            var times = cells.Skip(i).TakeWhile(c => c.Operation!.Id == operation.Id && c.Colour == colour).Count();
            var name = NameOf(operation, terms);
            var with = colour is null ? "" : " " + colour;
            if (operation == KnitSlips.Front || operation == KnitSlips.Back)
            {
                parts.Add(string.Create(CultureInfo.InvariantCulture, $"sl {times} {(operation == KnitSlips.Front ? "wyif" : "wyib")}{with}"));
                i += times;
                continue;
            }

            parts.Add(Counted.Contains(operation.Id, StringComparer.Ordinal) ? string.Create(CultureInfo.InvariantCulture, $"{name}{(operation.Id == "sl" ? " " : "")}{times}{with}")
                : times == 1 ? name + with
                : string.Create(CultureInfo.InvariantCulture, $"({name}{with}) {times} times"));
            i += times;
        }

        return string.Join(", ", parts);
    }

    /// <summary>What an operation is called in a dialect.</summary>
    public static string NameOf(Operation operation, Dialect terms) =>
        operation.IsSpecial ? operation.Id : OperationTable.NameIn(operation, terms) ?? operation.Id;
}
