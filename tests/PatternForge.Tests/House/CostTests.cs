using PatternForge.Benchmarks;
using PatternForge.Core;
using PatternForge.Core.Text;
using PatternForge.Rendering;
using PatternForge.Rendering.Formats;
using Xunit.Abstractions;

namespace PatternForge.Tests.House;

/// <summary>What work costs in bytes allocated: steady on every machine, as times are not.</summary>
public class CostTests(ITestOutputHelper output)
{
    [Fact]
    public void An_ordinary_pattern_costs_little_to_check_and_to_render()
    {
        var source = MadePattern.Source(1);
        var compilation = Compiler.Compile(source);

        Assert.InRange(Cost("check", () => Compiler.Compile(new SourceText(source.Path, source.Text))), 0, 1_000_000);
        Assert.InRange(Cost("page", () => Renderer.Render(compilation, OutputFormat.Html)), 0, 4_000_000);
    }

    [Fact]
    public void A_pattern_twice_as_long_costs_twice_as_much()
    {
        var (half, whole) = (MadePattern.Source(1, 4_000), MadePattern.Source(1, 8_000));
        var (some, more) = (Compiler.Compile(half), Compiler.Compile(whole));

        Assert.InRange(Cost("check, 8,000 lines", () => Compiler.Compile(whole)) / (double)Cost("check, 4,000 lines", () => Compiler.Compile(half)), 1.8, 2.2);
        Assert.InRange(Cost("page, 8,000 lines", () => Renderer.Render(more, OutputFormat.Html)) / (double)Cost("page, 4,000 lines", () => Renderer.Render(some, OutputFormat.Html)), 1.8, 2.2);
    }

    private long Cost(string what, Action work)
    {
        work();
        var before = GC.GetAllocatedBytesForCurrentThread();
        work();
        var cost = GC.GetAllocatedBytesForCurrentThread() - before;
        output.WriteLine($"{what}: {cost:N0} bytes");
        return cost;
    }
}
