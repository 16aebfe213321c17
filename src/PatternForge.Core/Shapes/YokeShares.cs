namespace PatternForge.Core.Shapes;

/// <summary>How many stitches of a yoke are its front, or its back where it is open in front: by its markers, where they hold the sleeves, else by a share.</summary>
internal sealed class YokeShares
{
    private readonly int _size;
    private int[] _sleeves = [];
    private int _sections;

    public YokeShares(int size) => _size = size;

    /// <summary>True where the markers tell which stitches are the sleeves.</summary>
    public bool HasSleeves => _sleeves.Length > 0;

    /// <summary>True where they tell a back between the sleeves and a front at either end.</summary>
    public bool HasFronts => _sections == 5 && _sleeves is [1, 3];

    /// <summary>Looks for the sections of so many stitches in a line; true where the line has markers.</summary>
    public bool Find(ShapedLine line, int sleeve)
    {
        if (line.Worked.Sections is not { IsEmpty: false } all || all[_size] is not { Length: > 3 } sections)
        {
            return false;
        }

        int[] found = [.. Enumerable.Range(0, sections.Length).Where(s => sections[s].Stitches == sleeve)];
        (_sleeves, _sections) = found.Length == 2 ? (found, sections.Length) : ([], 0);
        return true;
    }

    /// <summary>Half of what is not sleeve; null where the markers of this line do not tell.</summary>
    public decimal? Half(ShapedLine line) =>
        HasSleeves && line.Worked.Sections is { IsEmpty: false } all && all[_size].Length == _sections ? (line.Worked.After[_size] - _sleeves.Sum(s => all[_size][s].Stitches)) / 2m : null;

    /// <summary>The stitches between the sleeves; null where the markers of this line do not tell.</summary>
    public decimal? Back(ShapedLine line) =>
        HasFronts && line.Worked.Sections is { IsEmpty: false } all && all[_size].Length == _sections ? all[_size][2].Stitches : null;
}
