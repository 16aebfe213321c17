using System.Globalization;

namespace PatternForge.Core.Binding;

/// <summary>Small matters of wording in findings.</summary>
internal static class Wording
{
    private static readonly string[] Words = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>Small numbers in letters, as a careful writer does.</summary>
    public static string Number(int n) => n >= 0 && n < Words.Length ? Words[n] : n.ToString(CultureInfo.InvariantCulture);
}
