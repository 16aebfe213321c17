using System.Collections.Immutable;
using PatternForge.Core.Editions;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;
using PatternForge.Core.Yarns;

namespace PatternForge.Core;

/// <summary>An edition of a pattern: its source, what the compiler made of that, and what is to be told of it.</summary>
/// <param name="Edition">Which.</param>
/// <param name="Source">The rewritten source.</param>
/// <param name="Compilation">That source compiled; null when the edition cannot be made.</param>
/// <param name="Findings">What is found in this edition and not in the pattern as it is written, at the places of the designer's file.</param>
public sealed record EditionCompilation(Edition Edition, RewrittenSource Source, Compilation? Compilation, ImmutableArray<Finding> Findings)
{
    /// <summary>True when an error stands that the pattern as it is written does not have.</summary>
    public bool HasErrors => Findings.Any(f => f.Severity == Severity.Error && f.Accepted is null);

    /// <summary>The lines of this edition in the order of those of the pattern as it is written; null for one that the edition has not.</summary>
    /// <param name="plain">The pattern as it is written.</param>
    public ImmutableArray<WorkedLine?> LinesOf(Compilation plain)
    {
        if (Compilation is not { } made)
        {
            return [.. plain.Lines.Select(_ => (WorkedLine?)null)];
        }

        var own = new Dictionary<int, WorkedLine>();
        foreach (var line in made.Lines)
        {
            own.TryAdd(PlaceOf(line.Origin).Start, line);
        }

        // A label that was taken from before a row moves its beginning, though not the place of what was left.
        return [.. plain.Lines.Select(l => own.TryGetValue(l.Origin.Start, out var line) ? line : made.Lines.FirstOrDefault(o => l.Origin.Contains(PlaceOf(o.Origin))))];
    }

    /// <summary>The place in the pattern as it was read of a place in this edition as it was read.</summary>
    public TextSpan PlaceOf(TextSpan span) => Compilation is { } made ? Source.ToRead(made.Text.ToSource(span)) : span;
}

/// <summary>Makes editions of compiled patterns: rewrites, compiles what was rewritten, and holds it against the pattern as it is written.</summary>
public static class EditionCompiler
{
    private const int MostTries = 12;

    /// <summary>Makes one edition.</summary>
    /// <param name="plain">The pattern as it is written.</param>
    /// <param name="edition">The edition.</param>
    /// <param name="options">Limits; the defaults when null.</param>
    /// <param name="cancel">Stops the work early.</param>
    public static EditionCompilation Compile(Compilation plain, Edition edition, CompileOptions? options = null, CancellationToken cancel = default)
    {
        if (edition is CombinedEdition combined)
        {
            return Chain(plain, combined, options, cancel);
        }

        var source = edition.Rewrite(plain);
        if (source.IsRefused)
        {
            return new(edition, source, null, source.Findings);
        }

        if (edition.Stage == EditionStage.Page)
        {
            return new(edition, source, plain with { Edition = edition.FormOf(plain) }, source.Findings); // its words are the pattern's own
        }

        if (options is { Checking: Checking.RowsAlone } && edition.KeepsSteps && RewordedPattern.Of(plain, source.Mended, options, cancel) is { } same)
        {
            return new(edition, source, same with { Edition = edition.FormOf(plain) }, source.Findings);
        }

        for (var tries = 1; ; tries++)
        {
            var made = WithAmounts(Compiler.Compile(source.Text, options, cancel), plain, options) with { Edition = edition.FormOf(plain) };
            var fresh = Fresh(plain, edition, source, made);
            var differing = (edition.OnlySize(plain) is { } size ? DifferingIn(size, plain, source, made) : Differing(plain, source, made)).ToArray();
            if (edition.MayLeaveLines && tries < MostTries && Unsaid(plain, differing, fresh, isLast: tries == MostTries - 1) is { Length: > 0 } lines)
            {
                source = source.Without([.. lines.Select(l => l.Origin)]);
                foreach (var line in lines)
                {
                    source = source.With(Edition.Say(plain, edition, EditionRules.LineLeft, TextSpan.FromBounds(TextStart(plain, line), line.Origin.End), "this line stands as it was written: in words alone it would not be read as the same stitches", null));
                }

                continue;
            }

            if (edition.KeepsSteps && differing.Length == 0 && RewordedPattern.HasSamePieces(plain.Pattern, made.Pattern.Sections))
            {
                made = made with { LazyOutlines = plain.LazyOutlines, LazyYarn = plain.LazyYarn }; // by the lengths as they were measured, not by rounded ones
            }

            var told = differing.Select(d => Edition.Say(plain, edition, EditionRules.NotPossible, d.Line.Origin, d.What, edition.OnlySize(plain) is null ? "say this line in words that have one meaning in both; the line as it is written comes out" : "the step that this size leaves out cannot be taken from these words: give it a line or a bracket of its own"));
            return new(edition, source, made, Sorted(plain, [.. source.Findings, .. told, .. fresh.Where(f => differing.Length == 0 || f.Severity != Severity.Error)]));
        }
    }

