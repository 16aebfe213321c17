using System.Buffers;
using System.Collections.Immutable;
using PatternForge.Core.Drafts;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Sizing;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core;

/// <summary>Adds a size to a pattern: writes a value into every literal list, compiles what comes of it, and tells line by line what follows, what is proposed and what must be decided.</summary>
public static class SizeAdder
{
    private static readonly SearchValues<char> Signs = SearchValues.Create(",;:()[]{}\r\n\"#");

    /// <summary>Adds one size.</summary>
    /// <param name="plain">The pattern as it is.</param>
    /// <param name="wish">The size.</param>
    /// <param name="options">Limits; the defaults when null.</param>
    /// <param name="cancel">Stops the work early.</param>
    public static AddedSize Add(Compilation plain, SizeWish wish, CompileOptions? options = null, CancellationToken cancel = default)
    {
        var sizes = plain.Pattern.Facts.Sizes;
        if (Unfit(plain, wish, options ?? CompileOptions.Default) is { } unfit)
        {
            return new() { Refusal = unfit };
        }

        var limits = options ?? CompileOptions.Default;
        var mended = DraftReader.Read(plain.Source).Mended; // plans are not yet written out here: the designer's own text
        var isDraft = mended.Text != plain.Source;
        var (found, table) = (SizeLists.Find(mended.Text, sizes), (string?)null);
        if (found.Lists.All(l => l.Kind != SizeListKind.Names))
        {
            return new() { Refusal = "the names of the sizes could not be found one by one in the header" };
        }

        if (found.From is not null && LacksTheSize(plain, Growth(new(found.Lists, mended.Text)).Named(sizes.Count), limits, cancel) && WrittenOutTable.In(mended, found, sizes, limits) is var (written, name))
        {
            (mended, found, table) = (written, SizeLists.Find(written.Text, sizes), name);
        }

        var given = new GivenValues(found.Lists, mended.Text);
        foreach (var (what, value) in wish.Given)
        {
            if (given.Take(what, value, plain.Pattern.Facts) is { } reason)
            {
                return new() { Refusal = reason };
            }
        }

        var (index, isGuess) = PlaceOf(wish, sizes, given);
        var (place, wrong) = given.Place(index, sizes.Count);
        if (place is null)
        {
            return new() { Refusal = wrong };
        }

        var growth = Growth(given);
        if (place == NewPlace.At(index, sizes.Count) && given.Main is null && found.Lists.Any(l => l.Kind == SizeListKind.TableNames) | HasTable(mended.Text))
        {
            place = ByTable(plain, growth.Named(index), place, options, cancel);
        }

        var settled = new SettledValues(found, plain, place);
        growth = growth.With(settled);
        var made = Tried(plain, growth, place, keepsAll: false, options, cancel);
        var keepsAll = false;
        if (place.IsBetween && made.Errors > 0 && Tried(plain, growth, place, keepsAll: true, options, cancel) is var strict && strict.Errors < made.Errors)
        {
            (made, keepsAll) = (strict, true);
        }

        if (made.Own.Length > 0 || settled.Yarn(made.Compilation))
        {
            settled.Rows(made.Growth, made.Own, f => mended.Text.Lines.PositionOf(f.Span.Start).Line, () => Tried(plain, growth, place, keepsAll, options, cancel) is var again ? (again.Growth, again.Own) : default);
            made = Tried(plain, growth, place, keepsAll, options, cancel);
            made = settled.Yarn(made.Compilation) ? Tried(plain, growth, place, keepsAll, options, cancel) : made;
        }

        var raw = made.Growth.InFile(plain.Source, mended, isDraft);
        return new()
        {
            Index = index,
            Names = [.. sizes.Names[..index], wish.Name, .. sizes.Names[index..]],
            Changes = [.. made.Growth.Changes.Select(Told).Concat(Following(plain, made.Compilation, mended, found, index)).OrderBy(c => c.Line).ThenBy(c => c.Kind)],
            Source = raw ?? made.Growth.Source.Text,
            CanBeWritten = raw is not null,
            Findings = made.Fresh,
        };

        SourceGrowth Growth(GivenValues values) => new(mended, found, sizes, wish.Name, values, StitchMultiples.Of(mended.Text, plain.Pattern.Facts, found.Called, limits, cancel));

        SizeChange Told(SizeChange change) =>
            change.What == "sizes.names" && isGuess ? change with { Kind = SizeChangeKind.Decide, Why = $"the names do not tell where it belongs: behind the last is a guess, so say `--before {sizes.Names[0]}`, or the like, where it is wrong" }
            : table is not null && change is { Kind: SizeChangeKind.Proposed } && change.What.StartsWith("body.", StringComparison.Ordinal) ? change with { Kind = SizeChangeKind.Decide, Why = $"the size table `{table}` has no {wish.Name.Trim()}: what is asked of it is written out here, and the figure for {wish.Name.Trim()} is only {change.Why}" }
            : change;
    }

