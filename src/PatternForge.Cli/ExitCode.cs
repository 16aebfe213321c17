namespace PatternForge.Cli;

/// <summary>What the program answers to whoever called it. Of several outcomes in one run the greatest counts.</summary>
internal static class ExitCode
{
    /// <summary>All is well.</summary>
    public const int Clean = 0;

    /// <summary>Findings at or above the threshold stand.</summary>
    public const int Findings = 1;

    /// <summary>It could not be done as asked: wrong usage, or input that cannot be read.</summary>
    public const int Usage = 2;

    /// <summary>A fault of the tool itself.</summary>
    public const int Fault = 3;

    /// <summary>Stopped by the user, as shells number it.</summary>
    public const int Stopped = 130;
}
