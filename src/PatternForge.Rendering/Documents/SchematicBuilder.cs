using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Shapes;
using PatternForge.Rendering.Drawings;

namespace PatternForge.Rendering.Documents;

/// <summary>Makes the schematics of a page: those that blocks ask for, and those that a garment gets by itself.</summary>
internal sealed class SchematicBuilder
{
    private readonly Compilation _compilation;
    private readonly Func<string, string> _id;

    /// <summary>Prepares for one pattern.</summary>
    /// <param name="compilation">The pattern.</param>
    /// <param name="id">Makes an identifier that nothing else on the page has.</param>
    public SchematicBuilder(Compilation compilation, Func<string, string> id) => (_compilation, _id) = (compilation, id);

    private PatternFacts Facts => _compilation.Pattern.Facts;

    /// <summary>The drawings that a block asks for; none where they cannot be drawn.</summary>
    public IEnumerable<Drawing> Asked(SchematicRequest request, Section section)
    {
        int? only = request.Size is { } size ? Facts.Sizes.IndexOf(size) : null;
        return only < 0 ? [] : request.Meant(_compilation.Outlines, section).Where(o => o.IsDrawn).Select(o => Draw(o, only));
    }

    /// <summary>One drawing a piece for what is fitted to a body, unless its header leaves them out.</summary>
    public IEnumerable<Drawing> ByItself() => SchematicRequest.ByItself(_compilation.Pattern) ? _compilation.Outlines.Where(o => o.IsDrawn).Select(o => Draw(o, null)) : [];

    private Drawing Draw(PieceOutline outline, int? only)
    {
        var sample = Facts.Sample?.Size is { } size ? Facts.Sizes.IndexOf(size) : -1;
        var id = _id($"Schematic {outline.Name}{(only is { } one ? $" {Facts.Sizes.Names[one]}" : "")}");
        return SchematicDrawing.Of(outline, id, Facts.Sizes, only, sample >= 0 ? sample : Facts.Sizes.Count / 2, Words, Over);
    }

    /// <summary>"45 (51, 55, 61, 65) cm; 17¾ (20, 21¾, 24, 25½) in": one number where all sizes have the same.</summary>
    private string Words(ImmutableArray<decimal> cm)
    {
        Quantity[] rounded = [.. cm.Select(v => new Quantity(Rounded(v), Unit.Centimetre))];
        return _compilation.Edition?.Units switch
        {
            UnitSystem.Metric => $"{In(rounded, Unit.Centimetre)} cm",
            UnitSystem.Imperial => $"{In(rounded, Unit.Inch)} in",
            _ => $"{In(rounded, Unit.Centimetre)} cm; {In(rounded, Unit.Inch)} in",
        };
    }

    // "to 4 inches in stockinette": the sign of inches before "in" is nothing to read.
    private string Over(Quantity width) => _compilation.Edition?.Units is { } units ? TradeSteps.In(units, width.Unit) is var unit && unit == Unit.Inch ? $"{Measures.Number(width, unit)} inches" : Measures.Text(width, unit) : width.ToString();

    private static string In(Quantity[] values, Unit unit)
    {
        string[] numbers = [.. values.Select(v => Measures.Number(v, unit))];
        return numbers.Distinct(StringComparer.Ordinal).Count() == 1 ? numbers[0] : Wording.TradeForm(numbers);
    }

    // Half centimetres, as the trade does (common practice); small things keep their millimetres.
    private static decimal Rounded(decimal cm) => cm < 3 ? Math.Round(cm, 1, MidpointRounding.AwayFromZero) : Math.Round(cm * 2, MidpointRounding.AwayFromZero) / 2;
}
