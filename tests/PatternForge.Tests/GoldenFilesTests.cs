namespace PatternForge.Tests;

/// <summary>Runs after all tests that may run side by side, when every one of them has asked for its files.</summary>
[CollectionDefinition("Golden files, at the end", DisableParallelization = true)]
public class GoldenFilesAtTheEnd;

[Collection("Golden files, at the end")]
public class GoldenFilesTests
{
    [Fact]
    public void Every_golden_file_is_asked_for_by_a_test() =>
        Assert.True(!Golden.NotAsked.Any(), "no test asked for: " + string.Join(", ", Golden.NotAsked));
}
