namespace PatternForge.Core.Model;

/// <summary>Whether a photo that a pattern names can be had.</summary>
public enum PhotoState
{
    /// <summary>It lies beside the pattern and is a picture.</summary>
    There,

    /// <summary>No such file.</summary>
    Missing,

    /// <summary>Outside the pattern's folder, or an address: it is never read.</summary>
    Outside,

    /// <summary>A file, but no picture.</summary>
    NoPicture,

    /// <summary>A picture of a kind that no cleaned copy can be made of; the reason names the kind.</summary>
    OtherKind,

    /// <summary>A picture that is cut off or does not hold what its kind prescribes.</summary>
    Damaged,

    /// <summary>A picture of more bytes or pixels than are ever read; the reason says how many.</summary>
    TooLarge,

    /// <summary>The system does not let it be read.</summary>
    Unreadable,
}

/// <summary>What is known of a photo's file. The compiler reads no file: who calls it looks.</summary>
/// <param name="State">Whether it can be had.</param>
public sealed record PhotoFacts(PhotoState State)
{
    /// <summary>Width in pixels as it is seen, turned upright; null when not known.</summary>
    public int? Width { get; init; }

    /// <summary>Height in pixels as it is seen, turned upright; null when not known.</summary>
    public int? Height { get; init; }

    /// <summary>True when the file says where on earth it was taken.</summary>
    public bool HasLocation { get; init; }

    /// <summary>Why it cannot be read or what is wrong with it, in a few words; null when all is well.</summary>
    public string? Reason { get; init; }
}
