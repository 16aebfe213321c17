using System.Collections.Immutable;

namespace PatternForge.Core.Stitches;

/// <summary>What one name means to an American and to a British reader of a craft.</summary>
/// <param name="Us">The operation in American terms; null when the name is not used there.</param>
/// <param name="Uk">The operation in British terms; null when the name is not used there.</param>
public sealed record NameMeaning(Operation? Us, Operation? Uk)
{
    /// <summary>The dialect that alone uses the name; <see cref="Dialect.Any"/> when both do, even if they mean different stitches by it.</summary>
    public Dialect Dialect => Uk is null ? Dialect.Us : Us is null ? Dialect.Uk : Dialect.Any;

    /// <summary>True when both dialects use the name for different stitches.</summary>
    public bool IsTreacherous => Us is not null && Uk is not null && !string.Equals(Us.Id, Uk.Id, StringComparison.Ordinal);

    /// <summary>The operation in a dialect; for <see cref="Dialect.Any"/> the one dialect that has it, else the American sense.</summary>
    public Operation? In(Dialect dialect) => dialect switch
    {
        Dialect.Us => Us,
        Dialect.Uk => Uk,
        _ => Us ?? Uk,
    };
}

/// <summary>
/// Finds operations by craft, dialect and name. Names match without regard to case, blanks, hyphens and full stops ("K 2 TOG." is <c>k2tog</c>);
/// only where two stitches differ in nothing but case does case decide.
/// </summary>
public static class OperationTable
{
    /// <summary>Every listed operation of a craft; crossings of knitting are read by their numbers and not listed.</summary>
    public static ImmutableArray<Operation> All(Craft craft) => TablesOf(craft).All;

    /// <summary>The operation that a dialect calls by this name; <see cref="Dialect.Any"/> asks both. Null when nobody knows it.</summary>
    public static Operation? Find(Craft craft, Dialect dialect, ReadOnlySpan<char> name)
    {
        Span<char> room = stackalloc char[SpokenForms.LongestName];
        var length = SpokenForms.Squeeze(name, room);
        if (length <= 0)
        {
            return null;
        }

        var found = TablesOf(craft).Find(dialect, room[..length]);
        return found ?? (craft == Craft.Knitting ? CableNames.Find(name) : null);
    }

    /// <summary>What a name means in either dialect; null when neither knows it.</summary>
    public static NameMeaning? Find(Craft craft, ReadOnlySpan<char> name)
    {
        var (us, uk) = (Find(craft, Dialect.Us, name), Find(craft, Dialect.Uk, name));
        return us is null && uk is null ? null : new NameMeaning(us, uk);
    }

    /// <summary>The names that a dialect uses, abbreviations first and then the written-out ones, for suggestions; <see cref="Dialect.Any"/> gives those of both.</summary>
    public static IEnumerable<string> NamesOf(Craft craft, Dialect dialect, bool spoken = true)
    {
        var all = All(craft);
        var names = all.SelectMany(o => o.Names).Where(n => dialect == Dialect.Any || n.Dialect == Dialect.Any || n.Dialect == dialect).Select(n => n.Text);
        return (spoken ? names.Concat(all.Where(o => !IsListed(o)).Select(o => o.Spoken)) : names).Distinct(StringComparer.Ordinal);
    }

    /// <summary>The usual abbreviation of an operation in a dialect; null when the dialect has none.</summary>
    public static string? NameIn(Operation operation, Dialect dialect) =>
        operation.Names.FirstOrDefault(n => n.Dialect == dialect || n.Dialect == Dialect.Any || dialect == Dialect.Any)?.Text;

    /// <summary>An operation written out in a dialect: the same stitch is "single crochet" to an American and "double crochet" to a British maker.</summary>
    public static string SpokenIn(Operation operation, Dialect dialect) =>
        dialect == Dialect.Uk && operation is { Craft: Craft.Crochet, IsSpecial: false } && operation.Names.Where(n => n.Dialect == Dialect.Uk).MaxBy(n => n.Text.Length) is { } british ? british.Text : operation.Spoken;

