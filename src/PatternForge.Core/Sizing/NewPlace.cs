namespace PatternForge.Core.Sizing;

/// <summary>Where a new size stands among the others, and how far it is from its neighbours.</summary>
/// <param name="Index">Its place in the new order, from 0.</param>
/// <param name="From">The neighbour that it is measured from, in the old order.</param>
/// <param name="To">The other one.</param>
/// <param name="Share">How far it is on the way from the first to the second: half for the middle, 2 for one step beyond the second, -1 for one before the first.</param>
internal sealed record NewPlace(int Index, int From, int To, decimal Share)
{
    /// <summary>Between the sizes halfway, else one step beyond the end.</summary>
    public static NewPlace At(int index, int sizes) =>
        index == 0 ? new(0, 0, 1, -1m) : index == sizes ? new(sizes, sizes - 2, sizes - 1, 2m) : new(index, index - 1, index, 0.5m);

    /// <summary>True where it stands between two sizes.</summary>
    public bool IsBetween => Share is > 0 and < 1;
}

/// <summary>A value worked out for the new size.</summary>
/// <param name="Number">The number; null for none.</param>
/// <param name="UpTo">The upper end of a range.</param>
/// <param name="Why">How it comes about, in a few words.</param>
/// <param name="IsOpen">True where the designer must decide.</param>
internal sealed record NewValue(decimal? Number, decimal? UpTo, string Why, bool IsOpen = false);
