using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>The kinds of treatment that care labels speak of, in the order of ISO 3758.</summary>
public enum CareKind
{
    /// <summary>Washing by hand or machine.</summary>
    Washing,

    /// <summary>Bleaching.</summary>
    Bleaching,

    /// <summary>Drying, in a tumble dryer or in the air.</summary>
    Drying,

    /// <summary>Ironing and steaming.</summary>
    Ironing,

    /// <summary>Dry or wet cleaning by a professional.</summary>
    ProfessionalCare,
}

/// <summary>What the header says of the care of the finished piece.</summary>
/// <param name="Kind">The treatment that its key names; null for words that stand under no such key.</param>
/// <param name="Text">The words.</param>
/// <param name="Origin">Where they stand.</param>
public sealed record CareEntry(CareKind? Kind, string Text, TextSpan Origin);