    // True where the sizes of a table do not go so far.
    private static bool LacksTheSize(Compilation plain, SourceText named, CompileOptions options, CancellationToken cancel)
    {
        bool Lacks(Compilation one) => one.Findings.Any(f => f.Rule.Code == "PF188");
        return !Lacks(plain) && Lacks(Compiler.Compile(named, options, cancel));
    }

    private static string? Unfit(Compilation plain, SizeWish wish, CompileOptions options)
    {
        var sizes = plain.Pattern.Facts.Sizes;
        var name = wish.Name.Trim();
        return sizes.Count == 1 ? "a pattern of one size has no lists to add to: name two sizes in the header first, and give their numbers as lists"
            : plain.Pattern.Facts.Unread.Contains("sizes", StringComparer.Ordinal) ? "the sizes of this pattern could not be made out: `patternforge lint` tells why"
            : name.Length is 0 or > 60 || name.AsSpan().IndexOfAny(Signs) >= 0 ? $"`{wish.Name}` cannot be the name of a size: leave out brackets, commas and other signs"
            : sizes.IndexOf(name) >= 0 ? $"the pattern has a size `{name}` already"
            : sizes.Count >= options.MaxSizes ? $"the pattern has {sizes.Count} sizes, and more are not read"
            : wish.Before is not null && wish.After is not null ? "say what the new size stands before or what it stands behind, not both"
            : (wish.Before ?? wish.After) is { } beside && sizes.IndexOf(beside) < 0 ? $"the pattern has no size `{beside}`: {(Suggest.Nearest(beside, sizes.Names, 1) is [var near, ..] ? $"did you mean `{near}`?" : $"there are {string.Join(", ", sizes.Names)}")}"
            : null;
    }

    // Where neither measurement nor name tells, a size is taken to be the largest: most that are added are.
    private static (int Index, bool IsGuess) PlaceOf(SizeWish wish, SizeSet sizes, GivenValues given) =>
        wish.Before is { } before ? (sizes.IndexOf(before), false)
        : wish.After is { } after ? (sizes.IndexOf(after) + 1, false)
        : (given.PlaceByMain() ?? SizeOrder.PlaceOf(wish.Name, sizes)) is { } index ? (index, false)
        : (sizes.Count, true);

    // How far the new size is from its neighbours, by the table's bust or chest.
    private static NewPlace ByTable(Compilation plain, SourceText named, NewPlace place, CompileOptions? options, CancellationToken cancel)
    {
        var main = Compiler.Compile(named, options, cancel).Pattern.Facts.Fits.FirstOrDefault(f => f.Name is "bust" or "chest" && !f.Values.IsShared)?.Values;
        var old = plain.Pattern.Facts.Fits.FirstOrDefault(f => f.Name is "bust" or "chest" && !f.Values.IsShared)?.Values;
        if (main is null || old is null || main[place.Index] is not { } own || old[place.From] is not { } from || old[place.To] is not { } to || from.InBase == to.InBase)
        {
            return place;
        }

        var share = (own.InBase - from.InBase) / (to.InBase - from.InBase);
        return GivenValues.Fits(share, place) ? place with { Share = share } : place;
    }

