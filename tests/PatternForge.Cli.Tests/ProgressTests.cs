namespace PatternForge.Cli.Tests;

/// <summary>How far long work has come is shown to a person at a terminal and to nobody else.</summary>
public class ProgressTests
{
    [Fact]
    public void A_person_at_a_terminal_sees_it_and_the_line_is_taken_away_again() =>
        Assert.Equal("\r1 of 2 patterns\r\e[K", Shown(terminal: true, TimeSpan.Zero));

    [Fact]
    public void Short_work_shows_nothing() => Assert.Equal("", Shown(terminal: true, TimeSpan.FromDays(1)));

    [Fact]
    public void Nobody_else_gets_a_sign_of_it() => Assert.Equal("", Shown(terminal: false, TimeSpan.Zero));

    private static string Shown(bool terminal, TimeSpan patience)
    {
        using var error = new StringWriter();
        var progress = new Progress(new Surroundings { In = Stream.Null, Out = TextWriter.Null, Error = error, Folder = ".", ShowsProgress = terminal }, 2, patience);
        progress.Step();
        progress.End();
        return error.ToString();
    }
}
