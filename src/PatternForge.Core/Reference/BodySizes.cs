using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>Body measurements by size, in inches and centimetres as published: babies, children, women and men.</summary>
/// <remarks>
/// The figures are those of the Craft Yarn Council's size tables. Most were set down from memory (<see cref="Sources.BodySizes"/>) and so drive a warning or a note at most;
/// the child and youth lengths and widths (<see cref="Sources.ChildSizes"/>) and the women's busts (<see cref="Sources.BustSizes"/>) were seen quoted. Babies' hips are left out: nobody could name them.
/// Other readings stand in <see cref="BodyReadings"/>.
/// </remarks>
public static class BodySizes
{
    /// <summary>The names of the sizes, smallest first: months for babies, years for children.</summary>
    public static ImmutableArray<string> Names(BodyGroup group) => group switch
    {
        BodyGroup.Baby => ["3", "6", "12", "18", "24"],
        BodyGroup.Child => ["2", "4", "6", "8", "10", "12", "14", "16"],
        BodyGroup.Woman => ["XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X"],
        BodyGroup.Man => ["S", "M", "L", "XL", "XXL"],
        _ => [],
    };

    /// <summary>Every measurement of every table, the sizes in the order of <see cref="Names"/>.</summary>
    public static ImmutableArray<BodyTable> All { get; } =
    [
        Single(BodyGroup.Baby, "chest", Sources.BodySizes, (16, 40.5m), (17, 43), (18, 45.5m), (19, 48), (20, 50.5m)),
        Single(BodyGroup.Baby, "center back neck to wrist", Sources.BodySizes, (10.5m, 26.5m), (11.5m, 29), (12.5m, 31.5m), (14, 35.5m), (18, 45.5m)),
        Single(BodyGroup.Baby, "back waist length", Sources.BodySizes, (6, 15.5m), (7, 17.5m), (7.5m, 19), (8, 20.5m), (8.5m, 21.5m)),
        Single(BodyGroup.Baby, "cross back", Sources.BodySizes, (7.25m, 18.5m), (7.75m, 19.5m), (8.25m, 21), (8.5m, 21.5m), (8.75m, 22)),
        Single(BodyGroup.Baby, "arm length to underarm", Sources.BodySizes, (6, 15.5m), (6.5m, 16.5m), (7.5m, 19), (8, 20.5m), (8.5m, 21.5m)),
        Single(BodyGroup.Baby, "upper arm", Sources.BodySizes, (5.5m, 14), (6, 15.5m), (6.5m, 16.5m), (7, 17.5m), (7.5m, 19)),
        Single(BodyGroup.Baby, "armhole depth", Sources.BodySizes, (3.25m, 8.5m), (3.5m, 9), (3.75m, 9.5m), (4, 10), (4.25m, 10.5m)),
        Single(BodyGroup.Baby, "waist", Sources.BodySizes, (18, 45.5m), (19, 48), (20, 50.5m), (20.5m, 52), (21, 53.5m)),
        Single(BodyGroup.Child, "chest", Sources.BodySizes, (21, 53), (23, 58.5m), (25, 63.5m), (26.5m, 67), (28, 71), (30, 76), (31.5m, 80), (32.5m, 82.5m)),
        Single(BodyGroup.Child, "center back neck to wrist", Sources.BodySizes, (18, 45.5m), (19.5m, 49.5m), (20.5m, 52), (22, 56), (24, 61), (26, 66), (27, 68.5m), (28, 71)),
        Single(BodyGroup.Child, "back waist length", Sources.ChildSizes, (8.5m, 21.5m), (9.5m, 24), (10.5m, 26.5m), (12.5m, 31.5m), (14, 35.5m), (15, 38), (15.5m, 39.5m), (16, 40.5m)),
        Single(BodyGroup.Child, "cross back", Sources.ChildSizes, (9.25m, 23.5m), (9.75m, 25), (10.25m, 26), (10.75m, 27), (11.25m, 28.5m), (12, 30.5m), (12.25m, 31), (13, 33)),
        Single(BodyGroup.Child, "arm length to underarm", Sources.ChildSizes, (8.5m, 21.5m), (10.5m, 26.5m), (11.5m, 29), (12.5m, 31.5m), (13.5m, 34.5m), (15, 38), (16, 40.5m), (16.5m, 42)),
        Single(BodyGroup.Child, "upper arm", Sources.ChildSizes, (7, 17.5m), (7.5m, 19), (8, 20.5m), (8.5m, 21.5m), (8.75m, 22), (9, 23), (9.25m, 23.5m), (9.5m, 24)),
        Single(BodyGroup.Child, "armhole depth", Sources.ChildSizes, (4.25m, 10.5m), (4.75m, 12), (5, 12.5m), (5.5m, 14), (6, 15.5m), (6.5m, 16.5m), (7, 17.5m), (7.5m, 19)),
        Single(BodyGroup.Child, "waist", Sources.BodySizes, (21, 53.5m), (21.5m, 54.5m), (22.5m, 57), (23.5m, 59.5m), (24.5m, 62), (25.5m, 65), (26.5m, 67.5m), (27.5m, 70)),
        Single(BodyGroup.Child, "hips", Sources.BodySizes, (22, 56), (23.5m, 59.5m), (25, 63.5m), (28, 71), (29.5m, 75), (31.5m, 80), (33, 83.5m), (35.5m, 90)),
        Ranges(BodyGroup.Woman, "bust", Sources.BustSizes, (28, 30, 71, 76), (32, 34, 81, 86), (36, 38, 91.5m, 96.5m), (40, 42, 101.5m, 106.5m), (44, 46, 111.5m, 117), (48, 50, 122, 127), (52, 54, 132, 137), (56, 58, 142, 147), (60, 62, 152, 158)),
        Ranges(BodyGroup.Woman, "center back neck to wrist", Sources.BodySizes, (27, 27.5m, 68.5m, 70), (28, 28.5m, 71, 72.5m), (29, 29.5m, 73.5m, 75), (30, 30.5m, 76, 77.5m), (31, 31.5m, 78.5m, 80), (31.5m, 32, 80, 81.5m), (32.5m, 33, 82.5m, 84), (32.5m, 33, 82.5m, 84), (33, 33.5m, 84, 85)),
        Single(BodyGroup.Woman, "back waist length", Sources.BodySizes, (16.5m, 42), (17, 43), (17.25m, 43.5m), (17.5m, 44.5m), (17.75m, 45), (18, 45.5m), (18, 45.5m), (18.5m, 47), (18.5m, 47)),
        Ranges(BodyGroup.Woman, "cross back", Sources.BodySizes, (14, 14.5m, 35.5m, 37), (14.5m, 15, 37, 38), (16, 16.5m, 40.5m, 42), (17, 17.5m, 43, 44.5m), (17.5m, 17.5m, 44.5m, 44.5m), (18, 18, 45.5m, 45.5m), (18, 18, 45.5m, 45.5m), (18.5m, 18.5m, 47, 47), (18.5m, 18.5m, 47, 47)),
        Single(BodyGroup.Woman, "arm length to underarm", Sources.BodySizes, (16.5m, 42), (17, 43), (17, 43), (17.5m, 44.5m), (17.5m, 44.5m), (18, 45.5m), (18, 45.5m), (18.5m, 47), (18.5m, 47)),
        Single(BodyGroup.Woman, "upper arm", Sources.BodySizes, (9.75m, 25), (10.25m, 26), (11, 28), (12, 30.5m), (13.5m, 34.5m), (15.5m, 39.5m), (17, 43), (18.5m, 47), (19.5m, 49.5m)),
        Ranges(BodyGroup.Woman, "armhole depth", Sources.BodySizes, (6, 6.5m, 15.5m, 16.5m), (6.5m, 7, 16.5m, 17.5m), (7, 7.5m, 17.5m, 19), (7.5m, 8, 19, 20.5m), (8, 8.5m, 20.5m, 21.5m), (8.5m, 9, 21.5m, 23), (9, 9.5m, 23, 24), (9.5m, 10, 24, 25.5m), (10, 10.5m, 25.5m, 26.5m)),
        Ranges(BodyGroup.Woman, "waist", Sources.BodySizes, (23, 24, 58.5m, 61), (25, 26.5m, 63.5m, 67.5m), (28, 30, 71, 76), (32, 34, 81.5m, 86.5m), (36, 38, 91.5m, 96.5m), (40, 42, 101.5m, 106.5m), (44, 45, 111.5m, 114), (46, 47, 116.5m, 119), (49, 50, 124, 127)),
        Ranges(BodyGroup.Woman, "hips", Sources.BodySizes, (33, 34, 83.5m, 86), (35, 36, 89, 91.5m), (38, 40, 96.5m, 101.5m), (42, 44, 106.5m, 111.5m), (46, 48, 116.5m, 122), (52, 53, 132, 134.5m), (54, 55, 137, 139.5m), (56, 57, 142, 144.5m), (61, 62, 155, 157)),
        Ranges(BodyGroup.Man, "chest", Sources.BodySizes, (34, 36, 86, 91.5m), (38, 40, 96.5m, 101.5m), (42, 44, 106.5m, 111.5m), (46, 48, 116.5m, 122), (50, 52, 127, 132)),
        Ranges(BodyGroup.Man, "center back neck to wrist", Sources.BodySizes, (32, 32.5m, 81, 82.5m), (33, 33.5m, 83.5m, 85), (34, 34.5m, 86.5m, 87.5m), (35, 35.5m, 89, 90), (36, 36.5m, 91.5m, 92.5m)),
        Ranges(BodyGroup.Man, "back hip length", Sources.BodySizes, (25, 25.5m, 63.5m, 64.5m), (26.5m, 26.75m, 67.5m, 68), (27, 27.25m, 68.5m, 69), (27.5m, 27.75m, 69.5m, 70.5m), (28, 28.5m, 71, 72.5m)),
        Ranges(BodyGroup.Man, "cross back", Sources.BodySizes, (15.5m, 16, 39.5m, 40.5m), (16.5m, 17, 42, 43), (17.5m, 18, 44.5m, 45.5m), (18, 18.5m, 45.5m, 47), (18.5m, 19, 47, 48)),
        Single(BodyGroup.Man, "arm length to underarm", Sources.BodySizes, (18, 45.5m), (18.5m, 47), (19.5m, 49.5m), (20, 50.5m), (20.5m, 52)),
        Single(BodyGroup.Man, "upper arm", Sources.BodySizes, (12, 30.5m), (13, 33), (15, 38), (16, 40.5m), (17, 43)),
        Ranges(BodyGroup.Man, "armhole depth", Sources.BodySizes, (8.5m, 9, 21.5m, 23), (9, 9.5m, 23, 24), (9.5m, 10, 24, 25.5m), (10, 10.5m, 25.5m, 26.5m), (10.5m, 11, 26.5m, 28)),
        Ranges(BodyGroup.Man, "waist", Sources.BodySizes, (28, 30, 71, 76), (32, 34, 81.5m, 86.5m), (36, 38, 91.5m, 96.5m), (42, 44, 106.5m, 112), (46, 48, 117, 122)),
        Ranges(BodyGroup.Man, "hips", Sources.BodySizes, (35, 37, 89, 94), (39, 41, 99, 104), (43, 45, 109, 114), (47, 49, 119, 124.5m), (51, 53, 129.5m, 134.5m)),
    ];

    private static BodyTable Single(BodyGroup group, string measure, Source source, params ReadOnlySpan<(decimal Inches, decimal Cm)> sizes)
    {
        var ranges = ImmutableArray.CreateBuilder<BodyRange>(sizes.Length);
        foreach (var (inches, cm) in sizes)
        {
            ranges.Add(new BodyRange(inches, inches, cm, cm));
        }

        return new(group, measure, source, ranges.MoveToImmutable());
    }

    private static BodyTable Ranges(BodyGroup group, string measure, Source source, params ReadOnlySpan<(decimal LeastInches, decimal MostInches, decimal LeastCm, decimal MostCm)> sizes)
    {
        var ranges = ImmutableArray.CreateBuilder<BodyRange>(sizes.Length);
        foreach (var (leastInches, mostInches, leastCm, mostCm) in sizes)
        {
            ranges.Add(new BodyRange(leastInches, mostInches, leastCm, mostCm));
        }

        return new(group, measure, source, ranges.MoveToImmutable());
    }
}
