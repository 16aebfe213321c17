using System.Collections.Immutable;

namespace PatternForge.Core.Model;

/// <summary>A fact that may differ by size: one shared value, or one a size in the header's order.</summary>
public sealed class PerSize<T>
{
    private readonly ImmutableArray<T> _values;

    internal PerSize(ImmutableArray<T> values) => _values = values;

    /// <summary>True when one value stands for every size.</summary>
    public bool IsShared => _values.Length == 1;

    /// <summary>The values as written: one, or one a size.</summary>
    public ImmutableArray<T> Values => _values;

    /// <summary>The value in a size (index from 0).</summary>
    public T this[int size] => _values[IsShared ? 0 : size];

    /// <summary>The same shape with each value changed.</summary>
    public PerSize<TOut> Map<TOut>(Func<T, TOut> change) => new([.. _values.Select(change)]);
}

/// <summary>Makes <see cref="PerSize{T}"/> values.</summary>
public static class PerSize
{
    /// <summary>One value for every size.</summary>
    public static PerSize<T> Shared<T>(T value) => new([value]);

    /// <summary>One value a size, in order; there must be at least one.</summary>
    public static PerSize<T> Each<T>(ImmutableArray<T> values) =>
        values.IsDefaultOrEmpty ? throw new ArgumentException("At least one value is needed.", nameof(values)) : new(values);
}
