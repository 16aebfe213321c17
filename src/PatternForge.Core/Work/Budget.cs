namespace PatternForge.Core.Work;

/// <summary>What one line may cost in one size, so that no input can keep the worker busy.</summary>
internal sealed class Budget
{
    private int _steps;

    public Budget(CompileOptions options)
    {
        _steps = options.MaxSteps;
        MostStitches = options.MaxStitches;
        MostRows = options.MaxRows;
    }

    public int MostStitches { get; }

    public int MostRows { get; }

    public bool IsSpent => _steps <= 0;

    /// <summary>Takes one step; false when there are none left.</summary>
    public bool Spend() => --_steps >= 0;

    /// <summary>Takes so many steps at once, if that leaves any.</summary>
    public bool SpendAll(long steps)
    {
        if (steps >= _steps)
        {
            return false;
        }

        _steps -= (int)steps;
        return true;
    }

    public void Stop() => _steps = 0;
}
