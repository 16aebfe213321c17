using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Works a row in its sizes under the reading that fits (NOTATION 4c); remembers what the pattern has shown its words to mean.</summary>
internal sealed class RowReadings
{
    private readonly SizeState[] _states;
    private readonly CompileOptions _options;
    private readonly bool _isKnitting;
    private bool _timesInAll;
    private long _stepsLeft;

    public RowReadings(SizeState[] states, CompileOptions options, bool isKnitting)
    {
        _states = states;
        _options = options;
        _isKnitting = isKnitting;
        _stepsLeft = options.MaxStepsOfFile;
    }

    /// <summary>True when what each clause does is to be written down.</summary>
    public bool KeepsNotes { get; set; }

    /// <summary>Works a row, trying its readings until one fits every size; the default when none does.</summary>
    public RowOutcome[] Work(BoundRow row, int[] active)
    {
        RowOutcome[] Try(Choices choices) => Once(row, active, choices);

        var choices = Beginning;
        if (_isKnitting && !ReadingSigns.MayDiffer(row.Steps))
        {
            return Try(choices);
        }

        var saved = active.Select(size => _states[size].Save()).ToArray();
        var first = Try(choices);
        if (choices.Next() is null)
        {
            return first;
        }

        if (Fits(row, active, first))
        {
            return row.Claims.Any(c => c.IsTrusted) && active.Any(size => _states[size].Live.HasOpenQuestion) ? Settled(row, active, saved, choices, Try) : first;
        }

        for (var tries = 1; tries < Choices.MostTries && choices.Next() is { } next; tries++)
        {
            choices = next;
            for (var i = 0; i < active.Length; i++)
            {
                _states[active[i]].Restore(saved[i]);
            }

            var outcome = Try(choices);
            if (Fits(row, active, outcome))
            {
                // What only fits one way here is what the pattern means by it from here on.
                foreach (var size in active)
                {
                    _states[size].Live.Confirm();
                }

                _timesInAll = outcome.SelectMany(o => o.Readings).LastOrDefault(r => r.Kind is ReadingKind.InAll or ReadingKind.More) is { } times ? times.Kind == ReadingKind.InAll : _timesInAll;
                return outcome;
            }
        }

        for (var i = 0; i < active.Length; i++)
        {
            _states[active[i]].Restore(saved[i]);
        }

        return Try(Beginning);
    }

    /// <summary>Works the row in its sizes under one reading.</summary>
    public RowOutcome[] Once(BoundRow row, int[] active, Choices choices)
    {
        var outcomes = new RowOutcome[active.Length];
        for (var i = 0; i < active.Length; i++)
        {
            var budget = new Budget(_options, (int)Math.Clamp(_stepsLeft, _options.LeastSteps, _options.MaxSteps));
            outcomes[i] = LineWorker.Work(row, _states[active[i]], choices, budget, KeepsNotes ? new ClauseNotes() : null);
            _stepsLeft -= budget.Spent;
        }

        return outcomes;
    }

    /// <summary>The readings from which trying begins: the default ones, but for what the pattern has shown.</summary>
    public Choices Beginning => Choices.Beginning(_timesInAll);

    /// <summary>The first reading of a row with a stated count fits; where no other does, it is what the pattern means by it from here on.</summary>
    private RowOutcome[] Settled(BoundRow row, int[] active, SizeState.Snapshot[] saved, Choices choices, Func<Choices, RowOutcome[]> tryWith)
    {
        void Back()
        {
            for (var i = 0; i < active.Length; i++)
            {
                _states[active[i]].Restore(saved[i]);
            }
        }

        Back();
        var otherFits = choices.Next() is { } next && Fits(row, active, tryWith(next));
        Back();
        var outcomes = tryWith(choices);
        foreach (var size in active.Where(_ => !otherFits))
        {
            _states[size].Live.Confirm();
        }

        return outcomes;
    }

    public static bool Fits(BoundRow row, int[] active, RowOutcome[] outcomes)
    {
        for (var i = 0; i < active.Length; i++)
        {
            if (outcomes[i].IsWrong)
            {
                return false;
            }

            foreach (var claim in row.Claims)
            {
                if (RowMessages.Differs(claim, active[i], outcomes[i]) is not null)
                {
                    return false;
                }
            }
        }

        return true;
    }
}
