namespace PatternForge.Core.Work;

/// <summary>Says in words which reading of a line was taken.</summary>
internal static class ReadingWords
{
    public static string? Of(List<Reading> readings)
    {
        var words = readings.Select(r => r.Kind).Distinct().Select(kind => kind switch
        {
            ReadingKind.More => "the number of times is taken as times more",
            ReadingKind.InAll => "the number of times is taken as times in all",
            ReadingKind.Implied => "repeated to the end",
            ReadingKind.RestPlain => "the rest of the row is worked plain",
            ReadingKind.OnePlain => "the stitch left over is worked plain",
            ReadingKind.WholeRepeated => "all of it is repeated to the end",
            ReadingKind.CutRepeat => "the ending takes the place of the end of the last repeat",
            ReadingKind.IncreaseBetween => "each increase is made between stitches",
            ReadingKind.EachStitch => "each stitch is meant, of whatever kind",
            ReadingKind.TurningChain => "the turning chain is taken not to count",
            ReadingKind.TurningChainCounts => "the turning chain is taken to count as a stitch",
            ReadingKind.TurningChainShown => "the turning chain does not count, as an earlier count shows",
            ReadingKind.TurningChainCountsShown => "the turning chain counts as a stitch, as an earlier count shows",
            ReadingKind.TurningChainSaid => "the turning chain does not count, as the pattern says",
            ReadingKind.TurningChainCountsSaid => "the turning chain counts as a stitch, as the pattern says",
            ReadingKind.SkipsBase => "the stitch passed over is the one under the turning chain",
            ReadingKind.FromAnotherPiece => "the stitches told of another piece come to those on the needle",
            ReadingKind.NextMarker => "the next marker is taken",
            _ => null,
        }).OfType<string>().ToArray();
        return words.Length == 0 ? null : string.Join("; ", words);
    }
}
