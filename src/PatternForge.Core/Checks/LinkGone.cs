using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Tells what became of the addresses that were asked for over the network; without that, nothing.</summary>
internal static class AskedLinks
{
    /// <summary>Tells each address that has come to a state.</summary>
    public static void Check(CheckContext context, Rule rule, LinkState state, string help)
    {
        if (context.Answers.Count == 0)
        {
            return;
        }

        foreach (var link in WebLinks.Of(context.Facts).Concat(WebLinks.InProse(context.Pattern)))
        {
            if (WebLinks.OfWeb(link.Address) is { } uri && context.Answers.TryGetValue(uri.AbsoluteUri, out var answer) && answer.State == state)
            {
                context.Bag.Add(rule, link.Origin, $"`{(link.Address.Length > 80 ? link.Address[..80] + "…" : link.Address.Trim())}` {answer.Words}", help);
            }
        }
    }
}

/// <summary>Finds links that lead to nothing; only with `lint --online`.</summary>
internal sealed class LinkGone : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF902", "link-gone", Area.Assets, Severity.Warning,
        "An address on the web is not there any more.",
        "A pattern is sold for years, and pages come and go. With `lint --online` each address of the header and of the text is asked for once (HEAD, and GET where that is refused), few at a time and for a few seconds each. A page that is not found, a host that nobody knows and a door that nobody opens are told here. Nothing is asked for without `--online`.")
    {
        Bad = """
            ---
            title: Harbour hat
            links:
              - How to block: https://example.com/gone
                ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
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

    public override void Run(CheckContext context) => AskedLinks.Check(context, Rule, LinkState.Gone, "correct the address, or take it out");
}

/// <summary>Notes links of which nothing could be learned; only with `lint --online`.</summary>
internal sealed class LinkUnanswered : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF903", "link-unanswered", Area.Assets, Severity.Note,
        "An address on the web gave no answer that says whether it is there.",
        "With `lint --online` each address is asked for once. One that does not answer in time, or whose server is in trouble or turns programs away, may be well tomorrow: look at it yourself.")
    {
        Bad = """
            ---
            title: Harbour hat
            links:
              - How to block: https://example.com/slow
                ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
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

    public override void Run(CheckContext context) => AskedLinks.Check(context, Rule, LinkState.Unanswered, "look at it in a browser, or ask again later");
}
