using System.Diagnostics;

namespace PatternForge.Cli;

/// <summary>Shows a person at a terminal how far long work has come; silent for short work and for everybody else.</summary>
internal sealed class Progress(Surroundings around, int total)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(700);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    private readonly Lock _gate = new();
    private readonly long _begin = Stopwatch.GetTimestamp();
    private long _lastShown;
    private int _done;
    private bool _visible;

    /// <summary>One more is done.</summary>
    public void Step()
    {
        if (!around.ShowsProgress)
        {
            return;
        }

        lock (_gate)
        {
            _done++;
            if (Stopwatch.GetElapsedTime(_begin) > Patience && (!_visible || Stopwatch.GetElapsedTime(_lastShown) > Pause))
            {
                _visible = true;
                _lastShown = Stopwatch.GetTimestamp();
                around.Tell($"\r{_done} of {total} patterns");
            }
        }
    }

    /// <summary>Takes the line away again.</summary>
    public void End()
    {
        if (_visible)
        {
            around.Tell("\r\e[K");
        }
    }
}
