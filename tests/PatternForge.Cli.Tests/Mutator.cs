using System.Text;

namespace PatternForge.Cli.Tests;

/// <summary>Damages texts as disks, editors, hurry and malice do. The same seed gives the same damage.</summary>
internal sealed class Mutator(IReadOnlyList<byte[]> texts, int seed)
{
    // Pieces that a reader of patterns stumbles over, if over anything.
    private static readonly byte[][] Pieces =
    [
        .. new[]
        {
            "---\n", "\n---\n", "\n## ", "*", "**", "; rep from * ", "rep from * to last 2 sts", "rep from * 999999999999 times", "(", ")", "[", "]", "{count}", "{", "}",
            "Row 1: ", "Rows 1-99999999: ", "Row 2 and all even rows: ", "Rep Rows 1-4 until piece measures 20 cm", "rep last 2 rows 99999999 times",
            "k2tog, ", "k99999999999999999999", "k-1", "k0", "CO 80 (88, 96) sts.", "CO 2147483647 sts", "BO all", "turn", "(80 sts)", "(80, 90, 100, 110, 120, 130 sts)", "80 (88)",
            "sizes: S (M, L)", "sizes: []", "title:", "gauge: 0 sts and 0 rows = 0 cm", "&a [*a]", "*a", "<<: *a", "? ", "| ", "!!binary ", "\t", "\0", "\r", "\r\n", "\u2028", "\uFEFF", "\uFFFD",
            "\u0301\u0301\u0301", "🧶", "½", "1/0", "<script>alert(1)</script>", "[x](javascript:alert(1))", "![](x)", "```chart\n", "```", "<!--", "-->", "{{ title }}", "%", "\\",
            new string('(', 300), new string('[', 300), new string('*', 300), new string('-', 300), new string(' ', 3000), string.Concat(Enumerable.Repeat("- ", 200)), string.Concat(Enumerable.Repeat("a: {", 200)),
        }.Select(Encoding.UTF8.GetBytes),
    ];

    private readonly Random _random = new(seed);

    /// <summary>One of the texts, damaged a little or much.</summary>
    public byte[] Next()
    {
        var text = Any().ToList();
        for (var i = _random.Next(1, 5); i > 0; i--)
        {
            Damage(text);
        }

        return [.. text];
    }

    private byte[] Any() => texts[_random.Next(texts.Count)];

    private void Damage(List<byte> text)
    {
        switch (_random.Next(8))
        {
            case 0 when text.Count > 0:
                for (var i = _random.Next(1, 9); i > 0; i--)
                {
                    text[_random.Next(text.Count)] ^= (byte)(1 << _random.Next(8));
                }

                break;
            case 1:
                var (from, length) = Slice(text.Count);
                text.RemoveRange(from, length);
                break;
            case 2:
                var (start, count) = Slice(text.Count);
                text.InsertRange(_random.Next(text.Count + 1), text.GetRange(start, Math.Min(count, 4000)));
                break;
            case 3:
                var other = Any();
                var (at, taken) = Slice(other.Length);
                text.InsertRange(_random.Next(text.Count + 1), other.AsSpan(at, taken).ToArray());
                break;
            case 4:
                var noise = new byte[_random.Next(1, 40)];
                _random.NextBytes(noise);
                text.InsertRange(_random.Next(text.Count + 1), noise);
                break;
            case 5:
                var cut = _random.Next(text.Count + 1);
                text.RemoveRange(cut, text.Count - cut);
                break;
            default:
                text.InsertRange(_random.Next(text.Count + 1), Pieces[_random.Next(Pieces.Length)]);
                break;
        }
    }

    private (int From, int Length) Slice(int length)
    {
        var from = _random.Next(length + 1);
        var most = Math.Min(length - from, _random.Next(4) == 0 ? length : 120);
        return (from, _random.Next(most + 1));
    }
}