    /// <summary>
    /// The name that another dialect has in the place of a name of this one: an abbreviation for an abbreviation, words for words, and where an operation has several of a
    /// kind, the one in the same place of the list. Null when that dialect has no name for the operation.
    /// </summary>
    public static string? Counterpart(Operation operation, string name, Dialect to)
    {
        var from = to == Dialect.Us ? Dialect.Uk : Dialect.Us;
        var kind = KindOf(name);
        var mine = operation.Names.Where(n => n.Dialect == from && KindOf(n.Text) == kind).Select(n => n.Text).ToArray();
        var theirs = operation.Names.Where(n => n.Dialect == to).Select(n => n.Text).ToArray();
        var alike = theirs.Where(n => KindOf(n) == kind).ToArray();
        if (kind == 2 && operation.CountsAs is null)
        {
            return alike.MaxBy(n => n.Length) ?? theirs.FirstOrDefault(); // "treble crochet" rather than "treble"
        }

        var place = operation.CountsAs is null ? 0 : Array.FindIndex(mine, n => string.Equals(n, name, StringComparison.OrdinalIgnoreCase));
        return alike.Length > 0 ? alike[place >= 0 && place < alike.Length ? place : 0] : theirs.FirstOrDefault();
    }

    // 0 an abbreviation, 1 words with an abbreviation at their end ("front post dc"), 2 words in full.
    private static int KindOf(string name)
    {
        var last = name[(name.LastIndexOf(' ') + 1)..];
        return last.Length > 5 && last.All(char.IsLetter) ? 2 : name.Contains(' ', StringComparison.Ordinal) ? 1 : 0;
    }

    private static Tables TablesOf(Craft craft) => craft switch
    {
        Craft.Crochet => CrochetTables.Value,
        Craft.Tunisian => TunisianTables.Value,
        _ => KnittingTables.Value,
    };

    // Each craft's tables are made when the first pattern of that craft asks for them: a short run works one craft.
    private static class KnittingTables
    {
        public static readonly Tables Value = new(KnitOperations.All);
    }

    private static class CrochetTables
    {
        public static readonly Tables Value = new(CrochetOperations.All);
    }

    private static class TunisianTables
    {
        public static readonly Tables Value = new(TunisianOperations.All);
    }

    // A spoken form that one dialect alone uses stands among the names, and is not known in the other.
    private static bool IsListed(Operation operation) => operation.Names.Any(n => string.Equals(n.Text, operation.Spoken, StringComparison.Ordinal));

    private static bool IsForeign(Operation operation, Dialect dialect) => operation.Names.All(n => n.Dialect != Dialect.Any && n.Dialect != dialect);

    private sealed class Tables(ImmutableArray<Operation> all)
    {
        private readonly Lazy<NameTable<Operation>> _us = new(() => NamesIn(all, Dialect.Us));
        private readonly Lazy<NameTable<Operation>> _uk = new(() => NamesIn(all, Dialect.Uk));

        public ImmutableArray<Operation> All { get; } = all;

        public Operation? Find(Dialect dialect, ReadOnlySpan<char> squeezed) => dialect switch
        {
            Dialect.Us => _us.Value.Find(squeezed),
            Dialect.Uk => _uk.Value.Find(squeezed),
            _ => _us.Value.Find(squeezed) ?? _uk.Value.Find(squeezed),
        };
    }

    private static NameTable<Operation> NamesIn(ImmutableArray<Operation> operations, Dialect dialect)
    {
        var names = new NameTable<Operation>(operations.Length * 8, static (a, b) => string.Equals(a.Id, b.Id, StringComparison.Ordinal));
        foreach (var operation in operations)
        {
            foreach (var name in operation.Names)
            {
                if (name.Dialect == dialect || name.Dialect == Dialect.Any)
                {
                    names.Add(name.Text, operation);
                }
            }
        }

        foreach (var operation in operations)
        {
            if (!IsListed(operation) && !IsForeign(operation, dialect))
            {
                foreach (var form in SpokenForms.Of(operation.Spoken))
                {
                    names.Add(form, operation);
                }
            }
        }

        return names;
    }
}
