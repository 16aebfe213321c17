using PatternForge.Cli.Printing;

namespace PatternForge.Cli.Tests;

/// <summary>A test that has documents printed: passed over only where no browser is found.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute() => Skip = BrowserSearch.OfMachine.Find() is null && Environment.GetEnvironmentVariable("PATTERNFORGE_REQUIRE_BROWSER") != "1" ? "no Chromium was found on this machine: no document was printed" : null;
}
