using PatternForge.Core.Model;

namespace PatternForge.Rendering.Drawings;

/// <summary>A mark that has a head of its own in its row: a stitch, a turning chain, a slip stitch that fastens a loop.</summary>
internal sealed class DiagramHead
{
    public required PlacedMark Mark { get; init; }

    /// <summary>Chains between it and the head before it.</summary>
    public int ChainsBefore { get; set; }

    /// <summary>How far from the middle of its group it stands, in the order of work.</summary>
    public double Fan { get; set; }

    /// <summary>The one top that it is worked into; -1 where there are several, or none.</summary>
    public int Base => Mark.Stitch.Bases switch
    {
        [{ Kind: DiagramPlace.Below } only] => only.Top,
        [{ Kind: DiagramPlace.FreeSide } only] => FreeSide + only.Top,
        _ => -1,
    };

    // Places on the free side of a chain are others than those on its first side.
    private const int FreeSide = 1_000_000;

    /// <summary>True for chains beside the first stitch that are no stitch themselves.</summary>
    public bool IsBeside => Mark.Stitch is { Mark: DiagramMark.SkippedChains } or { Mark: DiagramMark.TurningChain, Counts: false };

    /// <summary>True for a stitch that closes the round in its first stitch.</summary>
    public bool Closes => Mark.Stitch is { Mark: DiagramMark.Stitch, Bases: [{ Kind: DiagramPlace.OwnFirst }] };

    /// <summary>The least distance from the head before it.</summary>
    public double GapBefore => IsBesideAny ? DiagramMeasures.Pitch * 0.8 : IsTight ? DiagramMeasures.TightPitch : DiagramMeasures.Gap(ChainsBefore);

    /// <summary>True for one of many in one place, which stand closer together.</summary>
    public bool IsTight { get; set; }

    /// <summary>True when it or the head before it is beside the row.</summary>
    public bool IsBesideAny { get; set; }
}

/// <summary>The marks of one row, taken apart: heads in order, chains between them, and what is drawn on top of others.</summary>
internal sealed class DiagramRowMarks
{
    // From so many on, the stitches of a group stand closer together.
    private const int Many = 4;

    /// <summary>Takes a row apart.</summary>
    public DiagramRowMarks(DiagramRow row, int number)
    {
        DiagramHead? last = null;
        var chains = 0;
        foreach (var stitch in row.Stitches)
        {
            var mark = new PlacedMark { Stitch = stitch, Row = number };
            All.Add(mark);
            switch (stitch.Mark)
            {
                case DiagramMark.Chains:
                    Spaces.Add((mark, last, Heads.Count));
                    chains += stitch.Chains;
                    break;
                case DiagramMark.Stitch or DiagramMark.TurningChain or DiagramMark.SkippedChains:
                case DiagramMark.SlipStitch when Heads.Count > 0:
                    var head = new DiagramHead { Mark = mark, ChainsBefore = chains };
                    head.IsBesideAny = chains == 0 && (last?.IsBeside == true || head.IsBeside);
                    Heads.Add(head);
                    (last, chains) = (head, 0);
                    break;
                default:
                    OnTop.Add((mark, last));
                    break;
            }
        }

        ChainsAfter = chains;
    }

    public List<PlacedMark> All { get; } = [];

    public List<DiagramHead> Heads { get; } = [];

    /// <summary>Chain spaces: each with the head before it, and the place among the heads of the one after it.</summary>
    public List<(PlacedMark Mark, DiagramHead? Before, int After)> Spaces { get; } = [];

    /// <summary>Marks without a head of their own: each with the head before it.</summary>
    public List<(PlacedMark Mark, DiagramHead? Before)> OnTop { get; } = [];

    /// <summary>Chains behind the last head, up to the first one of the round.</summary>
    public int ChainsAfter { get; }

    /// <summary>Heads worked into one place stand round its middle; at the edges of a row the outermost stands right over it.</summary>
    /// <param name="isRound">True where the last group may go on with the first.</param>
    public void Fan(bool isRound)
    {
        var groups = new List<List<DiagramHead>>();
        foreach (var head in Heads.Where(h => !h.IsBeside && !h.Closes))
        {
            if (groups.Count > 0 && head.Base >= 0 && groups[^1][^1].Base == head.Base)
            {
                groups[^1].Add(head);
            }
            else
            {
                groups.Add([head]);
            }
        }

        if (isRound && groups.Count > 1 && groups[0][0].Base >= 0 && groups[0][0].Base == groups[^1][^1].Base)
        {
            groups[^1].AddRange(groups[0]);
            groups.RemoveAt(0);
        }

        foreach (var group in groups)
        {
            var at = 0.0;
            for (var i = 0; i < group.Count; i++)
            {
                group[i].IsTight = i > 0 && group.Count >= Many && group[i].ChainsBefore == 0 && group[i] != Heads[0];
                var gap = group[i] == Heads[0] ? DiagramMeasures.Gap(ChainsAfter) : group[i].GapBefore;
                at += i == 0 ? 0 : gap;
                group[i].Fan = at;
            }

            var middle = isRound || groups.Count == 1 ? at / 2 : group == groups[0] ? 0 : group == groups[^1] ? at : at / 2;
            foreach (var head in group)
            {
                head.Fan -= middle;
            }
        }
    }
}
