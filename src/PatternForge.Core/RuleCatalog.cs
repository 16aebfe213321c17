using System.Collections.Immutable;
using PatternForge.Core.Binding;
using PatternForge.Core.Charts;
using PatternForge.Core.Checks;
using PatternForge.Core.Drafts;
using PatternForge.Core.Editions;
using PatternForge.Core.Findings;
using PatternForge.Core.Planning;
using PatternForge.Core.Shapes;
using PatternForge.Core.Syntax;
using PatternForge.Core.Trials;
using PatternForge.Core.Work;

namespace PatternForge.Core;

/// <summary>Every rule there is, for <c>explain</c>, the lists of the documents and the tests.</summary>
public static class RuleCatalog
{
    /// <summary>All rules by code.</summary>
    public static ImmutableArray<Rule> All { get; } =
    [
        .. SyntaxRules.All.Concat(FileRules.All).Concat(HeaderRules.All).Concat(NumberRules.All).Concat(HouseRules.All).Concat(DraftRules.All).Concat(BodyRules.All).Concat(RowSyntaxRules.All).Concat(RowRules.All).Concat(PlanRules.All).Concat(ChartRules.All)
            .Append(ChartComparison.Rule).Append(FloatCheck.Rule).Append(YarnShareCheck.Rule).Append(DrawingNotMade.Rule).Append(SchematicRequest.Rule).Append(SchematicDiffers.Rule).Concat(CrochetTermsRules.All).Concat(WorkRules.All).Concat(EditionRules.All).Concat(AnswerRules.All).Concat(CheckList.Rules)
            .OrderBy(r => r.Code, StringComparer.Ordinal),
    ];

    /// <summary>The rule of that code or name, ignoring case; null when there is none.</summary>
    public static Rule? Find(string code) => All.FirstOrDefault(r =>
        string.Equals(r.Code, code, StringComparison.OrdinalIgnoreCase) || string.Equals(r.Name, code, StringComparison.OrdinalIgnoreCase));
}
