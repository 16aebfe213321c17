using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>
/// Makes operations of the stitches that a header defines. What one takes and makes comes from its own <c>takes</c> and <c>makes</c>, else from its
/// "how" in the notation, else from the trade's stitch of the same name or meaning.
/// </summary>
internal static class SpecialStitches
{
    /// <summary>The operations, in the header's order; a definition whose counts cannot be known is left out of the arithmetic by taking and making null.</summary>
    public static ImmutableArray<Operation> Bind(PatternFacts facts, StitchBook book, FindingBag bag, CompileOptions options)
    {
        var operations = ImmutableArray.CreateBuilder<Operation>();
        foreach (var definition in facts.Stitches)
        {
            if (Make(definition, facts, book, options) is { } operation)
            {
                operations.Add(operation);
                Compare(definition, facts, book, bag, options);
                book.Define(operations);
            }
        }

        return operations.ToImmutable();
    }

    /// <summary>What the header says that a knitted stitch takes and makes must be what its "how" does, where that can be read to its end.</summary>
    private static void Compare(StitchDefinition definition, PatternFacts facts, StitchBook book, FindingBag bag, CompileOptions options)
    {
        if (facts.Craft != Craft.Knitting || (definition.Takes is null && definition.Makes is null) || Count(definition.How, facts, book, options) is not var (takes, makes))
        {
            return;
        }

        if ((definition.Takes ?? takes) != takes || (definition.Makes ?? makes) != makes)
        {
            bag.Add(RowRules.StitchDoesOtherwise, definition.Origin, $"`{definition.Name}` is said to take {definition.Takes ?? takes} and make {definition.Makes ?? makes}, but its \"how\" takes {takes} and makes {makes}", "correct the one or the other; the header's numbers were used");
        }
    }

    private static Operation? Make(StitchDefinition definition, PatternFacts facts, StitchBook book, CompileOptions options)
    {
        var known = book.Find(definition.Name) ?? Known(definition.How, book) ?? (definition.FullName is { } full ? Known(full, book) : null);
        var (takes, makes) = (definition.Takes, definition.Makes);
        if ((takes is null || makes is null) && known is not null && IsSaidTwice(definition.How, known, book))
        {
            takes ??= known.Takes;
            makes ??= known.Makes - known.PassesOver;
        }

        if (takes is null || makes is null)
        {
            var counted = Count(definition.How, facts, book, options);
            takes ??= counted?.Takes ?? known?.Takes;
            makes ??= counted?.Makes ?? (known is null ? null : known.Makes - known.PassesOver);
        }

        if (facts.Craft == Craft.Crochet)
        {
            return Crochet(definition, known, facts, book, options);
        }

        if (takes is null || makes is null)
        {
            return null;
        }

        var name = definition.Name.Trim().TrimEnd('.');
        return new Operation
        {
            Id = name,
            Craft = facts.Craft,
            Names = [new OperationName(Dialect.Any, name)],
            Spoken = definition.FullName ?? known?.Spoken ?? name,
            Definition = definition.How,
            Takes = takes.Value,
            Makes = makes.Value,
            Family = known?.Family ?? Family.Special,
            Gives = known?.Gives ?? (takes == 0 ? StitchKind.Increase : takes > makes ? StitchKind.Decrease : StitchKind.Special),
            Difficulty = known?.Difficulty ?? Difficulty.Intermediate,
            Lean = known?.Lean ?? Lean.None,
            Symbol = known?.Symbol,
            IsSpecial = true,
        };
    }

