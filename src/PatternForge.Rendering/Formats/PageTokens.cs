namespace PatternForge.Rendering.Formats;

/// <summary>A page taken apart into tags, words and blanks; nothing is lost.</summary>
internal sealed class PageTokens
{
    // What a tag may say otherwise in another form without being another tag: it is told beside it.
    private static readonly string[] Spoken = ["aria-label", "alt"];
    private static readonly string[] Otherwise = [.. Spoken, "class"];

    private readonly TokenPool _pool;

    private PageTokens(List<string> all, List<int> lines, TokenPool pool) => (All, Lines, _pool) = ([.. all], [.. lines], pool);

    /// <summary>The tokens.</summary>
    public string[] All { get; }

    /// <summary>The tokens as they are compared: tags without their spoken words and classes.</summary>
    public string[] Keys => field ??= [.. All.Select(t => t[0] == '<' ? _pool.KeyOf(t, KeyOf) : t)];

    /// <summary>The token that each line begins with, and the number of all tokens last.</summary>
    public int[] Lines { get; }

    /// <summary>Takes a page apart.</summary>
    /// <param name="html">The page.</param>
    /// <param name="pool">Where the tokens are kept.</param>
    public static PageTokens Of(string html, TokenPool pool)
    {
        var (all, lines) = (new List<string>(html.Length / 6), new List<int> { 0 });
        var at = 0;
        while (at < html.Length)
        {
            var end = at + 1;
            if (html[at] == '<')
            {
                end = html.IndexOf('>', at) + 1;
                end = end == 0 ? html.Length : end;
                if (IsForProgram(html.AsSpan(at, end - at)) && html.IndexOf("</s", end, StringComparison.Ordinal) is > 0 and var close && close > end)
                {
                    all.Add(pool.Of(html.AsSpan(at, end - at)));
                    (at, end) = (end, close); // what is no text is one token, whatever signs it holds
                }
            }
            else if (html[at] == '\n')
            {
                all.Add("\n");
                lines.Add(all.Count);
                at++;
                continue;
            }
            else
            {
                var blank = html[at] == ' ';
                while (end < html.Length && html[end] is not ('<' or '\n') && html[end] == ' ' == blank)
                {
                    end++;
                }
            }

            all.Add(pool.Of(html.AsSpan(at, end - at)));
            at = end;
        }

        if (lines[^1] != all.Count)
        {
            lines.Add(all.Count);
        }

        return new(all, lines, pool);
    }

    private static bool IsForProgram(ReadOnlySpan<char> tag) => tag.StartsWith("<script") || tag.StartsWith("<style");

    /// <summary>The text of some tokens.</summary>
    public string Text(int start, int end) => string.Concat(All.AsSpan(start, end - start)!);

    /// <summary>+1 for a tag that opens an element, -1 for one that closes it, 0 for anything else.</summary>
    public static int Step(string token) =>
        token.Length < 3 || token[0] != '<' || token[1] is '!' or '?' || token[^2] == '/' ? 0 : token[1] == '/' ? -1 : 1;

    /// <summary>The name of a tag; empty for anything else.</summary>
    public static ReadOnlySpan<char> NameOf(string token)
    {
        if (token.Length < 3 || token[0] != '<')
        {
            return [];
        }

        var start = token[1] == '/' ? 2 : 1;
        var end = token.AsSpan(start).IndexOfAny(' ', '>', '/');
        return end < 0 ? token.AsSpan(start) : token.AsSpan(start, end);
    }

    /// <summary>The value of an attribute of a tag; null where it has none.</summary>
    public static string? Value(string tag, string name)
    {
        for (var at = tag.IndexOf(name, StringComparison.Ordinal); at > 0; at = tag.IndexOf(name, at + 1, StringComparison.Ordinal))
        {
            var value = at + name.Length + 2;
            if (tag[at - 1] == ' ' && tag.AsSpan(at + name.Length).StartsWith("=\"") && tag.IndexOf('"', value) is >= 0 and var end)
            {
                return tag[value..end];
            }
        }

        return null;
    }

    /// <summary>The spoken words of a tag, by attribute.</summary>
    public static IEnumerable<(string Name, string Value)> SpokenOf(string tag)
    {
        foreach (var name in Spoken)
        {
            if (Value(tag, name) is { } value)
            {
                yield return (name, value);
            }
        }
    }

    /// <summary>True for a tag that has spoken words.</summary>
    public static bool IsSpoken(string tag) => Array.Exists(Spoken, n => Value(tag, n) is not null);

    private static string KeyOf(string tag)
    {
        var key = tag;
        foreach (var name in Otherwise)
        {
            key = Value(key, name) is { } value ? key.Replace($" {name}=\"{value}\"", $" {name}", StringComparison.Ordinal) : key;
        }

        // Marks of sizes are told apart by their class.
        return key.StartsWith("<span", StringComparison.Ordinal) ? tag : key;
    }
}
