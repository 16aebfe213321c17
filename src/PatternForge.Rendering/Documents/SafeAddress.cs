using System.Buffers;

namespace PatternForge.Rendering.Documents;

/// <summary>Which addresses a page may link to or show: the web, mail, and files beside it. Nothing that a browser would run.</summary>
public static class SafeAddress
{
    private static readonly SearchValues<char> SchemeSigns = SearchValues.Create("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789+-.");

    /// <summary>The address if a page may link to it (http, https, mailto, or relative), trimmed; null otherwise.</summary>
    public static string? ForLink(string? address)
    {
        var trimmed = address?.Trim();
        if (string.IsNullOrEmpty(trimmed) || trimmed.Any(c => char.IsControl(c) || char.IsWhiteSpace(c)))
        {
            return null;
        }

        return Scheme(trimmed) is null or "http" or "https" or "mailto" ? trimmed : null;
    }

    /// <summary>The address if a page may show it as a picture without going to the network: a relative path; null otherwise.</summary>
    public static string? ForImage(string? address)
    {
        var trimmed = address?.Trim();
        if (string.IsNullOrEmpty(trimmed) || trimmed.Any(char.IsControl))
        {
            return null;
        }

        return Scheme(trimmed) is null && trimmed[0] is not ('/' or '\\') ? trimmed : null;
    }

    /// <summary>The address of a file beside the page: what has a meaning in addresses is written as a code.</summary>
    public static string OfFile(string file) => file
        .Replace("%", "%25", StringComparison.Ordinal).Replace(" ", "%20", StringComparison.Ordinal)
        .Replace("#", "%23", StringComparison.Ordinal).Replace("?", "%3F", StringComparison.Ordinal).Replace('\\', '/');

    /// <summary>The address to write to, or the web address, that a line consists of; null when it is anything else.</summary>
    public static string? FromWords(string words)
    {
        var trimmed = words.Trim();
        if (trimmed.StartsWith("http://", StringComparison.OrdinalIgnoreCase) || trimmed.StartsWith("https://", StringComparison.OrdinalIgnoreCase)
            || trimmed.StartsWith("mailto:", StringComparison.OrdinalIgnoreCase))
        {
            return ForLink(trimmed);
        }

        var at = trimmed.IndexOf('@', StringComparison.Ordinal);
        var isMail = at > 0 && trimmed.LastIndexOf('.') > at + 1 && trimmed[^1] != '.' && trimmed.IndexOf('@', at + 1) < 0
            && trimmed.All(c => char.IsAsciiLetterOrDigit(c) || c is '@' or '.' or '-' or '_' or '+');
        return isMail ? "mailto:" + trimmed : null;
    }

    /// <summary>What stands before the first colon, where it has the form of a scheme (RFC 3986, section 3.1); null for a relative address.</summary>
    private static string? Scheme(string address)
    {
        var end = address.IndexOf(':', StringComparison.Ordinal);
        return end > 0 && char.IsAsciiLetter(address[0]) && address.AsSpan(0, end).IndexOfAnyExcept(SchemeSigns) < 0 ? address[..end].ToLowerInvariant() : null;
    }
}