    /// <summary>Where nothing but rows is worked, the amounts that the stitches take are those of the pattern as it is written: they are the same stitches.</summary>
    private static Compilation WithAmounts(Compilation made, Compilation plain, CompileOptions? options)
    {
        var (own, written) = (made.Pattern.Facts, plain.Pattern.Facts);
        return options is not { Checking: Checking.RowsAlone } || own.Sizes.Count != written.Sizes.Count ? made : made with { LazyYarn = plain.LazyYarn, Pattern = made.Pattern with { Facts = FilledNeeds.As(own, written) } };
    }

    /// <summary>Several editions in one: each is made of what the one before it came to, and what is found is told at the places of the file.</summary>
    private static EditionCompilation Chain(Compilation plain, CombinedEdition edition, CompileOptions? options, CancellationToken cancel)
    {
        var (current, source) = (plain, new RewrittenSource(plain.Text, [], []));
        RewrittenSource? before = null;
        var findings = new List<Finding>();
        foreach (var part in edition.InOrder)
        {
            var made = Compile(current, part, options, cancel);
            findings.AddRange(made.Findings.Select(f => InCombined(before is null ? f : before.ToSource(f), part, edition)));
            if (part.Stage != EditionStage.Page)
            {
                source = before is null ? made.Source : made.Source.After(before);
                before = source;
            }

            if (made.Compilation is not { } compiled)
            {
                return new(edition, source, null, Sorted(plain, findings));
            }

            current = compiled;
        }

        return new(edition, source, current with { Edition = edition.FormOf(plain) }, Sorted(plain, findings));
    }

    private static Finding InCombined(Finding finding, Edition part, Edition whole)
    {
        var lead = $"in the edition `{part.Name}`, ";
        return finding with { Edition = whole.Name, Message = finding.Message.StartsWith(lead, StringComparison.Ordinal) ? $"in the edition `{whole.Name}`, {finding.Message[lead.Length..]}" : finding.Message };
    }

    /// <summary>The editions that a pattern's header asks for.</summary>
    public static IEnumerable<Edition> Released(Compilation plain) => plain.Pattern.Facts.Release.Select(r => Edition.Find(r.Value)).OfType<Edition>().Where(e => e.Exists(plain.Pattern.Facts.Sizes)).SelectMany(e => e.For(plain)).Distinct();

    /// <summary>All that is found in a pattern and in the editions that its header asks for.</summary>
    public static ImmutableArray<Finding> WithEditions(Compilation plain, IEnumerable<EditionCompilation> editions)
    {
        var all = editions.SelectMany(e => e.Findings).ToArray();
        return all.Length == 0 ? plain.Findings : Sorted(plain, [.. plain.Findings, .. all]);
    }

    private static ImmutableArray<Finding> Sorted(Compilation plain, IEnumerable<Finding> findings)
    {
        var bag = new FindingBag(plain.Source);
        foreach (var finding in findings)
        {
            bag.Add(finding);
        }

        return bag.ToSorted();
    }

    /// <summary>What the edition has and the pattern has not, told at the places of the file. A repair of the edition's text is none of the file.</summary>
    private static Finding[] Fresh(Compilation plain, Edition edition, RewrittenSource source, Compilation made)
    {
        var known = plain.Findings.Select(f => (f.Rule.Code, f.Span.Start)).ToHashSet();
        return
        [
            .. made.Findings.Select(source.Mended.ToSource)
                .Where(f => !known.Contains((f.Rule.Code, f.Span.Start)) && f.Accepted is null && f.Rule.Code is not ("PF407" or "PF142" or "PF420" or "PF421" or "PF441"))
                .Select(f => f with { Message = $"in the edition `{edition.Name}`, {f.Message}", Fix = null, Edition = edition.Name }),
        ];
    }

