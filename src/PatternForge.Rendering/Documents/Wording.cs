using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;
using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Documents;

/// <summary>The words of the page that are the trade's and not the designer's.</summary>
internal static class Wording
{
    /// <summary>Stands where a size has no value.</summary>
    public const string None = "–";

    /// <summary>All sizes in trade form: the first value, the others in parentheses; one value when it is the same for all.</summary>
    public static string TradeForm(IReadOnlyList<string> values) =>
        values.Count == 0 ? ""
        : values.All(v => string.Equals(v, values[0], StringComparison.Ordinal)) ? values[0]
        : $"{values[0]} ({string.Join(", ", values.Skip(1))})";

    /// <summary>A plain number: no trailing noughts.</summary>
    public static string Number(decimal value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>"Knitting pattern".</summary>
    public static string Kind(Craft craft) => craft switch
    {
        Craft.Crochet => "Crochet pattern",
        Craft.Tunisian => "Tunisian crochet pattern",
        _ => "Knitting pattern",
    };

    /// <summary>"US", "UK".</summary>
    public static string? Terms(Dialect? dialect) => dialect switch
    {
        Dialect.Us => "US",
        Dialect.Uk => "UK",
        _ => null,
    };

    /// <summary>"Gauge", as Americans and most others say; British makers say tension (common practice).</summary>
    public static string GaugeName(Dialect? dialect) => dialect is Dialect.Uk ? "Tension" : "Gauge";

    /// <summary>The page's own words as Americans spell them in a pattern in US terms; else as they are.</summary>
    public static string Spelled(string words, Dialect? dialect) => dialect is not Dialect.Us ? words
        : words.Replace("colour", "color", StringComparison.Ordinal).Replace("centre", "center", StringComparison.Ordinal).Replace("anticlockwise", "counterclockwise", StringComparison.Ordinal);

    /// <summary>The level in a word.</summary>
    public static string LevelName(Level level) => level.ToString();

    /// <summary>A treatment of care labels by its name.</summary>
    public static string CareName(CareKind kind) => kind is CareKind.ProfessionalCare ? "Professional care" : kind.ToString();

    /// <summary>Whom it is for, in a word; null when not said.</summary>
    public static string? Audience(Audience? audience) => audience?.ToString();

    /// <summary>"DK, light (3)": the designer's word, then the class; the word alone where it names the class already.</summary>
    public static string? Weight(int? weightClass, string? written)
    {
        var said = Said(written);
        if (weightClass is not (>= 0 and <= 7) || YarnWeight.All[weightClass.Value] is not { } weight)
        {
            return said;
        }

        var standard = string.Create(CultureInfo.InvariantCulture, $"{weight.Name} ({weight.Class})");
        if (said is null || said.All(char.IsAsciiDigit) || said.Contains(weight.Name, StringComparison.OrdinalIgnoreCase))
        {
            return standard;
        }

        return said.Contains((char)('0' + weight.Class), StringComparison.Ordinal) ? said : $"{said}, {standard}";
    }

    /// <summary>Version and date in one line; null when neither is said.</summary>
    public static string? Edition(string? version, string? date) => (Said(version), Said(date)) switch
    {
        (null, null) => null,
        ({ } v, null) => $"Version {v}",
        (null, { } d) => d,
        ({ } v, { } d) => $"Version {v}, {d}",
    };

    /// <summary>The text without blanks round it; null when nothing is left.</summary>
    public static string? Said(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    /// <summary>A designer's text with a minus, and no hyphen, before a number that has one.</summary>
    public static string? WithMinus(string? text)
    {
        if (text is null || !text.Contains('-', StringComparison.Ordinal))
        {
            return text;
        }

        var signs = text.ToCharArray();
        for (var i = 0; i + 1 < signs.Length; i++)
        {
            if (signs[i] == '-' && char.IsAsciiDigit(signs[i + 1]) && (i == 0 || signs[i - 1] is ' ' or '('))
            {
                signs[i] = '−';
            }
        }

        return new string(signs);
    }

    /// <summary>"finished-length" as words; first letter as written.</summary>
    public static string Words(string key) => key.Contains(' ', StringComparison.Ordinal) ? key.Trim() : key.Trim().Replace('-', ' ');

    /// <summary>The same text with its first letter as a capital.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>Stitch counts, all sizes in trade form: "84 (92, 100) sts"; null where a size is unknown in every size.</summary>
    public static string? Stitches(ImmutableArray<int?> counts)
    {
        if (counts.IsDefaultOrEmpty || counts.All(c => c is null))
        {
            return null;
        }

        var unit = counts.All(c => c is null or 1) ? "st" : "sts";
        return $"{TradeForm(Counts(counts))} {unit}";
    }

    /// <summary>Counts as text, one a size.</summary>
    public static ImmutableArray<string> Counts(ImmutableArray<int?> counts) =>
        [.. counts.Select(c => c is { } n ? n.ToString(CultureInfo.InvariantCulture) : None)];
}
