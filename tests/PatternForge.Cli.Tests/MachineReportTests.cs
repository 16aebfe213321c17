using System.Text.Json;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Cli.Tests;

public class MachineReportTests
{
    private static readonly SourceText Source = new("designs/my hat.pattern.md", "---\ntitle: x\n---\n\nRnd 3: *k2tog; rep. (9 sts)\nRnd 4: k.\n");

    private static Finding Full => Samples.Finding(Source, "9 sts", "Rnd 3 makes 8, not 9, 100% sure: \"look\"") with
    {
        Sizes = [1],
        Help = "check the 9",
        Labels = [new(Samples.SpanOf(Source, "*k2tog; rep"), "makes 8")],
        Fix = new("Write 8", [new(Samples.SpanOf(Source, "9"), "8")]),
    };

    [Fact]
    public void Json_has_the_promised_keys_in_their_order()
    {
        var root = JsonDocument.Parse(JsonReport.Of([Samples.Report(Source, Full)])).RootElement;
        Assert.Equal(["version", "files", "summary"], Keys(root));
        Assert.Equal(1, root.GetProperty("version").GetInt32());
        var file = root.GetProperty("files")[0];
        Assert.Equal(["path", "title", "sizes", "coverage", "findings", "editions"], Keys(file));
        Assert.Equal(["instructions", "checked", "trusted", "unread"], Keys(file.GetProperty("coverage")));
        var finding = file.GetProperty("findings")[0];
        Assert.Equal(
            ["code", "name", "area", "severity", "line", "column", "endLine", "endColumn", "sizes", "message", "help", "fix", "accepted", "reckoning", "edition"],
            Keys(finding));
        Assert.Equal(["title", "edits"], Keys(finding.GetProperty("fix")));
        Assert.Equal(["line", "column", "endLine", "endColumn", "newText"], Keys(finding.GetProperty("fix").GetProperty("edits")[0]));
        Assert.Equal(["errors", "warnings", "notes"], Keys(root.GetProperty("summary")));
    }

    [Fact]
    public void Json_gives_places_from_one_with_the_end_exclusive_and_sizes_by_name()
    {
        Assert.Equal(
            """{"version":1,"files":[{"path":"designs/my hat.pattern.md","title":"Harbour Hat","sizes":["S","M","L"],"coverage":{"instructions":64,"checked":61,"trusted":2,"unread":1},"findings":[{"code":"PF301","name":"stated-count-differs","area":"counts","severity":"error","line":5,"column":22,"endLine":5,"endColumn":27,"sizes":["M"],"message":"Rnd 3 makes 8, not 9, 100% sure: \"look\"","help":"check the 9","fix":{"title":"Write 8","edits":[{"line":5,"column":22,"endLine":5,"endColumn":23,"newText":"8"}]},"accepted":null,"reckoning":null,"edition":null}],"editions":[]}],"summary":{"errors":1,"warnings":0,"notes":0}}""" + "\n",
            JsonReport.Of([Samples.Report(Source, Full)]));
    }

    [Fact]
    public void Json_says_null_for_all_sizes_and_for_what_is_not_there()
    {
        var finding = JsonDocument.Parse(JsonReport.Of([Samples.Report(Source, Full with { Sizes = [0, 1, 2], Help = null, Fix = null, Accepted = "so it is" })])).RootElement
            .GetProperty("files")[0].GetProperty("findings")[0];
        Assert.Equal(JsonValueKind.Null, finding.GetProperty("sizes").ValueKind);
        Assert.Equal(JsonValueKind.Null, finding.GetProperty("help").ValueKind);
        Assert.Equal(JsonValueKind.Null, finding.GetProperty("fix").ValueKind);
        Assert.Equal("so it is", finding.GetProperty("accepted").GetString());
    }

    [Fact]
    public void Json_takes_half_a_surrogate_pair() =>
        Assert.Contains("k2 \uFFFD", JsonReport.Of([Samples.Report(Source, Full with { Message = "k2 \uD83E" })]), StringComparison.Ordinal);

    [Fact]
    public void Every_area_has_its_word() =>
        Assert.Equal(
            ["source", "notation", "counts", "terms", "abbreviations", "gauge", "yarn", "completeness", "assets"],
            Enum.GetValues<Area>().Order().Select(Words.Of));

