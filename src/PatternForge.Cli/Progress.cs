using System.Diagnostics;

namespace PatternForge.Cli;

/// <summary>Shows a person at a terminal how far long work has come; silent for short work and for everybody else.</summary>
/// <param name="around">Where it is shown.</param>
/// <param name="total">How many patterns there are.</param>
/// <param name="patience">How long work may take before it counts as long; 700 ms where nothing is said.</param>
internal sealed class Progress(Surroundings around, int total, TimeSpan? patience = null)
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    private readonly TimeSpan _patience = patience ?? TimeSpan.FromMilliseconds(700);
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
            if (Stopwatch.GetElapsedTime(_begin) >= _patience && (!_visible || Stopwatch.GetElapsedTime(_lastShown) > Pause))
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
