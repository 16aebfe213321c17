using CsCheck;

namespace PatternForge.Cli.Tests;

/// <summary>The commands about numbers without a pattern: <c>spread</c>, <c>plan</c>, <c>regauge</c>, <c>amount</c>, <c>tables</c>.</summary>
public class NumbersTests
{
    // Worked examples of the trade: 51 sts and 4 increases, 100 sts and 16 decreases, 90 sts in 4, 88 rows and 71 sts (common practice).
    [Theory]
    [InlineData("Row 1: K6, M1, (k13, M1) 3 times, k6. (55 sts)", "spread", "51", "--increase", "4")]
    [InlineData("Rnd 1: (K4, k2tog) 12 times, (k5, k2tog) 4 times. (84 sts)", "spread", "100", "--decrease", "16", "--round", "--together")]
    [InlineData("Rnd 1: (K7, kfb) 6 times. (54 sts)", "spread", "48", "--increase", "6", "--round", "--with", "KFB")]
    [InlineData("Rnd 1: (Sc in next 3 sts, 2 sc in next st) 6 times. (30 sts)", "spread", "24", "--increase", "6", "--round", "--crochet", "sc")]
    [InlineData("4 parts of 22, 23, 22, 23 sts", "spread", "90", "--markers", "4")]
    [InlineData("(pick up 4, skip 1) 17 times, pick up 3", "spread", "88", "--pick-up", "71")]
    [InlineData("7 holes of 4 sts over 100 sts: 3 before, 11 (6 times) between, 3 after", "spread", "100", "--buttonholes", "7", "--hole", "4", "--edge", "3")]
    [InlineData("Inc Row (RS): K1, M1L, k to last st, M1R, k1. (2 sts inc'd)", "plan", "38", "60", "--rows", "108")]
    [InlineData("in one line: Inc 1 st at each end of every 8th row once, then every 10th row 10 times.", "plan", "38", "60", "--length", "15.5in", "--gauge", "7 rows = 1 in")]
    [InlineData("Dec Rnd: (K to 3 sts before m, k2tog, k1, sm, k1, ssk) 4 times, k to end. (8 sts dec'd)", "plan", "80", "48", "--rows", "40", "--at", "markers", "--round", "--now")]
    [InlineData("  128   58.19  22.91   128     150.91  151", "regauge", "128", "--from", "5.5 sts = 1 in", "--to", "6.5 sts = 1 in", "--seam", "2")]
    [InlineData("  46in  116.84  46      195.5   184    184", "regauge", "46in", "--from", "4.25 sts per in", "--to", "4 sts per in")]
    [InlineData("6 balls", "amount", "--metres", "1150", "--ball-metres", "200")]
    [InlineData("1150 m, 500 g", "amount", "--metres", "1150", "--metres-per-100g", "230")]
    [InlineData("likely error: 10 % more or less (common practice (from memory))", "amount", "--area", "9900", "--swatch-area", "225", "--swatch-grams", "8")]
    [InlineData("lace: from 0.7 to 1 times stockinette (common practice (from memory))", "amount", "--area", "9900", "--weight", "dk", "--fabric", "lace")]
    [InlineData("Source: Craft Yarn Council, fit chart, as quoted in the trade. Neighbouring fits share their ends.", "tables", "ease")]
    public void A_number_is_answered(string line, params string[] arguments)
    {
        using var folder = new TemporaryFolder();
        var outcome = Outcome.Of(folder, arguments);
        Assert.Equal((0, ""), (outcome.Code, outcome.Error));
        Assert.Contains(line, outcome.Out.Split('\n').Select(l => l.StartsWith("    ", StringComparison.Ordinal) ? l[4..] : l));
        var json = Outcome.Of(folder, [.. arguments, "--format", "json"]);
        Assert.Equal((0, ""), (json.Code, json.Error));
        Assert.Equal((1, arguments[0]), (json.Json.GetProperty("version").GetInt32(), json.Json.GetProperty("command").GetString()));
    }

