using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>
/// Another form of the same pattern: other terms, words in full. It is a list of edits of the source; what they make is compiled and checked like any other
/// source, so that nothing of a release was never read by the compiler.
/// </summary>
public abstract class Edition
{
    /// <summary>Every edition, in the order of the documents.</summary>
    public static ImmutableArray<Edition> All { get; } = [new TermsEdition(Stitches.Dialect.Us), new TermsEdition(Stitches.Dialect.Uk), new SpelledOutEdition(), new UnitsEdition(UnitSystem.Metric), new UnitsEdition(UnitSystem.Imperial), new UnitsEdition(null), new EverySizeEdition(), new MirrorEdition(), new ReadOutEdition(), .. PageEdition.Each];

    /// <summary>The name it is asked for by, in kebab-case; it stands in the names of its files.</summary>
    public abstract string Name { get; }

    /// <summary>What it is, in a few words.</summary>
    public abstract string Title { get; }

    /// <summary>What its page says otherwise than the pattern's own.</summary>
    public virtual EditionForm Form => new(Name, null, false);

    /// <summary>The same for one pattern.</summary>
    public virtual EditionForm FormOf(Compilation plain) => Form;

    /// <summary>When it has its turn where several are made in one.</summary>
    public abstract EditionStage Stage { get; }

    /// <summary>What it settles: of two editions that settle the same only one can be made.</summary>
    public virtual string Subject => Name;

    /// <summary>The first two editions of a combined name that settle the same, such as two kinds of terms; null where all go together.</summary>
    public static (string First, string Second)? Clash(string name) => CombinedEdition.FirstClash(name);

    /// <summary>True where a line that does not come to the same in this edition may stand as it was written, because its words are right there as well.</summary>
    public virtual bool MayLeaveLines => false;

    /// <summary>True where rows keep all their steps and only other words of them change, so that their counts are those of the pattern as it is written.</summary>
    public virtual bool KeepsSteps => false;

    /// <summary>The edition of that name, ignoring case, or the one that several names with a plus between them make; null when there is none such. One of a single size is there for every size that a pattern may have.</summary>
    public static Edition? Find(string name) =>
        name.Length > 400 ? null : name.Contains(CombinedEdition.Sign, StringComparison.Ordinal) ? CombinedEdition.Named(name) : All.FirstOrDefault(e => string.Equals(e.Name, name.Trim().Replace(' ', '-'), StringComparison.OrdinalIgnoreCase)) ?? (Edition?)SizeEdition.Named(name) ?? MarkedEdition.Named(name);

    /// <summary>The editions that are meant by this one for a pattern: itself, or one for each of its sizes.</summary>
    public virtual IEnumerable<Edition> For(Compilation plain) => [this];

    /// <summary>The only size that this edition of a pattern has, from 0; null where it has them all.</summary>
    public virtual int? OnlySize(Compilation plain) => null;

    /// <summary>True where a pattern with these sizes has such an edition.</summary>
    public virtual bool Exists(SizeSet sizes) => true;

    /// <summary>Rewrites a compiled pattern.</summary>
    public abstract RewrittenSource Rewrite(Compilation plain);

    /// <summary>A finding about this edition at a place of the text that was read.</summary>
    protected Finding Say(Compilation plain, Rule rule, TextSpan place, string message, string help) => Say(plain, this, rule, place, message, help);

    /// <summary>A finding about an edition at a place of the text that was read.</summary>
    internal static Finding Say(Compilation plain, Edition edition, Rule rule, TextSpan place, string message, string? help) =>
        new(rule, plain.Source, plain.Text.ToSource(place), $"in the edition `{edition.Name}`, {message}") { Help = help, Edition = edition.Name };
}
