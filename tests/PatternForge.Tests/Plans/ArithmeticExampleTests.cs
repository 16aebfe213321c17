using System.Globalization;
using System.Text.Json;

namespace PatternForge.Tests.Plans;

/// <summary>The trade's worked examples: what the plans answer is what the handbooks have, recomputed where they slip. Each example tells its source.</summary>
public class ArithmeticExampleTests
{
    private static readonly Lazy<JsonElement[]> Examples = new(() =>
        [.. JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Path("tests", "world", "arithmetic.json"))).RootElement.EnumerateArray()]);

    public static TheoryData<string, string> All()
    {
        var data = new TheoryData<string, string>();
        foreach (var example in Examples.Value)
        {
            data.Add(example.GetProperty("id").GetString()!, example.GetProperty("about").GetString()!);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_worked_example_is_answered_as_the_handbook_has_it(string id, string about)
    {
        var example = Examples.Value.Single(e => e.GetProperty("id").GetString() == id);
        var expected = example.GetProperty("expected");

        var answer = JsonSerializer.SerializeToElement(ExampleAnswers.Of(id, new Given(example.GetProperty("given"))));

        Assert.Equal(expected.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal), answer.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal));
        Assert.All(expected.EnumerateObject(), p => Same(p.Value, answer.GetProperty(p.Name), $"{id} {about}: {p.Name}"));
        Assert.False(string.IsNullOrEmpty(example.GetProperty("source").GetString()));
    }

    // A figure is the same when it rounds to as many decimals as the handbook prints.
    private static void Same(JsonElement expected, JsonElement answer, string where)
    {
        Assert.True(expected.ValueKind == answer.ValueKind, $"{where}: {answer.GetRawText()} for {expected.GetRawText()}");
        switch (expected.ValueKind)
        {
            case JsonValueKind.Number:
                var printed = expected.GetRawText();
                var decimals = printed.Contains('.', StringComparison.Ordinal) ? printed.Length - printed.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
                Assert.True(Math.Abs(expected.GetDecimal() - answer.GetDecimal()) <= 0.5m / (decimal)Math.Pow(10, decimals), $"{where}: {answer.GetRawText()} for {printed}");
                break;
            case JsonValueKind.Array:
                Assert.True(expected.GetArrayLength() == answer.GetArrayLength(), $"{where}: {answer.GetRawText()} for {expected.GetRawText()}");
                foreach (var (one, other) in expected.EnumerateArray().Zip(answer.EnumerateArray()))
                {
                    Same(one, other, where);
                }

                break;
            case JsonValueKind.Object:
                Assert.Equal(expected.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal), answer.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal));
                foreach (var property in expected.EnumerateObject())
                {
                    Same(property.Value, answer.GetProperty(property.Name), where);
                }

                break;
            default:
                Assert.True(expected.GetRawText() == answer.GetRawText(), $"{where}: {answer.GetRawText()} for {expected.GetRawText()}");
                break;
        }
    }
}

/// <summary>What an example gives, by name.</summary>
internal sealed class Given(JsonElement values)
{
    public int Int(string name) => values.GetProperty(name).GetInt32();

    public decimal Number(string name) => values.GetProperty(name).GetDecimal();

    public decimal[] Numbers(string name) => [.. values.GetProperty(name).EnumerateArray().Select(v => v.GetDecimal())];

    public int[] Ints(string name) => [.. values.GetProperty(name).EnumerateArray().Select(v => v.GetInt32())];

    public string Text(string name) => values.GetProperty(name).GetString()!;

    public string[] Texts(string name) => [.. values.GetProperty(name).EnumerateArray().Select(v => v.GetString()!)];

    public JsonElement Of(string name) => values.GetProperty(name);

    /// <summary>How often each size comes, as the examples write it.</summary>
    public static Dictionary<string, int> Tally(IEnumerable<int> sizes) => sizes.GroupBy(s => s).ToDictionary(g => g.Key.ToString(CultureInfo.InvariantCulture), g => g.Count());
}