    [Theory]
    [InlineData("say over how many stitches: `patternforge spread 51 --increase 4`", "spread")]
    [InlineData("say one thing to spread: --increase, --decrease, --markers, --buttonholes or --pick-up with a number", "spread", "51")]
    [InlineData("say one thing to spread: --increase, --decrease, --markers, --buttonholes or --pick-up with a number", "spread", "51", "--increase", "4", "--markers", "4")]
    [InlineData("`many` is no count of stitches: a whole number from 1 to 100000 is meant", "spread", "many", "--increase", "4")]
    [InlineData("`kbf` is not known as an increase: did you mean `kfb`?", "spread", "51", "--increase", "4", "--with", "kbf")]
    [InlineData("`k2tog` is not known as an increase: there are M1, kfb, yo", "spread", "51", "--increase", "4", "--with", "k2tog")]
    [InlineData("30 times `k2tog` takes 60 sts; there are 51: at most 25 fit into one row; spread the rest over further rows", "spread", "51", "--decrease", "30")]
    [InlineData("71 sts cannot be picked up along 30 rows: from 1 st in all to 2 in each row", "spread", "30", "--pick-up", "71")]
    [InlineData("say the stitches before and after: `patternforge plan 38 60 --rows 108`", "plan", "38")]
    [InlineData("say over how many rows: --rows 108, or --length 38cm with --gauge \"22 sts and 30 rows = 10 cm\"", "plan", "38", "60")]
    [InlineData("from 151 to 132 sts are 19, which 2 at a time do not give: use 150 or 152 sts before, or 131 or 133 after", "plan", "151", "132", "--rows", "60")]
    [InlineData("11 shaping rows need 22 rows; there are 20: more rows, shaping on every row, or at least 3 sts at a time", "plan", "38", "60", "--rows", "20")]
    [InlineData("`wide` is no length: a length is meant, such as 43cm or 17in", "plan", "38", "60", "--length", "wide", "--gauge", "30 rows")]
    [InlineData("the gauge `22 sts` names no rows", "plan", "38", "60", "--length", "40cm", "--gauge", "22 sts")]
    [InlineData("`side` is not known as a place: there are ends, edge, markers, corners", "plan", "38", "60", "--rows", "108", "--at", "side")]
    [InlineData("say counts and both gauges: `patternforge regauge 128 --from \"5.5 sts = 1 in\" --to \"6.5 sts = 1 in\"`", "regauge", "128")]
    [InlineData("`loose` is no gauge: a gauge is meant, such as \"22 sts and 30 rows = 10 cm\"", "regauge", "128", "--from", "loose", "--to", "22 sts")]
    [InlineData("class 0 (lace) is open at one end, so that nothing can be reckoned from it: weigh a swatch", "amount", "--area", "9900", "--weight", "lace")]
    [InlineData("say which table: needles, hooks, yarn-weights, body-sizes, parts, ease", "tables")]
    [InlineData("`needels` is not known as a table: did you mean `needles`?", "tables", "needels")]
    public void What_cannot_be_answered_is_told_with_what_would_do(string sentence, params string[] arguments)
    {
        using var folder = new TemporaryFolder();
        var outcome = Outcome.Of(folder, arguments);
        Assert.Equal((2, ""), (outcome.Code, outcome.Out));
        Assert.Equal(sentence, outcome.Error.Split('\n')[0]);
    }

    [Theory]
    [InlineData("needles", "mm", "4")]
    [InlineData("hooks", "letter", "H")]
    [InlineData("yarn-weights", "name", "light")]
    [InlineData("body-sizes", "measure", "bust")]
    [InlineData("ease", "fit", "oversized")]
    public void A_table_has_its_rows_and_its_source(string table, string key, string value)
    {
        using var folder = new TemporaryFolder();
        var json = Outcome.Of(folder, "tables", table, "--format", "json").Json;
        Assert.Contains(json.EnumerateObject().Where(p => p.Value.ValueKind == System.Text.Json.JsonValueKind.Array).SelectMany(p => p.Value.EnumerateArray()), row => row.TryGetProperty(key, out var cell) && cell.GetString() == value);
        Assert.Contains(json.EnumerateObject(), p => p.Name.StartsWith("source", StringComparison.Ordinal));
        Assert.Contains("Source", Outcome.Of(folder, "tables", table).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_plan_for_programs_has_its_keys()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(
            """{"version":1,"command":"plan","from":20,"to":26,"rows":10,"times":3,"words":"every other row once, then every 4th row twice","shapedRows":[2,6,10],"counts":[22,24,26],"rowsAfter":0,"instruction":"Inc 1 st at each end of every other row once, then every 4th row twice.","lines":["Work 1 row even.","Inc Row (RS): K1, M1L, k to last st, M1R, k1. (2 sts inc'd)","Rep Inc Row every 4th row twice. (26 sts)"]}""" + "\n",
            Outcome.Of(folder, "plan", "20", "26", "--rows", "10", "--format", "json").Out);
    }

    // Whatever figures are said, there is an answer or a sentence, and never a fault.
    [Fact]
    public void Any_figures_are_answered()
    {
        using var folder = new TemporaryFolder();
        string[] figures = ["0", "1", "7", "99999", "100000", "999999999999", "0.0000001", "-3", "1e9", "", " ", "½", "40cm", "17 in", "6+1", "+", "22 sts", "22 sts and 30 rows = 10 cm", "0 sts"];
        string[] options = ["--increase", "--decrease", "--markers", "--buttonholes", "--pick-up", "--edge", "--hole", "--rows", "--length", "--gauge", "--at-a-time", "--plain", "--from", "--to", "--seam", "--multiple", "--metres", "--area", "--stitches", "--swatch-area", "--swatch-grams", "--margin", "--strands", "--ball-metres", "--metres-per-100g", "--weight"];
        string[] commands = ["spread", "plan", "regauge", "amount"];
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, figures.Length - 1].Array[1, 2], Gen.Select(Gen.Int[0, options.Length - 1], Gen.Int[0, figures.Length - 1]).Array[0, 5]).Sample(
            (command, counts, said) =>
            {
                string[] line = [commands[command], .. counts.Select(f => figures[f]), .. said.SelectMany(o => new[] { options[o.Item1], figures[o.Item2] })];
                var outcome = Outcome.Of(folder, line);
                Assert.True(outcome.Code is 0 or 2 && (outcome.Code == 0) == (outcome.Out.Length > 0), $"{string.Join(' ', line)}: {outcome.Code} {outcome.Error}");
            },
            iter: 3000);
    }
}
