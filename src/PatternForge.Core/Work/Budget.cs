namespace PatternForge.Core.Work;

/// <summary>What one line may cost in one size, so that no input can keep the worker busy.</summary>
internal sealed class Budget
{
    // Steps worked together cost next to nothing each.
    private const int TogetherForOne = 64;

    private readonly int _given;
    private int _together;
    private int _steps;

    public Budget(CompileOptions options)
        : this(options, options.MaxSteps)
    {
    }

    /// <summary>A budget of so many steps, where the lines before have used up most of what a file may cost.</summary>
    public Budget(CompileOptions options, int steps)
    {
        _given = steps;
        _steps = steps;
        MostStitches = options.MaxStitches;
        MostRows = options.MaxRows;
    }

    public int MostStitches { get; }

    public int MostRows { get; }

    public bool IsSpent => _steps <= 0;

    /// <summary>What the steps taken so far cost, in steps worked one by one.</summary>
    public int Spent => _given - Math.Max(0, _steps) - _together + (_together / TogetherForOne);

    /// <summary>Takes one step; false when there are none left.</summary>
    public bool Spend() => --_steps >= 0;

    /// <summary>How many passes of so many steps each can be paid for, with a step left.</summary>
    public int Passes(int steps) => Math.Max(0, _steps - 1) / steps;

    /// <summary>Takes so many steps at once; there are enough of them.</summary>
    public void Spend(int steps)
    {
        _steps -= steps;
        _together += steps;
    }

    public void Stop() => _steps = 0;
}
