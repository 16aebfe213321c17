using System.Buffers;
using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Finds out which yarn each stitch of a row in several colours is worked with: "k2 MC", "with CC, k3", "K1A, k4B". The letters are those of the header's yarns.</summary>
internal sealed class StepColours
{
    private const int MostTail = 24;

    private static readonly SearchValues<char> Stops = SearchValues.Create(",;.)]*");

    private readonly SourceText _source;
    private readonly string[] _labels;
    private string? _inHand;

    private StepColours(SourceText source, string[] labels) => (_source, _labels) = (source, labels);

    /// <summary>The steps with their colours; as they are where the header names no two yarns by letters.</summary>
    public static ImmutableArray<Step> Mark(ImmutableArray<Step> steps, RowContext context)
    {
        if (context.Facts.Craft != Stitches.Craft.Knitting || context.Facts.Yarns.Length < 2 || steps.IsEmpty)
        {
            return steps;
        }

        string[] labels = [.. context.Facts.Yarns.Select(y => y.Label).OfType<string>().Where(l => l.Length > 0)];
        if (labels.Length < 2)
        {
            return steps;
        }

        var colours = new StepColours(context.Source, labels);
        var end = Math.Max(context.RowEnd, steps[^1].Origin.End);
        return colours.In(steps, steps[0].Origin.Start, end);
    }

    private ImmutableArray<Step> In(ImmutableArray<Step> steps, int from, int to)
    {
        var marked = ImmutableArray.CreateBuilder<Step>(steps.Length);
        for (var i = 0; i < steps.Length; i++)
        {
            var step = steps[i];
            var next = i + 1 < steps.Length ? Math.Max(steps[i + 1].Origin.Start, step.Origin.End) : Math.Max(to, step.Origin.End);
            _inHand = Label(from, step.Origin.Start) ?? _inHand;
            marked.Add(One(step, next));
            from = step.Origin.End;
        }

        return marked.MoveToImmutable();
    }

    private Step One(Step step, int next)
    {
        switch (step)
        {
            case RemarkStep:
                _inHand = Label(step.Origin.Start, step.Origin.End) ?? _inHand;
                return step;
            case GroupStep group:
                return group with { Body = In(group.Body, group.Origin.Start, group.Body.IsEmpty ? group.Origin.Start : group.Body[^1].Origin.End) };
            case RepeatStep repeat:
                var body = In(repeat.Body, repeat.Origin.Start, repeat.Body.IsEmpty ? repeat.Origin.Start : repeat.Body[^1].Origin.End + 1);
                return repeat with { Body = body, Ending = repeat.Ending.IsEmpty ? repeat.Ending : In(repeat.Ending, repeat.Ending[0].Origin.Start, repeat.Ending[^1].Origin.End) };
            case OperationStep or RunStep or IncreaseStep or InOneStitchStep:
                _inHand = Label(step.Origin.Start, step.Origin.End + Tail(step.Origin.End, next)) ?? _inHand;
                return _inHand is null ? step : step with { Colour = _inHand };
            default:
                return step;
        }
    }

    /// <summary>How far the words that belong to a stitch go on behind it: to the next comma or bracket.</summary>
    private int Tail(int from, int to)
    {
        var rest = _source.Slice(TextSpan.FromBounds(from, Math.Clamp(to, from, Math.Min(from + MostTail, _source.Text.Length))));
        var stop = rest.IndexOfAny(Stops);
        return stop < 0 ? rest.Length : stop;
    }

    /// <summary>The last yarn named in a stretch; null for none.</summary>
    private string? Label(int from, int to)
    {
        if (to <= from || to > _source.Text.Length)
        {
            return null;
        }

        var text = _source.Slice(TextSpan.FromBounds(from, to));
        var (found, at) = ((string?)null, -1);
        foreach (var label in _labels)
        {
            for (var i = text.LastIndexOf(label, StringComparison.Ordinal); i >= 0; i = i == 0 ? -1 : text[..i].LastIndexOf(label, StringComparison.Ordinal))
            {
                var isWord = (i == 0 || !char.IsLetter(text[i - 1])) && (i + label.Length == text.Length || !char.IsLetterOrDigit(text[i + label.Length]));
                if (isWord && i > at)
                {
                    (found, at) = (label, i);
                }

                if (isWord)
                {
                    break;
                }
            }
        }

        return found;
    }
}
