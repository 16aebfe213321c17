using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>An abbreviation that the rows use and what it means in the pattern's terms.</summary>
/// <param name="Name">As it is usually written in the pattern's terms.</param>
/// <param name="Meaning">What it means.</param>
/// <param name="IsSpecial">True when the header defines it as a stitch of this pattern.</param>
/// <param name="Origin">Where the rows use it first.</param>
public sealed record AbbreviationUse(string Name, string Meaning, bool IsSpecial, TextSpan Origin)
{
    /// <summary>The name in one spelling, to compare lists by: lower case, no plural, no blanks or stops.</summary>
    public string Key => KeyOf(Name);

    /// <summary>One spelling of a name: "sts", "st(s)" and "St" are <c>st</c>, "inc'd" is <c>inc</c>.</summary>
    public static string KeyOf(string name)
    {
        if (IsKey(name))
        {
            return name;
        }

        var key = name.Replace("(s)", "", StringComparison.Ordinal).Replace("'d", "", StringComparison.Ordinal).Replace("’d", "", StringComparison.Ordinal);
        key = string.Concat(key.Where(c => char.IsLetterOrDigit(c) || c is '&' or '/')).ToLowerInvariant();
        return key is "rs" or "ws" or "ss" || key.Length < 3 || !key.EndsWith('s') ? key : key[..^1];
    }

    // A name that is its own key already: nothing is to be taken out of it.
    private static bool IsKey(string name)
    {
        foreach (var c in name)
        {
            if (!char.IsAsciiLetterLower(c) && !char.IsAsciiDigit(c))
            {
                return false;
            }
        }

        return !name.EndsWith('s');
    }
}
