using System.Buffers.Binary;
using System.Numerics;
using System.Text;

namespace PatternForge.Rendering.Templates;

/// <summary>
/// The script of a page: its text as it stands between its tags, and the hash by which the page's Content-Security-Policy lets it and nothing else run. SHA-256 (FIPS
/// 180-4) is worked out here, since the runtime's own loads a library of the system that not every one has, and takes longer to begin than a page to make.
/// </summary>
internal static class ScriptText
{
    // The first 32 bits behind the point of the cube roots of the first 64 primes, and of the square roots of the first eight.
    private static ReadOnlySpan<uint> Constants =>
    [
        0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
        0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
        0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
        0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
        0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
        0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
        0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
        0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
    ];

    private static ReadOnlySpan<uint> Start => [0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19];

    /// <summary>A script as it stands in the page: without blank lines, for these would be taken out later, in a section that XML does not look into, and with nothing that could end its element.</summary>
    public static string Of(string script)
    {
        var text = new StringBuilder(script.Length + 32).Append("//<![CDATA[\n");
        foreach (var line in script.ReplaceLineEndings("\n").Replace("</script", "<\\/script", StringComparison.OrdinalIgnoreCase).Replace("]]>", "]]\\u003e", StringComparison.Ordinal).Split('\n'))
        {
            if (!string.IsNullOrWhiteSpace(line))
            {
                text.Append(Escaping.Clean(line)).Append('\n');
            }
        }

        return text.Append("//]]>").ToString();
    }

    /// <summary>The hash of such a text as a policy names it: <c>sha256-…</c>.</summary>
    public static string Hash(string text) => "sha256-" + Convert.ToBase64String(Sha256(Encoding.UTF8.GetBytes(text)));

    /// <summary>The digest of some bytes.</summary>
    public static byte[] Sha256(byte[] bytes)
    {
        var padded = new byte[(bytes.Length + 9 + 63) / 64 * 64];
        bytes.CopyTo(padded, 0);
        padded[bytes.Length] = 0x80;
        BinaryPrimitives.WriteUInt64BigEndian(padded.AsSpan(padded.Length - 8), (ulong)bytes.Length * 8);
        uint[] hash = Start.ToArray();
        var words = new uint[64];
        for (var at = 0; at < padded.Length; at += 64)
        {
            for (var i = 0; i < 64; i++)
            {
                words[i] = i < 16 ? BinaryPrimitives.ReadUInt32BigEndian(padded.AsSpan(at + (4 * i)))
                    : words[i - 16] + Mixed(words[i - 15], 7, 18, 3) + words[i - 7] + Mixed(words[i - 2], 17, 19, 10);
            }

            Round(hash, words);
        }

        var digest = new byte[32];
        for (var i = 0; i < 8; i++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(digest.AsSpan(4 * i), hash[i]);
        }

        return digest;
    }

    private static void Round(uint[] hash, uint[] words)
    {
        var (a, b, c, d, e, f, g, h) = (hash[0], hash[1], hash[2], hash[3], hash[4], hash[5], hash[6], hash[7]);
        for (var i = 0; i < 64; i++)
        {
            var one = h + (Turned(e, 6) ^ Turned(e, 11) ^ Turned(e, 25)) + ((e & f) ^ (~e & g)) + Constants[i] + words[i];
            var two = (Turned(a, 2) ^ Turned(a, 13) ^ Turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
            (h, g, f, e, d, c, b, a) = (g, f, e, d + one, c, b, a, one + two);
        }

        uint[] made = [a, b, c, d, e, f, g, h];
        for (var i = 0; i < 8; i++)
        {
            hash[i] += made[i];
        }
    }

    private static uint Mixed(uint word, int first, int second, int shift) => Turned(word, first) ^ Turned(word, second) ^ (word >> shift);

    private static uint Turned(uint word, int by) => BitOperations.RotateRight(word, by);
}
