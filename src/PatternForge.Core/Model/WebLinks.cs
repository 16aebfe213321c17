using System.Net;

namespace PatternForge.Core.Model;

/// <summary>The addresses that a pattern's header leads to.</summary>
public static class WebLinks
{
    /// <summary>Every address of links, videos, tools and notions, and of the contact where it is one, in order.</summary>
    public static IEnumerable<Link> Of(PatternFacts facts)
    {
        foreach (var link in facts.Links.Concat(facts.Videos))
        {
            yield return link;
        }

        foreach (var item in facts.Tools.Concat(facts.Notions))
        {
            if (item.Link is { } address)
            {
                yield return new Link(item.Text, address, item.Origin);
            }
        }
    }

    /// <summary>The addresses that stand in the text of the sections.</summary>
    public static IEnumerable<Link> InProse(Pattern pattern)
    {
        foreach (var prose in pattern.Sections.SelectMany(s => s.Blocks).OfType<ProseBlock>())
        {
            var text = prose.Markdown;
            for (var at = 0; (at = text.IndexOf("http", at, StringComparison.Ordinal)) >= 0;)
            {
                var end = at;
                while (end < text.Length && !char.IsWhiteSpace(text[end]) && text[end] is not ('<' or '>' or '"' or ')' or ']' or '`'))
                {
                    end++;
                }

                var address = text[at..end].TrimEnd('.', ',', ';', ':', '!', '?', '*', '_');
                if (address.StartsWith("http://", StringComparison.Ordinal) || address.StartsWith("https://", StringComparison.Ordinal))
                {
                    yield return new Link(address, address, prose.Origin);
                }

                at = Math.Max(end, at + 4);
            }
        }
    }

    /// <summary>What is wrong with the form of an address, in words that follow it; null where a page can link to it. An address without a scheme is one beside the page.</summary>
    public static string? Problem(string address)
    {
        var said = address.Trim();
        if (said.Length == 0)
        {
            return "is empty";
        }

        if (said.Any(c => char.IsWhiteSpace(c) || char.IsControl(c)))
        {
            return said.Contains("://", StringComparison.Ordinal) ? "has a blank in it" : "is no address";
        }

        var colon = said.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0)
        {
            return said.StartsWith("www.", StringComparison.OrdinalIgnoreCase) ? "lacks `https://`" : said.Contains('@', StringComparison.Ordinal) ? "lacks `mailto:`" : said.AsSpan().IndexOfAny('.', '/', '#') < 0 ? "is no address" : null;
        }

        switch (said[..colon].ToLowerInvariant())
        {
            case "http" or "https":
                return Uri.TryCreate(said, UriKind.Absolute, out var uri) && IsHost(uri) ? null : "has no host that could be reached";
            case "mailto":
                return IsMail(said[(colon + 1)..]) ? null : "is no mail address";
            default:
                return "is no address of the web or of mail";
        }
    }

    /// <summary>The address as it is asked for over the network, without its mark; null where it is none of the web.</summary>
    public static Uri? OfWeb(string address) =>
        Problem(address) is null && Uri.TryCreate(address.Trim(), UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https" ? new Uri(uri.GetComponents(UriComponents.HttpRequestUrl, UriFormat.UriEscaped)) : null;

    private static bool IsHost(Uri uri) =>
        uri.Host.Length > 0 && uri.UserInfo.Length == 0 && (IPAddress.TryParse(uri.Host.Trim('[', ']'), out _) || uri.Host == "localhost" || (uri.Host.Contains('.', StringComparison.Ordinal) && !uri.Host.EndsWith('.') && !uri.Host.Contains("..", StringComparison.Ordinal)));

    private static bool IsMail(string said)
    {
        var mail = said.Split('?')[0];
        var at = mail.IndexOf('@', StringComparison.Ordinal);
        return at > 0 && mail.LastIndexOf('.') > at + 1 && mail[^1] != '.' && mail.IndexOf('@', at + 1) < 0;
    }
}
