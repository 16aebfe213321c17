using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Watches the labels: numbers skipped or given twice, sides out of turn.</summary>
internal sealed class RowOrder
{
    private readonly FindingBag _bag;
    private readonly List<(int From, int To, Finding Finding)> _skipped = [];

    public RowOrder(FindingBag bag) => _bag = bag;

    /// <summary>Looks at a row's label before it is worked.</summary>
    public void Check(BoundRow row, SizeState state)
    {
        var told = _skipped.Count;
        Number(row, state);

        // Where an odd number of rows is missing, the side is wrong for that reason.
        Side(row, state, _skipped.Count > told && (_skipped[^1].To - _skipped[^1].From) % 2 == 0);
    }

    /// <summary>Tells of the numbers that were skipped, unless a row has been found to need one of them.</summary>
    public void Flush()
    {
        foreach (var (_, _, finding) in _skipped)
        {
            _bag.Add(finding);
        }

        _skipped.Clear();
    }

    /// <summary>Where a number was skipped that a row now refers to, so that one finding tells both; null where it was not.</summary>
    public Label? TakeSkipped(int number)
    {
        var at = _skipped.FindIndex(s => s.From <= number && number <= s.To);
        if (at < 0)
        {
            return null;
        }

        var finding = _skipped[at].Finding;
        _skipped.RemoveAt(at);
        return new Label(finding.Span, finding.Message);
    }

    private void Number(BoundRow row, SizeState state)
    {
        if (row.Numbers.IsEmpty)
        {
            return;
        }

        if (row.SaidRows is { } said && said != row.Numbers.Length)
        {
            _bag.Add(WorkRules.LabelRowsDiffer, row.LabelOrigin, $"the label names {row.Numbers.Length} rows, and says that there are {said}", "correct one of the two numbers");
        }

        var first = row.Numbers[0];
        var word = row.IsRound == true ? "round" : "row";
        if (state.LastNumber is { } last && row.Sizes.IsEmpty)
        {
            var listed = !row.IsRange && row.Numbers.Length > 1;
            if (first <= last && first != 1)
            {
                var twice = row.Numbers.Where(n => n <= last).ToArray();
                _bag.Add(WorkRules.NumberRepeated, row.LabelOrigin, twice.Length == 1 ? $"{word} {first} is given twice" : $"{word}s {twice[0]} to {twice[^1]} are given twice", "renumber the rows, or begin a new part with a heading");
            }
            else if (first > last + 1 && !state.NumbersAreLoose && !listed && !Covered(state, last, first))
            {
                var missing = first - last == 2 ? $"{word} {last + 1} is" : $"{word}s {last + 1} to {first - 1} are";
                _skipped.Add((last + 1, first - 1, new Finding(WorkRules.NumberSkipped, _bag.Source, row.LabelOrigin, $"{missing} not given: {word} {last} is followed by {word} {first}") { Help = "give the missing rows, or correct the number" }));
            }
        }

        state.NumbersAreLoose = false;
    }

    private static bool Covered(SizeState state, int last, int first)
    {
        for (var n = last + 1; n < first && n - last < 10_000; n++)
        {
            if (!state.TryRow(n, out _))
            {
                return false;
            }
        }

        return true;
    }

    private void Side(BoundRow row, SizeState state, bool isExplained)
    {
        if (row.Side is not { } side)
        {
            return;
        }

        if (state.InTheRound && row.IsRound == true)
        {
            if (side == FabricSide.Wrong)
            {
                _bag.Add(WorkRules.SideOutOfTurn, row.LabelOrigin, "this round is called a wrong-side one, but joined rounds all show the right side", "take the side out, or say that the work is turned");
            }

            return;
        }

        if (state.NextSide is { } expected && expected != side && !isExplained)
        {
            var (said, due) = side == FabricSide.Right ? ("right", "wrong") : ("wrong", "right");
            _bag.Add(WorkRules.SideOutOfTurn, row.LabelOrigin, $"this row is called a {said}-side row, but the {due} side is next", "a row may be missing or one too many, or the side may be mixed up");
        }

        state.NextSide = side;
    }
}
