using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Shapes;

/// <summary>How many stitches a row adds at its start, at its end, and in between; negative for fewer.</summary>
/// <param name="Start">Before the stitches that are worked across.</param>
/// <param name="End">Behind them.</param>
/// <param name="Between">Spread over the row, or in its middle.</param>
/// <param name="IsParted">True when stitches are bound off in the middle, so that the row is in two parts.</param>
internal readonly record struct EdgeShares(decimal Start, decimal End, decimal Between, bool IsParted)
{
    /// <summary>What the steps of one row do; null where that cannot be told.</summary>
    public static EdgeShares? Of(ImmutableArray<Step> steps, int size, int before)
    {
        var changes = new List<(int Place, decimal Change, bool IsBindOff)>();
        var (first, last, place) = (-1, -1, 0);
        foreach (var step in steps)
        {
            place++;
            switch (step)
            {
                case RemarkStep or MarkerStep or SentenceStep or TurnStep or NeedleStep or NeedleCountStep or SlideStep or JoinStep or HoldStep or ReturnStep:
                    break;
                case OperationStep one:
                    var times = one.Times is { } number ? number[size] ?? 0 : 1;
                    if (one.Operation.Change != 0)
                    {
                        changes.Add((place, one.Operation.Change * times, false));
                    }
                    else if (times > 8 || times * 4 > before)
                    {
                        Across();
                    }

                    break;
                case RunStep { Operation.Change: 0 }:
                    Across();
                    break;
                case IncreaseStep increase:
                    changes.Add((place, increase.Times is { } often ? often[size] ?? 0 : 1, false));
                    break;
                case BindOffStep { Stitches: { } stitches }:
                    changes.Add((place, -(stitches[size] ?? 0), true));
                    break;
                case BindOffStep:
                    return new EdgeShares(0, 0, 0, false);
                case CastOnStep cast:
                    changes.Add((place, cast.Stitches[size] ?? 0, false));
                    break;
                case RepeatStep or GroupStep or RunStep or PatternRowStep or SpreadStep:
                    Across();
                    break;
                default:
                    return null;
            }
        }

        if (first < 0)
        {
            return new EdgeShares(0, 0, changes.Sum(c => c.Change), false);
        }

        return new EdgeShares(
            changes.Where(c => c.Place < first).Sum(c => c.Change),
            changes.Where(c => c.Place > last).Sum(c => c.Change),
            changes.Where(c => c.Place > first && c.Place < last).Sum(c => c.Change),
            changes.Any(c => c.IsBindOff && c.Place > first && c.Place < last));

        void Across()
        {
            first = first < 0 ? place : first;
            last = place;
        }
    }
}
