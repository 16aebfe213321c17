using System.Buffers;
using System.Collections.Immutable;
using PatternForge.Core.Drafts;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Sizing;
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

        var mended = DraftReader.Read(plain.Source).Mended; // plans are not yet written out here: the designer's own text
        var found = SizeLists.Find(mended.Text, sizes);
        if (found.Lists.All(l => l.Kind != SizeListKind.Names))
        {
            return new() { Refusal = "the names of the sizes could not be found one by one in the header" };
        }

        var given = new GivenValues(found.Lists, mended.Text);
        foreach (var (name, value) in wish.Given)
        {
            if (given.Take(name, value, plain.Pattern.Facts) is { } reason)
            {
                return new() { Refusal = reason };
            }
        }

        var (index, why) = PlaceOf(wish, sizes, given);
        if (index < 0)
        {
            return new() { Refusal = why };
        }

        var (place, wrong) = given.Place(index, sizes.Count);
        if (place is null)
        {
            return new() { Refusal = wrong };
        }

        var growth = new SourceGrowth(mended, found, sizes, wish.Name, given, StitchMultiples.Of(mended.Text, plain.Pattern.Facts, found.Called, options ?? CompileOptions.Default, cancel));
        if (place == NewPlace.At(index, sizes.Count) && given.Main is null && found.Lists.Any(l => l.Kind == SizeListKind.TableNames) | HasTable(mended.Text))
        {
            place = ByTable(plain, growth.Named(index), place, options, cancel);
        }

        var made = Tried(plain, growth, place, keepsAll: false, options, cancel);
        if (place.IsBetween && made.Errors > 0 && Tried(plain, growth, place, keepsAll: true, options, cancel) is var strict && strict.Errors < made.Errors)
        {
            made = strict;
        }

        var raw = made.Growth.InFile(plain.Source, mended);
        return new()
        {
            Index = index,
            Names = [.. sizes.Names[..index], wish.Name, .. sizes.Names[index..]],
            Changes = [.. made.Growth.Changes.Concat(Following(plain, made.Compilation, mended, found, index)).OrderBy(c => c.Line).ThenBy(c => c.Kind)],
            Source = raw ?? made.Growth.Source.Text,
            CanBeWritten = raw is not null,
            Findings = made.Fresh,
        };
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

    private static (int Index, string? Why) PlaceOf(SizeWish wish, SizeSet sizes, GivenValues given) =>
        wish.Before is { } before ? (sizes.IndexOf(before), null)
        : wish.After is { } after ? (sizes.IndexOf(after) + 1, null)
        : (given.PlaceByMain() ?? SizeOrder.PlaceOf(wish.Name, sizes)) is { } index ? (index, null)
        : (-1, $"the names of the sizes do not tell where `{wish.Name}` belongs: say `--after {sizes.Names[^1]}`, or the like");

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

    private static (SourceGrowth Growth, Compilation Compilation, ImmutableArray<Finding> Fresh, int Errors) Tried(Compilation plain, SourceGrowth growth, NewPlace place, bool keepsAll, CompileOptions? options, CancellationToken cancel)
    {
        var grown = growth.Grow(place, keepsAll);
        var made = Compiler.Compile(grown.Source.Text, options, cancel);
        var known = plain.Findings.Select(f => (f.Rule.Code, f.Span.Start)).ToHashSet();
        var bag = new FindingBag(plain.Source);
        foreach (var finding in made.Findings.Where(f => f.Accepted is null))
        {
            var told = grown.Source.ToSource(finding) with { Fix = null };
            if (!known.Contains((told.Rule.Code, told.Span.Start)) || (told.Sizes.Contains(place.Index) && told.Sizes.Length < plain.Pattern.Facts.Sizes.Count + 1))
            {
                bag.Add(told);
            }
        }

        var fresh = bag.ToSorted();
        return (grown, made, fresh, fresh.Count(f => f.Severity == Severity.Error));
    }

    /// <summary>What needs no hand: formulas of the header, bodies of a size table, and the places that call a number by its name.</summary>
    private static IEnumerable<SizeChange> Following(Compilation plain, Compilation made, MendedText mended, SizeLists found, int index)
    {
        var (before, after) = (plain.Pattern.Facts, made.Pattern.Facts);
        foreach (var (path, name, old, origin, from, now) in Worked(before, after))
        {
            var fromTable = from is null && path == "fits" && !old.IsShared && !found.Lists.Any(l => l.Path.EndsWith("fits." + name.ToLowerInvariant().Replace(' ', '-'), StringComparison.Ordinal) || l.Path == "fits");
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
