using Scriban;
using Scriban.Parsing;
using Scriban.Runtime;

namespace PatternForge.Rendering.Templates;

/// <summary>The names under which templates see a kind of view, each with the way to its value. A list to allow, never reflection.</summary>
/// <typeparam name="T">The view.</typeparam>
internal sealed class ViewMembers<T> : Dictionary<string, Func<T, Landing, object?>>
{
    /// <summary>An empty list.</summary>
    public ViewMembers()
        : base(StringComparer.Ordinal)
    {
    }

    /// <summary>Adds a value that needs no translation.</summary>
    public void Add(string name, Func<T, object?> read) => Add(name, (view, _) => read(view));
}

/// <summary>A view as templates see it: read-only, its members made when they are asked for, lists and prose once.</summary>
/// <typeparam name="T">The view.</typeparam>
internal sealed class ViewObject<T> : IScriptObject
{
    private readonly T _view;
    private readonly ViewMembers<T> _members;
    private readonly Landing _landing;
    private Dictionary<string, object>? _made;

    /// <summary>Wraps a view.</summary>
    public ViewObject(T view, ViewMembers<T> members, Landing landing) => (_view, _members, _landing) = (view, members, landing);

    /// <inheritdoc/>
    public int Count => _members.Count;

    /// <inheritdoc/>
    public bool IsReadOnly
    {
        get => true;
        set { }
    }

    /// <inheritdoc/>
    public IEnumerable<string> GetMembers() => _members.Keys;

    /// <inheritdoc/>
    public bool Contains(string member) => _members.ContainsKey(member);

    /// <inheritdoc/>
    public bool TryGetValue(TemplateContext? context, SourceSpan span, string member, out object? value)
    {
        if (_made is not null && _made.TryGetValue(member, out value))
        {
            return true;
        }

        if (!_members.TryGetValue(member, out var read))
        {
            value = null;
            return false;
        }

        value = read(_view, _landing);
        if (value is IScriptObject or Ready)
        {
            (_made ??= new(StringComparer.Ordinal))[member] = value;
        }

        return true;
    }

    /// <inheritdoc/>
    public bool CanWrite(string member) => false;

    /// <inheritdoc/>
    public bool TrySetValue(TemplateContext? context, SourceSpan span, string member, object? value, bool readOnly) => false;

    /// <inheritdoc/>
    public bool Remove(string member) => false;

    /// <inheritdoc/>
    public void SetReadOnly(string member, bool readOnly)
    {
    }

    /// <inheritdoc/>
    public IScriptObject Clone(bool deep) => this;
}