    /// <summary>The lines that do not come to the same, with what they come to.</summary>
    private static IEnumerable<(WorkedLine Line, bool IsRead, string What)> Differing(Compilation plain, RewrittenSource source, Compilation made)
    {
        var places = made.Lines.Select(l => source.ToRead(made.Text.ToSource(l.Origin)).Start).ToArray();
        var at = 0;
        foreach (var line in plain.Lines)
        {
            var place = line.Origin.Start;
            while (at < places.Length && places[at] < place)
            {
                at++;
            }

            if (at >= places.Length || places[at] != place)
            {
                yield return (line, false, "this line is no longer read as an instruction");
                continue;
            }

            var other = made.Lines[at++];
            if (other.Status > line.Status)
            {
                yield return (line, false, "this line is no longer understood");
            }
            else if (line.Status == LineStatus.Checked && (!line.Before.SequenceEqual(other.Before) || !line.After.SequenceEqual(other.After) || !SameKinds(line, other)))
            {
                yield return (line, true, $"this line comes to {Told(other.After)} and not to {Told(line.After)}");
            }
        }
    }

    /// <summary>The same for an edition of one size: lines that this size does not work may be gone.</summary>
    private static IEnumerable<(WorkedLine Line, bool IsRead, string What)> DifferingIn(int size, Compilation plain, RewrittenSource source, Compilation made)
    {
        var others = made.Lines.ToLookup(l => source.ToRead(made.Text.ToSource(l.Origin)).Start);
        foreach (var line in plain.Lines)
        {
            // A label that was taken from before a row moves its beginning, though not the place of what was left.
            var place = line.Origin;
            var other = others[place.Start].FirstOrDefault() ?? made.Lines.FirstOrDefault(l => place.Contains(source.ToRead(made.Text.ToSource(l.Origin))));
            if (other is null)
            {
                if (line.After[size] is not null && line.After[size] != line.Before[size])
                {
                    yield return (line, false, "this line is no longer read as an instruction");
                }
            }
            else if (other.Status > line.Status)
            {
                yield return (line, false, "this line is no longer understood");
            }
            else if (line.Status == LineStatus.Checked && line.After[size] is not null
                && (line.Before[size] != other.Before[0] || line.After[size] != other.After[0] || !SameKindsIn(line, size, other)))
            {
                yield return (line, true, $"this line comes to {Told(other.After)} and not to {Told([line.After[size]])}");
            }
        }
    }

    private static bool SameKindsIn(WorkedLine line, int size, WorkedLine other) =>
        line.Kinds.IsEmpty || other.Kinds.IsEmpty ? line.Kinds.IsEmpty == other.Kinds.IsEmpty : line.Kinds[size].Values.Order().SequenceEqual(other.Kinds[0].Values.Order());

    private static bool SameKinds(WorkedLine line, WorkedLine other) =>
        line.Kinds.Length == other.Kinds.Length && line.Kinds.Zip(other.Kinds).All(pair => pair.First.Values.Order().SequenceEqual(pair.Second.Values.Order()));

    private static string Told(ImmutableArray<int?> counts) => string.Join(", ", counts.Select(c => c?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "–")) + " sts";

    /// <summary>The lines to leave as they are: those that are no longer understood or have something new found in them, else the first that comes to something else, from which those after it may follow.</summary>
    private static WorkedLine[] Unsaid(Compilation plain, (WorkedLine Line, bool IsRead, string What)[] differing, Finding[] fresh, bool isLast)
    {
        var lines = new HashSet<WorkedLine>(differing.Where(d => isLast || !d.IsRead).Select(d => d.Line));
        var found = fresh.Where(f => f.Severity != Severity.Note || f.Rule.Code == "PF208").ToArray();
        if (found.Length > 0)
        {
            lines.UnionWith(plain.Lines.Where(l => plain.Text.ToSource(l.Origin) is var place && Array.Exists(found, f => place.Contains(f.Span))));
        }

        if (lines.Count == 0 && differing.Length > 0)
        {
            lines.Add(differing[0].Line);
        }

        return [.. lines.OrderBy(l => l.Index)];
    }

    private static int TextStart(Compilation plain, WorkedLine line)
    {
        var text = plain.Text.Text.Slice(line.Origin);
        var colon = line.Label.Length > 0 ? text.IndexOf(':') : -1;
        return line.Origin.Start + (colon < 0 ? 0 : colon + 1 + (text.Length - colon - 1 - text[(colon + 1)..].TrimStart().Length));
    }
}
