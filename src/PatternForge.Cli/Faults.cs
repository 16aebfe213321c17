namespace PatternForge.Cli;

/// <summary>Tells of a fault of the tool itself, in plain words.</summary>
internal static class Faults
{
    /// <summary>Tells of it on standard error, with the trace where the caller asked for it.</summary>
    public static void Tell(Exception fault, Surroundings around, string? path = null)
    {
        around.Say(path is null
            ? "patternforge failed: this is a fault of the tool, not yours"
            : $"patternforge failed on `{path}`: this is a fault of the tool, not of the pattern");
        if (around.Trace)
        {
            around.Tell(fault + Environment.NewLine);
        }
        else
        {
            around.Say("please report it to the makers of the tool with the pattern and what PATTERNFORGE_TRACE=1 adds to this message");
        }
    }
}
