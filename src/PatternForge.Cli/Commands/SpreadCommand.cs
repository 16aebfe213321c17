using System.CommandLine;
using System.Globalization;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Findings;
using PatternForge.Core.Plans;

namespace PatternForge.Cli.Commands;

/// <summary><c>spread STITCHES</c>: increases, decreases, markers, buttonholes or picked-up stitches spread evenly over a row or an edge.</summary>
internal static class SpreadCommand
{
    private static readonly string[] Forms = ["text", "json"];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var stitches = new Argument<string[]>("STITCHES") { Description = "Stitches of the row; with --pick-up rows of the edge", Arity = ArgumentArity.ZeroOrMore };
        var increase = new Option<string>("--increase") { Description = "So many increases", HelpName = "N" };
        var decrease = new Option<string>("--decrease") { Description = "So many decreases", HelpName = "N" };
        var markers = new Option<string>("--markers") { Description = "Markers that part the row in so many parts", HelpName = "N" };
        var holes = new Option<string>("--buttonholes") { Description = "So many buttonholes", HelpName = "N" };
        var pickUp = new Option<string>("--pick-up") { Description = "So many stitches picked up along the rows", HelpName = "N" };
        var with = new Option<string>("--with") { Description = $"The increase or decrease: {string.Join(", ", Shaper.Knitted.Select(s => s.Text))}", HelpName = "kfb" };
        with.CompletionSources.Add([.. Shaper.Knitted.Select(s => s.Text)]);
        var crochet = new Option<string>("--crochet") { Description = "Crochet: the stitch, as your terms name it", HelpName = "sc" };
        var round = new Option<bool>("--round") { Description = "In the round; otherwise half a gap is left at each end" };
        var whole = new Option<bool>("--whole-gaps") { Description = "Flat, with a whole gap at each end" };
        var edge = new Option<string>("--edge") { Description = "Edge stitches at each end that take no part", HelpName = "N" };
        var hole = new Option<string>("--hole") { Description = "Stitches of a buttonhole (usually 2)", HelpName = "N" };
        var together = new Option<bool>("--together") { Description = "Gaps of one size stand together: fewer words, less even" };
        var format = Arguments.Form("How to tell it", Forms);
        var command = new Command("spread", "Spread increases, decreases, markers, buttonholes or picked-up stitches evenly.") { stitches, increase, decrease, markers, holes, pickUp, with, crochet, round, whole, edge, hole, together, format };
        command.SetAction(parsed =>
        {
            if (Arguments.Choice(parsed.GetValue(format) ?? Forms[0], "form", Forms, around, "spread") is not { } form)
            {
                return ExitCode.Usage;
            }

            var figures = new Figures("spread", around);
            if (parsed.GetValue(stitches) is not [var said])
            {
                return figures.Refuse("say over how many stitches: `patternforge spread 51 --increase 4`");
            }

            (string Name, Option<string> Option)[] ways = [("increase", increase), ("decrease", decrease), ("markers", markers), ("buttonholes", holes), ("pick-up", pickUp)];
            var chosen = ways.Where(w => parsed.GetValue(w.Option) is not null).ToArray();
            if (chosen.Length != 1)
            {
                return figures.Refuse("say one thing to spread: --increase, --decrease, --markers, --buttonholes or --pick-up with a number");
            }

            var over = figures.Whole(said, "count of stitches", 1);
            var times = figures.Whole(parsed.GetValue(chosen[0].Option), $"number for --{chosen[0].Name}", 1, chosen[0].Name == "pick-up" ? PlanLimits.MostStitches : PlanLimits.MostTimes);
            var edges = figures.Whole(parsed.GetValue(edge), "number of edge stitches") ?? 0;
            var size = figures.Whole(parsed.GetValue(hole), "number of stitches of a buttonhole", 1, 1000) ?? 2;
            if (figures.Failed || over is not { } count || times is not { } number)
            {
                return ExitCode.Usage;
            }

            var ends = parsed.GetValue(round) ? SpreadEnds.Round : parsed.GetValue(whole) ? SpreadEnds.Whole : SpreadEnds.Half;
            var answer = chosen[0].Name switch
            {
                "markers" => Parted(count, number, edges, figures),
                "buttonholes" => Holed(count, number, size, edges, figures),
                "pick-up" => PickedUp(count, number, figures),
                _ => Shaped(count, number, chosen[0].Name == "increase", parsed.GetValue(with), parsed.GetValue(crochet), ends, edges, parsed.GetValue(together), figures),
            };
            if (answer is null)
            {
                return ExitCode.Usage;
            }

            around.Write(answer.In(form));
            return ExitCode.Clean;
        });
        return command;
    }

    private static Answer? Shaped(int stitches, int times, bool more, string? with, string? crochet, SpreadEnds ends, int edge, bool together, Figures figures)
    {
        Shaper? shaper = null;
        if (with is not null)
        {
            shaper = Shaper.Knitted.FirstOrDefault(s => string.Equals(s.Text, with, StringComparison.OrdinalIgnoreCase));
            if (shaper is null || shaper.Change > 0 != more)
            {
                var fits = Shaper.Knitted.Where(s => s.Change > 0 == more).Select(s => s.Text).ToArray();
                var near = shaper is null ? Suggest.Nearest(with, fits, 1) : [];
                figures.Refuse($"`{with}` is not known as {(more ? "an increase" : "a decrease")}: {(near.Count > 0 ? $"did you mean `{near[0]}`?" : $"there are {string.Join(", ", fits)}")}");
                return null;
            }
        }

        if (crochet is not null && (crochet.Length is 0 or > 20 || !crochet.All(char.IsAsciiLetterOrDigit)))
        {
            figures.Refuse($"`{crochet}` is no name of a stitch: a short one is meant, such as sc or hdc");
            return null;
        }

        shaper ??= (crochet, more) switch
        {
            ({ } stitch, true) => Shaper.CrochetIncrease(stitch),
            ({ } stitch, false) => Shaper.CrochetDecrease(stitch),
            (null, true) => Shaper.M1,
            _ => Shaper.K2tog,
        };
        var planned = Spread.Plan(stitches, times, shaper, ends, edge, together);
        if (!planned.IsPlanned)
        {
            figures.Refuse(planned);
            return null;
        }

        var plan = planned.Plan;
        return new Answer("spread")
            .Number("stitches", stitches)
            .Number("result", plan.Result)
            .Numbers("gaps", plan.Gaps)
            .Numbers("after", plan.Places)
            .Text("words", plan.Words(), plan.Words())
            .Lines("lines", [plan.Line(ends == SpreadEnds.Round ? "Rnd 1" : "Row 1")]);
    }

    private static Answer? Parted(int stitches, int parts, int edge, Figures figures)
    {
        if (parts > stitches - (2 * edge))
        {
            figures.Refuse(string.Create(CultureInfo.InvariantCulture, $"{stitches - (2 * edge)} sts cannot be parted in {parts}"));
            return null;
        }

        var sizes = EvenShare.Parts(stitches - (2 * edge), parts);
        var words = $"{parts} parts of {string.Join(", ", sizes)} sts{(edge > 0 ? $", and {edge} at each edge" : "")}";
        return new Answer("spread")
            .Number("stitches", stitches)
            .Numbers("parts", sizes)
            .Text("words", words, words);
    }

    private static Answer? Holed(int stitches, int holes, int size, int edge, Figures figures)
    {
        var planned = Buttonholes.Plan(stitches, holes, size, edge);
        if (!planned.IsPlanned)
        {
            figures.Refuse(planned);
            return null;
        }

        var plan = planned.Plan;
        return new Answer("spread")
            .Number("stitches", stitches)
            .Number("holeStitches", size)
            .Numbers("spaces", plan.Spaces)
            .Text("words", plan.Words(), plan.Words())
            .Lines("lines", plan.Lines());
    }

    private static Answer? PickedUp(int rows, int stitches, Figures figures)
    {
        var planned = PickUp.Along(rows, stitches);
        if (!planned.IsPlanned)
        {
            figures.Refuse(planned);
            return null;
        }

        var plan = planned.Plan;
        return new Answer("spread")
            .Number("rows", rows)
            .Number("result", stitches)
            .Numbers("groups", plan.Groups)
            .Text("words", plan.Words(), plan.Words());
    }
}
