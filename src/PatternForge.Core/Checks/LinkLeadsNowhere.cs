using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Finds addresses that lead nowhere by their form.</summary>
internal sealed class LinkLeadsNowhere : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF901", "link-leads-nowhere", Area.Assets, Severity.Warning,
        "An address of the header cannot be followed.",
        "A page links to the web (http and https) and to mail (mailto), and to nothing that would run in the reader's browser. An address of another kind, or without a host, is printed as words alone. The form is that of RFC 3986.")
    {
        Bad = """
            ---
            title: Harbour hat
            links:
              - How to block: htps://example.com/blocking
                ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            links:
              - How to block: https://example.com/blocking
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        foreach (var link in WebLinks.Of(context.Facts))
        {
            if (WebLinks.Problem(link.Address) is { } problem)
            {
                context.Bag.Add(Rule, link.Origin, $"`{(link.Address.Length > 80 ? link.Address[..80] + "…" : link.Address)}` {problem}", "write it as `https://example.com/page` or `mailto:name@example.com`");
            }
        }
    }
}
