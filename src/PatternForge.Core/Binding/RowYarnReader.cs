using System.Buffers;
using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads which yarn a whole row is worked with: "With B, knit", "Rnd 3: Join B with a ss in any sp, ...", "sc in each st around, changing to A in last st".</summary>
internal static class RowYarnReader
{
    private static readonly SearchValues<char> Stops = SearchValues.Create(",;.)]*");

    /// <summary>What the row says; null where the header names no two yarns by letters.</summary>
    /// <param name="row">The row with its steps and its label.</param>
    /// <param name="span">All of its words.</param>
    /// <param name="context">Where it stands.</param>
    public static RowYarns? Read(BoundRow row, TextSpan span, RowContext context)
    {
        if (YarnMention.Labels(context.Facts) is not { Length: > 1 } labels)
        {
            return null;
        }

        var text = context.Source.Slice(span);
        var mentions = YarnMention.In(text, labels);
        var stitches = new List<TextSpan>();
        Stitches(row.Steps, stitches);
        if (stitches.Count == 0)
        {
            return new RowYarns(null, [], mentions.LastOrDefault(m => m.Said is YarnSaid.Use or YarnSaid.Change).Label, mentions.All(m => m.Said != YarnSaid.Beside)) { HasStitches = false };
        }

        var isKnitting = context.Facts.Craft == Craft.Knitting;
        // "Rep Rows 1-4 with B": who knows which of them. Two yarns held together are no colour of either.
        var isSure = mentions.IsEmpty || !(row.Steps.Any(s => s is RepeatRowsStep) || text.Contains("held", StringComparison.OrdinalIgnoreCase) || text.Contains("strand", StringComparison.OrdinalIgnoreCase));
        var from = new List<(int At, string Label)>();
        string? last = null;
        foreach (var mention in mentions.Where(m => m.Said != YarnSaid.Off))
        {
            var at = span.Start + mention.At;
            var isInLabel = at < row.LabelOrigin.End;
            if (mention.Said == YarnSaid.Beside && !isKnitting && !isInLabel)
            {
                isSure = false;
            }

            from.Add((isInLabel || mention.Said == YarnSaid.Change ? at : Owner(stitches, at, context.Source), mention.Label));
            last = mention.Label;
        }

        var yarns = stitches.Select(s => from.LastOrDefault(f => f.At <= s.Start).Label).Distinct(StringComparer.Ordinal).ToArray();
        return yarns.Length == 1
            ? new RowYarns(yarns[0], [], last == yarns[0] ? null : last, isSure)
            : new RowYarns(null, [.. yarns.OfType<string>()], last, isSure);
    }

    /// <summary>Where the stitch begins that the words belong to; their own place where they stand by themselves.</summary>
    private static int Owner(List<TextSpan> stitches, int at, SourceText source)
    {
        for (var i = stitches.Count - 1; i >= 0; i--)
        {
            var (start, end) = (stitches[i].Start, stitches[i].End);
            if (start <= at && (at < end || source.Slice(TextSpan.FromBounds(end, at)).IndexOfAny(Stops) < 0))
            {
                return start;
            }
        }

        return at;
    }

    /// <summary>The places of the steps that make stitches; chains and slip stitches close a row and are none.</summary>
    private static void Stitches(ImmutableArray<Step> steps, List<TextSpan> places)
    {
        foreach (var step in steps)
        {
            switch (step)
            {
                case GroupStep group:
                    Stitches(group.Body, places);
                    break;
                case RepeatStep repeat:
                    Stitches(repeat.Body, places);
                    Stitches(repeat.Ending, places);
                    break;
                case CrochetStep { Operation.Id: "sl st" }:
                    break;
                case OperationStep or RunStep or IncreaseStep or InOneStitchStep or CableNeedleStep { WorkedAs: not null } or PatternRowStep or AcrossPieceStep or PickUpStep or BindOffStep
                    or CrochetStep or NamedIncreaseStep or ShellStep or InsteadStep or MeshStep or (RowsStep and not StartStep):
                    places.Add(step.Origin);
                    break;
            }
        }
    }
}
