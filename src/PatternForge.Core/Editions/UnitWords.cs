using PatternForge.Core.Model;

namespace PatternForge.Core.Editions;

/// <summary>Words of a header in other units: what is reckoned with stays as it was measured in the source, and the page tells it anew.</summary>
public static class UnitWords
{
    /// <summary>"8 cm of positive ease" as "3¼ in of positive ease"; the words as they are where no system is asked for.</summary>
    public static string? In(UnitSystem? only, string? words) => only is { } system && words is not null ? UnitsEdition.Told(words, system) : words;
}
