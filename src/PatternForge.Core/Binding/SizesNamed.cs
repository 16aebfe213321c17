using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Finds the header's sizes that a label names.</summary>
internal static class SizesNamed
{
    /// <summary>Indices of the sizes, in the header's order; empty when the label names none that the header has.</summary>
    public static ImmutableArray<int> Bind(LabelNode label, RowContext context)
    {
        var found = new SortedSet<int>();
        foreach (var name in label.Sizes)
        {
            var (first, last) = Range(name, context.Facts.Sizes);
            if (first < 0 || last < first)
            {
                var near = Suggest.Nearest(name, context.Facts.Sizes.Names);
                context.Bag.Add(RowRules.UnknownSize, label.SizesSpan, $"there is no size `{name.TrimStart('#')}` in the header", near.Count > 0 && near[0].Length > 0 ? $"did you mean `{near[0]}`?" : "name it as the header's `sizes` does");
                continue;
            }

            found.UnionWith(Enumerable.Range(first, last - first + 1));
        }

        return [.. found];
    }

    /// <summary>The first and last size that a name of a label means ("M", "#2" for "2nd size", "S–L"); -1 where the header has none such.</summary>
    internal static (int First, int Last) Range(string name, SizeSet sizes)
    {
        var one = Index(name, sizes);
        if (one >= 0)
        {
            return (one, one);
        }

        var dash = name.IndexOfAny(['–', '-']);
        return dash < 0 ? (-1, -1) : (Index(name[..dash], sizes), Index(name[(dash + 1)..], sizes));
    }

    private static int Index(string name, SizeSet sizes)
    {
        var index = sizes.IndexOf(name);
        return index < 0 && name.StartsWith('#') && int.TryParse(name.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out var nth) && nth <= sizes.Count ? nth - 1 : index;
    }
}
