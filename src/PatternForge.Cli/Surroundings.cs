using PatternForge.Cli.Printing;
using PatternForge.Cli.Reporting;

namespace PatternForge.Cli;

/// <summary>All that a command touches outside itself: streams, folder, terminal, day. Tests hand in their own.</summary>
internal sealed class Surroundings
{
    /// <summary>Standard input.</summary>
    public required Stream In { get; init; }

    /// <summary>Standard output: results only.</summary>
    public required TextWriter Out { get; init; }

    /// <summary>Standard error: everything else.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>The folder that relative paths start from.</summary>
    public required string Folder { get; init; }

    /// <summary>True when standard output may be coloured: a terminal, and nobody asked for plain text.</summary>
    public bool ColourOut { get; init; }

    /// <summary>The same for standard error.</summary>
    public bool ColourError { get; init; }

    /// <summary>True when a person watches standard error, so that progress may be shown there.</summary>
    public bool ShowsProgress { get; init; }

    /// <summary>How many columns a line of a text report may take.</summary>
    public int Width { get; init; } = 120;

    /// <summary>The day that a new pattern is dated.</summary>
    public DateOnly Today { get; init; } = new(2025, 1, 1);

    /// <summary>True when the person who calls wants the technical trace of a fault.</summary>
    public bool Trace { get; init; }

    /// <summary>How long and how much may be asked over the network, where that is wished.</summary>
    public LinkLimits Links { get; init; } = LinkLimits.Default;

    /// <summary>Where a browser is found that prints documents.</summary>
    public BrowserSearch Browsers { get; init; } = BrowserSearch.OfMachine;

    /// <summary>Set when the user asks to stop.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>Writes a result. A reader that has gone away (a closed pipe) is no failure: the runtime drops the rest in silence.</summary>
    /// <exception cref="OutputFailedException">The system refused, as on a full disk.</exception>
    public void Write(string text)
    {
        try
        {
            Out.Write(text);
            Out.Flush();
        }
        catch (IOException e)
        {
            throw new OutputFailedException(e);
        }
    }

    /// <summary>Writes a text of several lines to standard error.</summary>
    public void Tell(string text)
    {
        try
        {
            Error.Write(text);
            Error.Flush();
        }
        catch (IOException)
        {
            // Nobody listens; there is nowhere left to say so.
        }
    }

    /// <summary>Writes one line to standard error; control characters of foreign text are made visible.</summary>
    public void Say(string line)
    {
        try
        {
            Error.WriteLine(DisplayText.OneLine(line));
        }
        catch (IOException)
        {
            // Nobody listens; there is nowhere left to say so.
        }
    }
}

/// <summary>Standard output cannot be written.</summary>
internal sealed class OutputFailedException(IOException reason) : Exception(reason.Message, reason);
