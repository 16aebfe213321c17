using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Picots that a header defines ("ch 3, sl st in 3rd ch from hook", "ch 3, sl st in the sc just made"): they use no stitch of the row below and add none.</summary>
internal static class Picots
{
    private static readonly string[] SlipStitch = ["sl st ", "ss ", "slip st ", "slip stitch "];
    private static readonly string[] ClosedOnItself = ["from hook", "from the hook", "just made", "just worked", "last", "first ch", "1st ch", "base"];

    /// <summary>The chains and the slip stitch that closes them; null when the definition is of another kind.</summary>
    public static ImmutableArray<Step>? Read(StitchDefinition definition, RowContext context, CompileOptions options)
    {
        var how = definition.How;
        var stop = how.AsSpan().IndexOfAny(',', ';');
        var rest = stop < 0 ? "" : how[(stop + 1)..].Trim();
        if (!SlipStitch.Any(s => rest.StartsWith(s, StringComparison.OrdinalIgnoreCase)) || rest.AsSpan().ContainsAny(',', ';')
            || !(definition.Name.Contains("picot", StringComparison.OrdinalIgnoreCase) || ClosedOnItself.Any(w => rest.Contains(w, StringComparison.OrdinalIgnoreCase))))
        {
            return null;
        }

        var bag = new FindingBag(context.Source);
        var span = new TextSpan(0, stop);
        if (RowBinder.Bind(RowParser.ParseSteps(context.Source, span, bag, options.MaxDepth), context).Steps is not [ChainStep chains] || context.Book.Find("sl st") is not { } slip)
        {
            return null;
        }

        return [chains, new CrochetStep(span, slip, null, new Place(PlaceKind.ChainFromHook, new Thing(ThingKind.Chain), span) { Count = chains.Chains })];
    }
}
