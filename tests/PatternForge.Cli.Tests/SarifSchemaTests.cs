using NJsonSchema;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Text;

namespace PatternForge.Cli.Tests;

/// <summary>
/// Reports against the schema of the Static Analysis Results Interchange Format 2.1.0 (OASIS Standard, 2020): the whole schema, as it was published for
/// the standard's last draft (rtm.5), stands beside this file.
/// </summary>
public class SarifSchemaTests
{
    private static async Task<JsonSchema> Schema()
    {
        await using var stream = typeof(SarifSchemaTests).Assembly.GetManifestResourceStream("sarif-schema-2.1.0.json")!;
        using var reader = new StreamReader(stream);
        return await JsonSchema.FromJsonAsync(await reader.ReadToEndAsync());
    }

    [Fact]
    public async Task The_report_of_every_faulty_example_is_valid()
    {
        var schema = await Schema();
        using var folder = new TemporaryFolder();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Repository.Root, "examples", "faulty"), "*.pattern.md"))
        {
            File.Copy(file, folder.At(Path.GetFileName(file)));
        }

        folder.Write("patternforge.yaml", "tolerances:\n  mesurement: 4%\n");
        var outcome = Outcome.Of(folder, "lint", ".", "--format", "sarif");
        Assert.Equal(1, outcome.Code);
        Assert.Contains("PF160", outcome.Out, StringComparison.Ordinal);
        Assert.Empty(schema.Validate(outcome.Out).Select(e => e.ToString()));
    }

    [Fact]
    public async Task Every_part_of_a_result_is_valid()
    {
        var source = new SourceText("a b.pattern.md", "Rnd 1: k. (9)");
        var finding = Samples.Finding(source, "9", "m \uD83E") with
        {
            Sizes = [1],
            Labels = [new(new(0, 3), "here")],
            Help = "h",
            Fix = new("Write `8`", [new(new(11, 1), "8")]),
            Accepted = "known",
        };
        var many = Enumerable.Range(0, 5001).Select(i => finding with { Message = $"m{i}" });
        var schema = await Schema();
        Assert.Empty(schema.Validate(SarifReport.Of([Samples.Report(source, finding)], "1.2.3", complete: true)).Select(e => e.ToString()));
        Assert.Empty(schema.Validate(SarifReport.Of([Samples.Report(source, [.. many])], "1.2.3", complete: false)).Select(e => e.ToString()));
    }

    [Fact]
    public async Task The_schema_notices_what_it_does_not_allow()
    {
        var schema = await Schema();
        Assert.NotEmpty(schema.Validate("""{"version":"2.1.0","runs":[{"tool":{"driver":{}}}]}"""));
        Assert.NotEmpty(schema.Validate("""{"version":"2.1.0","runs":[],"more":1}"""));
        Assert.NotEmpty(schema.Validate("""{"version":"2.1.0","runs":[{"tool":{"driver":{"name":"x"}},"results":[{"message":{"text":"x"},"level":"grave"}]}]}"""));
    }
}
