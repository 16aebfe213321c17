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

    /// <summary>A file, but none of the pictures that pages show.</summary>
    NoPicture,

    /// <summary>The system does not let it be read.</summary>
    Unreadable,
}

/// <summary>What is known of a photo's file. The compiler reads no file: who calls it looks.</summary>
/// <param name="State">Whether it can be had.</param>
public sealed record PhotoFacts(PhotoState State)
{
    /// <summary>Width in pixels, as it is stored; null when not known.</summary>
    public int? Width { get; init; }

    /// <summary>Height in pixels, as it is stored; null when not known.</summary>
    public int? Height { get; init; }

    /// <summary>True when the file says where on earth it was taken.</summary>
    public bool HasLocation { get; init; }

    /// <summary>Why it cannot be read, in a few words; null when it can.</summary>
    public string? Reason { get; init; }
}
