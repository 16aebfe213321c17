using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>Finds the acceptances among the body's remarks: <c>&lt;!-- accept PF304: reason --&gt;</c>, on the line it speaks of or alone on the line above.</summary>
public static class BodyAcceptances
{
    /// <summary>Every acceptance of the body, in order.</summary>
    public static ImmutableArray<Acceptance> Find(SourceText source, TextSpan body)
    {
        var found = ImmutableArray.CreateBuilder<Acceptance>();
        var text = source.Text;
        var at = body.Start;
        while (at < body.End && text.IndexOf("<!--", at, body.End - at, StringComparison.Ordinal) is var open and >= 0)
        {
            var end = Remarks.EndOf(text, open, body.End);
            var said = text.AsSpan(open + 4, Math.Max(0, end - open - 7)).Trim();
            at = end;
            if (!said.StartsWith("accept ", StringComparison.OrdinalIgnoreCase))
            {
                continue;
            }

            said = said[7..].TrimStart();
            var stop = said.IndexOfAny(':', ' ');
            var line = source.Lines.PositionOf(open).Line;
            var lineSpan = source.Lines.SpanOf(line, text);
            var isAlone = text.AsSpan(lineSpan.Start, open - lineSpan.Start).Trim().IsEmpty && (end >= lineSpan.End || text.AsSpan(end, lineSpan.End - end).Trim().IsEmpty);
            found.Add(new Acceptance(stop < 0 ? said.ToString() : said[..stop].ToString(), stop < 0 ? "" : said[stop..].TrimStart(" :").ToString(), TextSpan.FromBounds(open, end), line, isAlone));
        }

        return found.ToImmutable();
    }
}
