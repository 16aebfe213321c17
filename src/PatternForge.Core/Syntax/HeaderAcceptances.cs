using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>A remark by which the designer accepts one finding where it stands: <c># accept PF604: reason</c>.</summary>
/// <param name="Code">The finding's code or name, as written.</param>
/// <param name="Reason">Why; empty when no reason is given.</param>
/// <param name="Span">The remark.</param>
/// <param name="Line">The line, from 1, on which it stands.</param>
/// <param name="IsAlone">True when the remark has the line to itself: it then speaks of the line below.</param>
public sealed record Acceptance(string Code, string Reason, TextSpan Span, int Line, bool IsAlone);

/// <summary>Finds the acceptances among the header's remarks.</summary>
public static class HeaderAcceptances
{
    /// <summary>Every acceptance of the header, in order. Text in quotes is no remark.</summary>
    public static ImmutableArray<Acceptance> Find(SourceText source, TextSpan header)
    {
        if (source.Slice(header).IndexOf('#') < 0)
        {
            return [];
        }

        var found = ImmutableArray.CreateBuilder<Acceptance>();
        foreach (var remark in HeaderScan.Of(source, header, new FindingBag(source)).Remarks)
        {
            var said = source.Slice(remark).TrimStart('#').Trim();
            if (!said.StartsWith("accept", StringComparison.OrdinalIgnoreCase) || said.Length < 7 || !char.IsWhiteSpace(said[6]))
            {
                continue;
            }

            said = said[6..].TrimStart();
            var end = said.IndexOfAny(':', ' ');
            var code = end < 0 ? said : said[..end];
            var reason = end < 0 ? "" : said[end..].TrimStart(" :").ToString();
            var line = source.Lines.PositionOf(remark.Start).Line;
            var before = source.Slice(TextSpan.FromBounds(source.Lines.StartOf(line), remark.Start));
            found.Add(new Acceptance(code.ToString(), reason, FileSplitter.Trimmed(source.Text, remark), line, before.IsWhiteSpace()));
        }

        return found.ToImmutable();
    }
}
