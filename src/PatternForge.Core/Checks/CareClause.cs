using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>One clause of the care ("do not tumble dry"), by the words that labels use.</summary>
internal sealed record CareClause(CareKind? Kind, string Text, TextSpan Origin, ImmutableArray<string> Words)
{
    private static readonly string[] Washing = ["wash", "washable", "handwash", "washing", "soak", "rinse", "launder", "machine"];
    private static readonly string[] Bleaching = ["bleach", "bleaching", "chlorine"];
    private static readonly string[] Drying = ["tumble", "dry", "drying", "dryer", "drip", "line", "flat", "shade"];
    private static readonly string[] Ironing = ["iron", "ironing", "press", "pressing", "steam"];
    private static readonly string[] Cleaning = ["dryclean", "clean", "cleaning", "cleaner", "cleaned"];

    private static readonly string[] Others =
        ["hand", "cold", "cool", "lukewarm", "tepid", "warm", "hot", "mild", "gentle", "delicate", "normal", "wool", "low", "medium", "high", "reshape", "block", "label", "yarn", "professional", "none", "never", "not", "no", "any", "oxygen", "only", "hang", "lay", "air"];

    /// <summary>The clauses of all entries, in order.</summary>
    public static ImmutableArray<CareClause> Of(PatternFacts facts)
    {
        var clauses = ImmutableArray.CreateBuilder<CareClause>();
        foreach (var entry in facts.Care)
        {
            foreach (var text in Split(entry.Text))
            {
                var words = WordsOf(text);
                if (words.Length > 0)
                {
                    // "Machine wash, 60 °C": a temperature by itself belongs to the treatment before it.
                    var clause = new CareClause(KindOf(words) ?? entry.Kind, text.Trim(), entry.Origin, words);
                    clauses.Add(clause is { Kind: null, Celsius: not null } && clauses.Count > 0 && clauses[^1].Origin == entry.Origin ? clause with { Kind = clauses[^1].Kind } : clause);
                }
            }
        }

        return clauses.ToImmutable();
    }

    /// <summary>True when it forbids ("do not wash", "no bleach"), which is not the case of "no steam" for the iron or "non-chlorine bleach".</summary>
    public bool Forbids => Kind switch
    {
        CareKind.Ironing when Has("steam") && !Has("iron") && !Has("press") => false,
        CareKind.Bleaching when Has("non") => false,
        _ => Has("not") || Has("never") || Has("no") || Has("without") || Words is ["none"],
    };

    /// <summary>The temperature that it names, in °C; null for none.</summary>
    public int? Celsius
    {
        get
        {
            for (var i = 0; i < Words.Length; i++)
            {
                if (int.TryParse(Words[i], NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is > 0 and < 500)
                {
                    var unit = i + 1 < Words.Length ? Words[i + 1] : "";
                    if (unit is "degrees" or "degree" && i + 2 < Words.Length && Words[i + 2] is "f" or "fahrenheit")
                    {
                        unit = "f";
                    }

                    return unit switch
                    {
                        "f" or "fahrenheit" => (int)Math.Round((number - 32) / 1.8m),
                        "c" or "celsius" or "degrees" or "degree" => number,
                        _ when i + 1 == Words.Length && number >= 20 => number,
                        _ => null,
                    };
                }
            }

            return null;
        }
    }

    /// <summary>True when it names its temperature in °F, whose steps are others.</summary>
    public bool IsFahrenheit => Has("f") || Has("fahrenheit");

    /// <summary>True when it has the word.</summary>
    public bool Has(string word) => Words.Contains(word, StringComparer.Ordinal);

    /// <summary>True when one of its words is one that labels or the trade use.</summary>
    public bool IsKnown => KindOf(Words) is not null || Celsius is not null || Words.Any(w => Others.Contains(w, StringComparer.Ordinal));

    private static CareKind? KindOf(ImmutableArray<string> words)
    {
        bool Any(string[] of) => words.Any(w => of.Contains(w, StringComparer.Ordinal));
        return Any(Cleaning) ? CareKind.ProfessionalCare
            : Any(Bleaching) ? CareKind.Bleaching
            : Any(Ironing) ? CareKind.Ironing
            : words.Contains("tumble", StringComparer.Ordinal) ? CareKind.Drying
            : Any(Washing) ? CareKind.Washing
            : Any(Drying) ? CareKind.Drying
            : null;
    }

    // "Hand wash cold, do not tumble dry": a clause ends at a comma, a full stop, and before "and" or "but" with a verb of its own.
    private static IEnumerable<string> Split(string text)
    {
        foreach (var part in text.Split([',', ';', '.', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var rest = part;
            foreach (var joint in (string[])[" but ", " then ", " and "])
            {
                var at = rest.IndexOf(joint, StringComparison.OrdinalIgnoreCase);
                if (at > 0 && KindOf(WordsOf(rest[..at])) is not null && KindOf(WordsOf(rest[(at + joint.Length)..])) is not null)
                {
                    yield return rest[..at];
                    rest = rest[(at + joint.Length)..];
                }
            }

            yield return rest;
        }
    }

    private static ImmutableArray<string> WordsOf(string text)
    {
        var words = ImmutableArray.CreateBuilder<string>();
        var start = -1;
        for (var i = 0; i <= text.Length; i++)
        {
            var isPart = i < text.Length && char.IsLetterOrDigit(text[i]);

            // "40C" is a number and its unit.
            var isJoint = isPart && start >= 0 && char.IsDigit(text[i - 1]) != char.IsDigit(text[i]);
            if (start >= 0 && (!isPart || isJoint))
            {
                words.Add(text[start..i].ToLowerInvariant());
                start = -1;
            }

            if (isPart && start < 0)
            {
                start = i;
            }
        }

        return words.ToImmutable() is var all && all.Contains("don", StringComparer.Ordinal) ? all.Add("not") : all;
    }
}
