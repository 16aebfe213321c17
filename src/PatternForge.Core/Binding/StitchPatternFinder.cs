using System.Buffers;
using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Finds the sections that are stitch patterns: those whose heading, or first words under it, state a multiple or a width.</summary>
internal static class StitchPatternFinder
{
    private const int MostFirstWords = 120;
    private const int LargestMultiple = 10_000;

    // One of these stands in every opening below.
    private static readonly SearchValues<string> s_signs = SearchValues.Create(["multiple of", "mult of", "number of", "panel of", "over"], StringComparison.OrdinalIgnoreCase);

    /// <summary>The stitch patterns of a body, in its order.</summary>
    public static ImmutableArray<StitchPattern> Find(ImmutableArray<SectionNode> sections, SourceText source)
    {
        var found = ImmutableArray.CreateBuilder<StitchPattern>();
        for (var i = 0; i < sections.Length; i++)
        {
            if (Of(sections[i], i + 1, source) is { Name.Length: > 1 } pattern && !found.Any(f => string.Equals(f.Name, pattern.Name, StringComparison.OrdinalIgnoreCase)))
            {
                found.Add(pattern);
            }
        }

        return found.ToImmutable();
    }

    private static StitchPattern? Of(SectionNode section, int number, SourceText source)
    {
        if (section.Heading.Length == 0)
        {
            return null;
        }

        var heading = section.Heading;
        if (Multiple(heading) is { } inHeading)
        {
            return new StitchPattern(NameIn(heading[..inHeading.At]), number, inHeading.Multiple, inHeading.Plus, section.Span) { Chains = inHeading.Chains };
        }

        // The multiple opens the text under the heading: "(multiple of 6 sts + 2)".
        foreach (var block in section.Blocks.Take(2))
        {
            var words = source.ToString(new TextSpan(block.Content.Start, Math.Min(block.Content.Length, MostFirstWords)));
            if (Multiple(words) is { } there && words[..there.At].AsSpan().Trim(" (*_[").Length == 0)
            {
                return new StitchPattern(NameIn(heading), number, there.Multiple, there.Plus, block.Content) { Chains = there.Chains };
            }
        }

        return null;
    }

    /// <summary>"Stitch pattern: Lace panel (" is the Lace panel.</summary>
    private static string NameIn(string words)
    {
        var colon = words.LastIndexOf(':');
        var name = colon >= 0 && colon + 2 < words.Length ? words[(colon + 1)..] : words;
        return name.Trim(' ', '(', '[', ',', ':', '-', '–', '—', '.', '*', '_');
    }

    /// <summary>The first multiple or width in words, and where its words begin; null for none.</summary>
    private static (int Multiple, int Plus, int Chains, int At)? Multiple(string words)
    {
        if (!words.AsSpan().ContainsAny(s_signs))
        {
            return null; // most texts name none
        }

        foreach (var opening in (ReadOnlySpan<string>)["worked over a multiple of", "over a multiple of", "any multiple of", "a multiple of", "multiple of", "mult of"])
        {
            var at = words.IndexOf(opening, StringComparison.OrdinalIgnoreCase);
            if (at < 0)
            {
                continue;
            }

            var reader = new Reader(words, at + opening.Length);
            if (reader.Number() is not (> 0 and <= LargestMultiple) || reader.Value is not { } multiple)
            {
                return null;
            }

            reader.Any("sts", "stitches", "st", "ch", "chs", "chains");
            var plus = 0;
            if (reader.Any("+", "plus", "and") && reader.Number() is <= LargestMultiple and { } more)
            {
                plus = more;
                reader.Any("sts", "stitches", "st", "ch", "chs", "more", "extra", "over", "edge");
            }

            return (multiple, plus, Chains(words, reader.At), at);
        }

        foreach (var (opening, multiple, plus) in (ReadOnlySpan<(string, int, int)>)[("any odd number of", 2, 1), ("any uneven number of", 2, 1), ("an odd number of", 2, 1), ("odd number of", 2, 1), ("an even number of", 2, 0), ("even number of", 2, 0), ("any number of", 1, 0)])
        {
            if (words.IndexOf(opening, StringComparison.OrdinalIgnoreCase) is >= 0 and var at)
            {
                return (multiple, plus, 0, at);
            }
        }

        foreach (var opening in (ReadOnlySpan<string>)["panel of", "worked over", "over"])
        {
            var at = words.IndexOf(opening, StringComparison.OrdinalIgnoreCase);
            if (at >= 0 && (at == 0 || !char.IsLetter(words[at - 1])))
            {
                var reader = new Reader(words, at + opening.Length);
                if (reader.Number() is > 0 and <= LargestMultiple and { } width && reader.Any("sts", "stitches"))
                {
                    return (0, width, 0, at);
                }
            }
        }

        return null;
    }

    /// <summary>"(add 2 for base chain)", "+ 2 for the foundation chain".</summary>
    private static int Chains(string words, int from)
    {
        var reader = new Reader(words, from);
        reader.Any("(", ",", ";");
        return reader.Any("add", "+", "plus") && reader.Number() is <= 20 and { } chains && words.AsSpan(reader.At).Contains("chain", StringComparison.OrdinalIgnoreCase) ? chains : 0;
    }

    /// <summary>Words and numbers one after the other.</summary>
    private sealed class Reader(string words, int at)
    {
        public int At { get; private set; } = at;

        public int? Value { get; private set; }

        public int? Number()
        {
            Blanks();
            var start = At;
            while (At < words.Length && char.IsAsciiDigit(words[At]) && At - start < 6)
            {
                At++;
            }

            return Value = At > start ? int.Parse(words.AsSpan(start, At - start), System.Globalization.CultureInfo.InvariantCulture) : null;
        }

        public bool Any(params ReadOnlySpan<string> those)
        {
            var any = false;
            for (var again = true; again;)
            {
                Blanks();
                again = false;
                foreach (var word in those)
                {
                    if (words.AsSpan(At).StartsWith(word, StringComparison.OrdinalIgnoreCase) && (!char.IsLetter(word[^1]) || At + word.Length == words.Length || !char.IsLetterOrDigit(words[At + word.Length])))
                    {
                        At += word.Length;
                        (any, again) = (true, true);
                        break;
                    }
                }
            }

            return any;
        }

        private void Blanks()
        {
            while (At < words.Length && char.IsWhiteSpace(words[At]))
            {
                At++;
            }
        }
    }
}
