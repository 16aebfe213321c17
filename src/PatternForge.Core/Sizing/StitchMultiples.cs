using System.Collections.Immutable;
using PatternForge.Core.Binding;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Sizing;

/// <summary>The stitch multiple that each section of a source keeps: of its repeats and of the stitch patterns that it names.</summary>
internal sealed class StitchMultiples
{
    private const int Largest = 200;

    private readonly SourceText _text;
    private readonly (int Start, int Multiple)[] _sections;
    private readonly ImmutableArray<TextSpan> _called;

    private StitchMultiples(SourceText text, (int Start, int Multiple)[] sections, ImmutableArray<TextSpan> called) => (_text, _sections, _called) = (text, sections, called);

    /// <summary>Reads the rows of a source, its plans not written out.</summary>
    /// <param name="text">The source as it is read.</param>
    /// <param name="facts">Its header.</param>
    /// <param name="called">The places that call a number of the header by its name.</param>
    /// <param name="options">Limits.</param>
    /// <param name="cancel">Stops the work early.</param>
    public static StitchMultiples Of(SourceText text, PatternFacts facts, IEnumerable<TextSpan> called, CompileOptions options, CancellationToken cancel)
    {
        var bag = new FindingBag(text);
        var body = BodyBinder.Bind(BodyParser.Parse(text, FileSplitter.Split(text, bag).Body, bag), facts, text, bag, options, cancel);
        int[] starts = [.. body.Sections.Select(s => s.Origin.Start).Order()];
        var multiples = new long[starts.Length];
        foreach (var line in body.Lines)
        {
            var section = Array.FindLastIndex(starts, start => start <= line.Origin.Start);
            foreach (var width in section < 0 ? [] : line.Rows.SelectMany(r => Widths(r.Steps)).Where(w => w > 1))
            {
                var known = Math.Max(1, multiples[section]);
                multiples[section] = known > Largest ? known : known / Divisor(known, width) * width;
            }
        }

        return new(text, [.. starts.Select((start, i) => (start, (int)multiples[i]))], [.. called]);
    }

    /// <summary>The multiple that the values of a list keep to, edge stitches beside it; 1 for none.</summary>
    public int For(SizeList list)
    {
        var places = list.Kind == SizeListKind.Body && IsStitches(list.Span) ? [list.Span]
            : list.Kind == SizeListKind.Header && list.Path.StartsWith("numbers.", StringComparison.Ordinal) && list.Measure.Length == 0
                ? _called.Where(c => string.Equals(_text.ToString(c).Trim('{', '}'), list.Path["numbers.".Length..], StringComparison.OrdinalIgnoreCase) && IsStitches(c)).ToArray()
            : [];
        var known = list.Values.Where(v => v.Number is not null).Select(v => v.Number!.Value).ToArray();
        var multiple = 1;
        foreach (var place in places)
        {
            var own = _sections.LastOrDefault(s => s.Start <= place.Start).Multiple;
            if (own is > 1 and <= Largest && own > multiple && known.All(k => k >= own && (k - known[0]) % own == 0))
            {
                multiple = own;
            }
        }

        return multiple;
    }

    private bool IsStitches(TextSpan span)
    {
        var behind = _text.Text.AsSpan(span.End).TrimStart(' ');
        return behind.StartsWith("st") && (behind.Length == 2 || !char.IsLetter(behind[2]) || behind.StartsWith("sts") || behind.StartsWith("stitch"));
    }

    private static IEnumerable<int> Widths(ImmutableArray<Step> steps)
    {
        foreach (var step in steps)
        {
            if (step is RepeatStep { To: not null } repeat && Width(repeat.Body) is { } width)
            {
                yield return width;
            }
            else if (step is PatternRowStep { Pattern.Multiple: > 1 } pattern)
            {
                yield return pattern.Pattern.Multiple;
            }
        }
    }

    // Null where the sizes differ, or a step's stitches are not told.
    private static int? Width(ImmutableArray<Step> steps)
    {
        var width = 0L;
        foreach (var step in steps)
        {
            long? own = step switch
            {
                OperationStep operation => operation.Times is null ? operation.Operation.Takes : operation.Times.Values.IsShared ? operation.Operation.Takes * (long?)operation.Times[0] : null,
                GroupStep { Times.Values.IsShared: true } group => Width(group.Body) * (long?)group.Times![0],
                RemarkStep => 0,
                _ => null,
            };
            if (own is null || (width += own.Value) > Largest)
            {
                return null;
            }
        }

        return (int)width;
    }

    private static long Divisor(long a, long b)
    {
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return a;
    }
}
