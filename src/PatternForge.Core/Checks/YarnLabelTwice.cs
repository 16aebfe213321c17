using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Finds two yarns that go by the same letters.</summary>
internal sealed class YarnLabelTwice : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF706", "yarn-label-twice", Area.Yarn, Severity.Error,
        "Two yarns have the same label.",
        "\"With MC\" must mean one yarn. Where two go by the same letters, a maker takes the wrong colour.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                label: MC
              - name: Quayside Cotton
                ^^^^^^^^^^^^^^^^^^^^^
                label: MC
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                label: MC
              - name: Quayside Cotton
                label: CC
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        var first = new Dictionary<string, Yarn>(StringComparer.OrdinalIgnoreCase);
        foreach (var yarn in context.Facts.Yarns)
        {
            if (yarn.Label is { } label && !first.TryAdd(label, yarn))
            {
                context.Bag.Add(new Finding(Rule, context.Source, yarn.Origin, $"the label {label} stands for two yarns")
                {
                    Labels = [new Label(first[label].Origin, "the first one")],
                    Help = "give each yarn letters of its own",
                });
            }
        }
    }
}
