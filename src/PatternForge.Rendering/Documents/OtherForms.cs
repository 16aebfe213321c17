using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Documents;

/// <summary>
/// The other forms that a page may change to: in the other terms, and with its measurements in metric or in inches alone. Each is an edition whose rows are
/// worked and compared; one that does not come to the same is not offered. Made when a page asks for them and not before.
/// </summary>
internal sealed class OtherForms
{
    private const int MostLines = 1_500;

    private readonly Compilation _plain;
    private readonly CompileOptions _options;
    private readonly Func<Compilation, PatternView> _view;
    private readonly Dictionary<(string? Terms, string? Units), PatternView?> _made = [];

    /// <summary>Prepares for one pattern.</summary>
    /// <param name="plain">The pattern as it is written.</param>
    /// <param name="options">How it was compiled; the defaults when null.</param>
    /// <param name="view">Makes the view of an edition.</param>
    public OtherForms(Compilation plain, CompileOptions? options, Func<Compilation, PatternView> view) =>
        (_plain, _options, _view) = (plain, (options ?? CompileOptions.Default) with { Checking = Checking.RowsAlone, LookAtPhoto = null, Trace = false }, view);

    /// <summary>The edition in the terms that the pattern is not written in; null where it is not known which those are.</summary>
    public string? OtherTerms => IsBounded ? _plain.Pattern.Facts.TermsInForce switch { Dialect.Us => "uk", Dialect.Uk => "us", _ => null } : null;

    private static readonly string[] InUnits = ["metric", "inches"];

    /// <summary>The editions by units that there are.</summary>
    public ImmutableArray<string> Units => IsBounded ? [.. InUnits.Where(n => Edition.Find(n) is not null)] : [];

    private bool IsBounded => _plain.Lines.Length <= MostLines && !_plain.HasErrors && _plain.Edition is null && _plain.Source.Text.Length > 0;

    /// <summary>The view in some terms and units; null where it cannot be made.</summary>
    /// <param name="terms">The edition by terms; null for those that the pattern is written in.</param>
    /// <param name="units">The edition by units; null for those that it is written in.</param>
    public PatternView? In(string? terms, string? units)
    {
        if (!_made.TryGetValue((terms, units), out var view))
        {
            _made[(terms, units)] = view = Compiled(terms, units) is { } made ? _view(made) : null;
        }

        return view;
    }

    private Compilation? Compiled(string? terms, string? units)
    {
        var name = string.Join('+', new[] { terms, units }.OfType<string>());
        return Edition.Find(name) is { } edition && edition.Exists(_plain.Pattern.Facts.Sizes) && EditionCompiler.Compile(_plain, edition, _options) is { HasErrors: false, Compilation: { } made } ? made : null;
    }
}