    private static bool HasTable(SourceText text) => text.Text.Contains("from:", StringComparison.Ordinal) || text.Text.Contains("size-table:", StringComparison.Ordinal);

    private static (SourceGrowth Growth, Compilation Compilation, ImmutableArray<Finding> Fresh, int Errors, Finding[] Own) Tried(Compilation plain, SourceGrowth growth, NewPlace place, bool keepsAll, CompileOptions? options, CancellationToken cancel)
    {
        var grown = growth.Grow(place, keepsAll);
        var made = Compiler.Compile(grown.Source.Text, options, cancel);
        var known = plain.Findings.Select(f => (f.Rule.Code, f.Span.Start)).ToHashSet();
        var bag = new FindingBag(plain.Source);
        var own = new List<Finding>();
        foreach (var finding in made.Findings.Where(f => f.Accepted is null))
        {
            var told = grown.Source.ToSource(finding) with { Fix = null };
            if (!known.Contains((told.Rule.Code, told.Span.Start)) || (told.Sizes.Contains(place.Index) && told.Sizes.Length < plain.Pattern.Facts.Sizes.Count + 1))
            {
                bag.Add(told);
                if (told is { Severity: Severity.Error, Sizes: [var only] } && only == place.Index)
                {
                    own.Add(told with { Span = grown.Source.ToBefore(finding.Span) });
                }
            }
        }

        var fresh = bag.ToSorted();
        return (grown, made, fresh, fresh.Count(f => f.Severity == Severity.Error), [.. own]);
    }

    /// <summary>What needs no hand: formulas of the header, bodies of a size table, and the places that call a number by its name.</summary>
    private static IEnumerable<SizeChange> Following(Compilation plain, Compilation made, MendedText mended, SizeLists found, int index)
    {
        var (before, after) = (plain.Pattern.Facts, made.Pattern.Facts);
        foreach (var (path, name, old, origin, from, now) in Worked(before, after))
        {
            var fromTable = from is null && path == "fits" && !old.IsShared && found.From?.Value is not HeaderMap && !found.Lists.Any(l => l.Path.EndsWith("fits." + name.ToLowerInvariant().Replace(' ', '-'), StringComparison.Ordinal) || l.Path == "fits");
            if ((from is not null || fromTable) && now is not null)
            {
                var value = now[index]?.ToString() ?? "–";
                yield return new(plain.LineOf(origin), SizeChangeKind.Follows, path == "numbers" ? name : $"{path}.{name}", "", "", value, from is null ? "by the size table" : $"by its formula: {from.Formula}");
            }
        }

        foreach (var line in found.Called.GroupBy(c => plain.Source.Lines.PositionOf(mended.ToSource(c).Start).Line))
        {
            foreach (var name in line.Select(c => mended.Text.ToString(c).Trim('{', '}')).Distinct(StringComparer.OrdinalIgnoreCase))
            {
                if (after.Numbers.FirstOrDefault(n => string.Equals(n.Name, name, StringComparison.OrdinalIgnoreCase)) is { } number)
                {
                    yield return new(line.Key, SizeChangeKind.Follows, $"{{{name}}}", "", "", number.Values[index]?.ToString() ?? "–", $"from `{name}` of the header");
                }
            }
        }
    }

    private static IEnumerable<(string Path, string Name, PerSize<Quantity?> Old, TextSpan Origin, NumberOrigin? From, PerSize<Quantity?>? Now)> Worked(PatternFacts before, PatternFacts after)
    {
        foreach (var n in before.Numbers)
        {
            yield return ("numbers", n.Name, n.Values, n.Origin, n.WorkedFrom, after.Numbers.FirstOrDefault(a => a.Name == n.Name)?.Values);
        }

        foreach (var m in before.Fits)
        {
            yield return ("fits", m.Name, m.Values, m.Origin, m.WorkedFrom, after.Fits.FirstOrDefault(a => a.Name == m.Name)?.Values);
        }

        foreach (var m in before.Finished)
        {
            yield return ("finished", m.Name, m.Values, m.Origin, m.WorkedFrom, after.Finished.FirstOrDefault(a => a.Name == m.Name)?.Values);
        }
    }
}