    // "narrow, knit 2 together": two names of one stitch.
    private static bool IsSaidTwice(string words, Operation known, StitchBook book)
    {
        var parts = words.Split([';', ',', '('], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(p => p.TrimEnd(')', '.')).Distinct(StringComparer.OrdinalIgnoreCase).ToArray();
        return parts.Length > 1 && parts.All(p => book.Find(p)?.Id == known.Id);
    }

    // "knit 2 together", "narrow, knit 2 together", "narrow (k2tog)": the one part that the trade knows.
    private static Operation? Known(string words, StitchBook book)
    {
        var parts = words.Split([';', ',', '.', '(', ')', '='], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return parts.Length == 0 ? null : book.Find(parts[0]) ?? (parts.Select(book.Find).OfType<Operation>().ToArray() is [var only] ? only : null);
    }

    /// <summary>"shell" of "beg shell"; null for other names.</summary>
    public static string? BeginningOf(string name)
    {
        foreach (var word in (ReadOnlySpan<string>)["beginning", "begin", "starting", "start", "beg", "first"])
        {
            if (name.Length > word.Length + 1 && name.StartsWith(word, StringComparison.OrdinalIgnoreCase) && name[word.Length] is ' ' or '-' or '.')
            {
                return name[(word.Length + 1)..].Trim();
            }
        }

        return null;
    }

    private static readonly string[] OneStitchWords = ["together", "tog", "bobble", "popcorn", "cluster", "puff", "dec", "decrease", "post", "one loop"];

    /// <summary>A crochet stitch of the pattern: a group of stitches in one place, or one stitch.</summary>
    private static Operation Crochet(StitchDefinition definition, Operation? known, PatternFacts facts, StitchBook book, CompileOptions options)
    {
        var name = definition.Name.Trim().TrimEnd('.');
        var operation = new Operation
        {
            Id = name,
            Craft = Craft.Crochet,
            Names = [new OperationName(Dialect.Any, name)],
            Spoken = definition.FullName ?? name,
            Definition = definition.How,
            Takes = definition.Takes ?? known?.Takes ?? (definition.How.Contains("2 sts to 1", StringComparison.OrdinalIgnoreCase) ? 2 : 1),
            Makes = definition.Makes ?? known?.Makes ?? 1,
            Family = known?.Family ?? Family.Special,
            Gives = known?.Gives ?? StitchKind.Crochet,
            Height = known?.Height,
            CountsAs = BeginningOf(name) ?? known?.CountsAs ?? known?.Id,
            Difficulty = Difficulty.Intermediate,
            Symbol = known?.Symbol,
            IsSpecial = true,
        };
        if (OneStitchWords.Any(word => definition.How.Contains(word, StringComparison.OrdinalIgnoreCase)) || definition.Makes == 1)
        {
            return operation;
        }

        var source = new SourceText("", definition.How);
        var bag = new FindingBag(source);
        var context = new RowContext(source, facts with { Sizes = SizeSet.One }, book, bag, options) { RowEnd = int.MaxValue };
        if (Picots.Read(definition, context, options) is { } picot)
        {
            book.DefineShell(name, picot);
            return operation with { Takes = 0, Makes = 0 };
        }

        var nodes = RowParser.ParseSteps(source, new TextSpan(0, definition.How.TrimEnd('.', ' ').Length), bag, options.MaxDepth);
        var body = RowBinder.Bind(nodes, context);
        var said = body.Steps.RemoveAll(s => s is SentenceStep or RemarkStep);
        var parts = said is [ShellStep shell] ? shell.Body : said is [GroupStep { Times: null } group] ? group.Body : said is [ChainStep begins, ShellStep { Place.Kind: PlaceKind.Same or PlaceKind.Next } rest] ? rest.Body.Insert(0, begins) : said;
        if (bag.Count == 0 && parts.Length > 0 && parts.All(s => s is CrochetStep or ChainStep or GroupStep) && parts.Any(s => s is CrochetStep) && !parts.Any(s => s is CrochetStep { Place: { Kind: PlaceKind.Next, Thing.Kind: ThingKind.Space } }))
        {
            book.DefineShell(name, parts);
        }
        else if (bag.Count == 0 && !body.HasUnread && SeveralPlaces.Of(parts) is var (places, stitches) && places > 1)
        {
            book.DefineShell(name, parts);
            return operation with { Takes = definition.Takes ?? places, Makes = definition.Makes ?? stitches };
        }

        return operation;
    }

    /// <summary>Works the "how" once: what its steps take and make. Null when it cannot be read as notation.</summary>
    private static (int Takes, int Makes)? Count(string how, PatternFacts facts, StitchBook book, CompileOptions options)
    {
        var source = new SourceText("", how);
        var bag = new FindingBag(source);
        var nodes = RowParser.ParseSteps(source, new TextSpan(0, how.Length), bag, options.MaxDepth);
        var context = new RowContext(source, facts with { Sizes = SizeSet.One }, book, bag, options) { RowEnd = int.MaxValue };
        var body = RowBinder.Bind(nodes, context);
        if (bag.Count > 0 || body.HasUnread || body.Steps.IsEmpty)
        {
            return null;
        }

        var (takes, makes) = (0, 0);
        var known = true;
        Add(body.Steps, 1, ref takes, ref makes, ref known);
        return known && takes is >= 0 and < 1000 && makes is >= 0 and < 1000 && takes + makes > 0 ? (takes, makes) : null;
    }

    private static void Add(ImmutableArray<Step> steps, int times, ref int takes, ref int makes, ref bool known)
    {
        foreach (var step in steps)
        {
            switch (step)
            {
                case OperationStep operation:
                    var n = times * Math.Clamp(operation.Times?[0] ?? 1, 0, 1000);
                    takes += n * operation.Operation.Takes;
                    makes += n * (operation.Operation.Makes - operation.Operation.PassesOver);
                    break;
                case IncreaseStep increase:
                    takes += times * (increase.Times?[0] ?? 1);
                    makes += 2 * times * (increase.Times?[0] ?? 1);
                    break;
                case CableNeedleStep { WorkedAs: null } hold:
                    takes += hold.Stitches?[0] ?? 0;
                    break;
                case CableNeedleStep worked:
                    makes += worked.Stitches?[0] ?? 0;
                    break;
                case GroupStep group:
                    Add(group.Body, times * Math.Clamp(group.Times?[0] ?? 1, 0, 1000), ref takes, ref makes, ref known);
                    break;
                case InOneStitchStep one:
                    var (innerTakes, innerMakes) = (0, 0);
                    Add(one.Body, 1, ref innerTakes, ref innerMakes, ref known);
                    takes += times;
                    makes += times * innerMakes;
                    break;
                case RemarkStep or MarkerStep or SentenceStep or TurnStep or SlideStep:
                    break;
                default:
                    known = false;
                    break;
            }

            if (takes > 100_000 || makes > 100_000)
            {
                known = false;
                return;
            }
        }
    }
}