    [Fact]
    public void GitHub_annotations_are_escaped()
    {
        var report = Samples.Report(new SourceText("a,b:c%.pattern.md", Source.Text), Full with { Help = "one\r\ntwo" });
        Assert.Equal(
            "::error file=a%2Cb%3Ac%25.pattern.md,line=5,endLine=5,col=22,endColumn=26,title=PF301 stated-count-differs::"
            + "Rnd 3 makes 8, not 9, 100%25 sure: \"look\" (sizes: M)%0Aone%0D%0Atwo\n",
            GitHubReport.Of([report]));
    }

    [Fact]
    public void GitHub_gets_the_ten_weightiest_and_a_line_on_the_rest()
    {
        Finding Of(Severity severity, int i) => Samples.Finding(Source, "9", $"number {i}", severity);
        var findings = Enumerable.Range(0, 8).Select(i => Of(Severity.Note, i))
            .Concat(Enumerable.Range(0, 4).Select(i => Of(Severity.Warning, i)))
            .Concat(Enumerable.Range(0, 3).Select(i => Of(Severity.Error, i)))
            .Append(Of(Severity.Error, 99) with { Accepted = "known" });
        var lines = GitHubReport.Of([Samples.Report(Source, [.. findings])]).TrimEnd('\n').Split('\n');
        Assert.Equal(11, lines.Length);
        Assert.All(lines[..3], l => Assert.StartsWith("::error ", l, StringComparison.Ordinal));
        Assert.All(lines[3..7], l => Assert.StartsWith("::warning ", l, StringComparison.Ordinal));
        Assert.All(lines[7..10], l => Assert.StartsWith("::notice ", l, StringComparison.Ordinal));
        Assert.Equal("5 more not shown as annotations: 5 notes; `lint --format text` lists them", lines[10]);
    }

    [Fact]
    public void Sarif_has_the_tool_its_rules_and_a_result_with_its_place()
    {
        var root = JsonDocument.Parse(SarifReport.Of([Samples.Report(Source, Full with { Accepted = "known" })], "1.2.3", complete: true)).RootElement;
        Assert.Equal("2.1.0", root.GetProperty("version").GetString());
        var run = root.GetProperty("runs")[0];
        Assert.Equal("utf16CodeUnits", run.GetProperty("columnKind").GetString());
        Assert.True(run.GetProperty("invocations")[0].GetProperty("executionSuccessful").GetBoolean());
        var driver = run.GetProperty("tool").GetProperty("driver");
        Assert.Equal(("patternforge", "1.2.3"), (driver.GetProperty("name").GetString(), driver.GetProperty("version").GetString()));
        var rule = driver.GetProperty("rules")[0];
        Assert.Equal("PF301", rule.GetProperty("id").GetString());
        Assert.Equal("error", rule.GetProperty("defaultConfiguration").GetProperty("level").GetString());
        var result = run.GetProperty("results")[0];
        Assert.Equal(("PF301", 0, "error"), (result.GetProperty("ruleId").GetString(), result.GetProperty("ruleIndex").GetInt32(), result.GetProperty("level").GetString()));
        var place = result.GetProperty("locations")[0].GetProperty("physicalLocation");
        Assert.Equal("designs/my%20hat.pattern.md", place.GetProperty("artifactLocation").GetProperty("uri").GetString());
        Assert.Equal("""{"startLine":5,"startColumn":22,"endLine":5,"endColumn":27}""", place.GetProperty("region").GetRawText());
        Assert.Equal("makes 8", result.GetProperty("relatedLocations")[0].GetProperty("message").GetProperty("text").GetString());
        Assert.Equal("8", result.GetProperty("fixes")[0].GetProperty("artifactChanges")[0].GetProperty("replacements")[0].GetProperty("insertedContent").GetProperty("text").GetString());
        Assert.Equal("""[{"kind":"inSource","justification":"known"}]""", result.GetProperty("suppressions").GetRawText());
        Assert.Equal("""{"sizes":["M"]}""", result.GetProperty("properties").GetRawText());
    }

    [Fact]
    public void Sarif_leaves_out_what_code_hosts_do_not_take_and_says_so()
    {
        var many = Enumerable.Range(0, 5003).Select(i => Samples.Finding(Source, "9", $"m{i}", i == 5002 ? Severity.Error : Severity.Warning));
        var run = JsonDocument.Parse(SarifReport.Of([Samples.Report(Source, [.. many])], "1.2.3", complete: true)).RootElement.GetProperty("runs")[0];
        Assert.Equal(5000, run.GetProperty("results").GetArrayLength());
        Assert.Equal("m5002", run.GetProperty("results")[0].GetProperty("message").GetProperty("text").GetString());
        Assert.Equal(
            "3 more findings are not listed; the weightiest 5000 are",
            run.GetProperty("invocations")[0].GetProperty("toolExecutionNotifications")[0].GetProperty("message").GetProperty("text").GetString());
    }

    [Fact]
    public void Counts_json_has_the_promised_keys()
    {
        var table = new CountsTable("x.pattern.md", ["S", "M"],
        [
            new("Crown", [new("Rnd 3", 14, "k.", "checked", [3], [80, 88], [70, null], [], [70, 77], null)]),
        ]);
        Assert.Equal(
            """{"version":1,"path":"x.pattern.md","sizes":["S","M"],"pieces":[{"name":"Crown","rows":[{"label":"Rnd 3","line":14,"text":"k.","status":"checked","worked":[3],"before":[80,88],"after":[70,null],"kinds":null,"stated":[70,77],"reading":null}]}]}""" + "\n",
            CountsJson.Of(table));
    }

    [Fact]
    public void Counts_json_tells_kinds_one_object_a_size()
    {
        var kinds = System.Collections.Immutable.ImmutableSortedDictionary<string, int>.Empty.Add("dc", 24).Add("ch-2 sp", 4);
        var table = new CountsTable("x.pattern.md", [""], [new("", [new("Rnd 1", 2, "k.", "trusted", [1], [null], [24], [kinds], [], "the 2 chains do not count")])]);
        Assert.Contains(
            "\"kinds\":[{\"ch-2 sp\":4,\"dc\":24}],\"stated\":null,\"reading\":\"the 2 chains do not count\"", CountsJson.Of(table), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("plain", "plain")]
    [InlineData("k2, p2", "\"k2, p2\"")]
    [InlineData("say \"k\"", "\"say \"\"k\"\"\"")]
    [InlineData("two\nlines", "\"two\nlines\"")]
    [InlineData(" edge", "\" edge\"")]
    [InlineData("", "")]
    public void Csv_cells_are_quoted_where_they_must_be(string cell, string expected) => Assert.Equal(expected, CountsCsv.Quoted(cell));

    [Fact]
    public void Counts_csv_has_a_column_a_size_and_line_ends_of_the_standard()
    {
        var table = new CountsTable("x.pattern.md", ["S", "M, tall"],
        [
            new("Crown", [new("Rnd 3", 14, "k2, p2", "checked", [3], [80, 88], [70, null], [], [], null)]),
        ]);
        Assert.Equal(
            "piece,line,row,text,status,before S,after S,stated S,\"before M, tall\",\"after M, tall\",\"stated M, tall\",reading\r\n"
            + "Crown,14,Rnd 3,\"k2, p2\",checked,80,70,,88,,,\r\n",
            CountsCsv.Of(table));
    }

    [Fact]
    public void Counts_text_writes_the_sizes_as_the_trade_does()
    {
        var table = new CountsTable("x.pattern.md", ["S", "M", "L"],
        [
            new("Crown",
            [
                new("Rnd 3", 14, "*k8, k2tog; rep from * around", "checked", [3], [80, 90, null], [72, 81, null], [], [72, 81, null], null),
                new("Rnd 4", 15, "k", "trusted", [4], [72, 81, 81], [72, 72, 72], [], [], "3 more after the first"),
            ]),
        ]);
        Assert.Equal(
            """
            sizes S (M, L)

            Crown
            line  row    before       after       stated
            14    Rnd 3  80 (90, –)   72 (81, –)  72 (81, –)  *k8, k2tog; rep from * around
            15    Rnd 4  72 (81, 81)  72                      k
                  taken on trust: not checked
                  read as: 3 more after the first

            """.ReplaceLineEndings("\n"),
            CountsText.Of(table, 100, new Paint(false)));
    }

    private static string[] Keys(JsonElement element) => [.. element.EnumerateObject().Select(p => p.Name)];
}
