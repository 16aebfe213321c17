using System.Collections.Immutable;
using PatternForge.Core.Checks;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Shapes;

/// <summary>Makes the outline of each piece out of its worked rows and its gauge, where every row of it is known.</summary>
public static class OutlineMaker
{
    private const int MostLines = 2_000;

    /// <summary>The outline of every piece, in the order of the source; those that cannot be drawn say why.</summary>
    /// <param name="context">The worked pattern.</param>
    /// <param name="bound">Its lines as they are written.</param>
    public static ImmutableArray<PieceOutline> Of(CheckContext context, ImmutableArray<BoundLine> bound)
    {
        var outlines = ImmutableArray.CreateBuilder<PieceOutline>();
        var pieces = PieceLines.Of(context.Pattern, bound, context.Lines);
        var tallies = new Lazy<ImmutableArray<LineTally>>(() => PatternWorker.Tally(bound, context.Facts, new FindingBag(context.Source), CompileOptions.Default));
        foreach (var piece in pieces)
        {
            outlines.Add(One(context, piece, tallies, isOnly: pieces.Length == 1));
        }

        return outlines.ToImmutable();
    }

    private static PieceOutline One(CheckContext context, ShapedPiece piece, Lazy<ImmutableArray<LineTally>> tallies, bool isOnly)
    {
        var lines = piece.Lines;
        string[] headings = [.. lines.Select(l => l.Worked.Piece).Where(h => h.Length > 0).Distinct(StringComparer.Ordinal)];
        var tops = context.Pattern.Sections.Where(s => s.Level <= 2 && headings.Contains(s.Heading, StringComparer.Ordinal)).Select(s => s.Heading).Distinct(StringComparer.Ordinal).Count();
        var name = tops > 1 && isOnly ? context.Facts.Title?.Value : headings.FirstOrDefault();
        var rows = lines[1..];
        var isRound = rows.All(l => l.Worked.InTheRound == true);
        var outline = new PieceOutline
        {
            Name = string.IsNullOrWhiteSpace(name) ? "Piece" : name.Trim(),
            Headings = [.. headings],
            Origin = lines[0].Worked.Origin,
            View = isRound ? OutlineView.Tube : OutlineView.Flat,
        };
        var gauge = GaugeOf(context, headings);
        var sock = isRound || context.Facts.Craft != Stitches.Craft.Knitting ? null : SockWalk.PartsOf(lines);
        var isShortRowSock = !isRound && sock is null && context.Facts.Craft == Stitches.Craft.Knitting && lines.Length <= MostLines && rows.Any(l => l.Worked.InTheRound == true) && ShortRowSockWalk.Fits(lines, tallies.Value, context.Facts.Sizes.Count);
        var reason = gauge is null ? context.Facts.Gauges.IsEmpty ? "the header has no gauge" : "it is not said which gauge holds for it"
            : gauge.StitchesPerCm is not > 0 ? "the gauge does not say how many stitches a centimetre has"
            : lines.Length > MostLines ? "it has too many lines"
            : piece.IsJoined ? "it joins a back, a front and sleeves that lie flat by themselves, and has no flat outline of its own"
            : piece.Join > 0 && !isRound ? "its yoke joins the body and the sleeves, and not all of it is worked in the round"
            : !isRound && sock is null && !isShortRowSock && rows.Any(l => l.Worked.InTheRound == true) ? "it is worked partly flat and partly in the round"
            : null;
        if (reason is not null)
        {
            return outline with { Reason = reason };
        }

        if (isRound && context.Facts.Craft != Stitches.Craft.Knitting)
        {
            return Round(context, lines, gauge!, outline);
        }

        if (sock is { } parts)
        {
            return Sock(context, gauge!, outline, size =>
            {
                var walk = new SockWalk(piece, parts, size, context.Facts.Sizes.Count, gauge!);
                return (walk.Go(), walk.Reason);
            });
        }

        if (isShortRowSock)
        {
            return Sock(context, gauge!, outline, size =>
            {
                var walk = new ShortRowSockWalk(piece, tallies.Value, size, context.Facts.Sizes.Count, gauge!);
                return (walk.Go(), walk.Reason);
            });
        }

        if (isRound && piece.Join > 0)
        {
            return YokeUp(context, piece, gauge!, outline);
        }

        var isFlatYoke = !isRound && rows.All(l => l.Worked.InTheRound != true) && context.Facts.Craft == Stitches.Craft.Knitting && rows.Any(l => l.Worked.Sections is { IsEmpty: false } s && s.Any(o => o.Length == 5));
        if ((isRound || isFlatYoke) && YokeWalk.DivisionOf(lines) is > 0 and var divide)
        {
            return Yoke(context, piece, divide, gauge!, outline, isFlatYoke);
        }

        var isDownward = piece.IsFromHeld && (outline.Name.Contains("sleeve", StringComparison.OrdinalIgnoreCase) || outline.Name.Contains("leg", StringComparison.OrdinalIgnoreCase));
        var sizes = ImmutableArray.CreateBuilder<SizeOutline>();
        for (var size = 0; size < context.Facts.Sizes.Count; size++)
        {
            var walk = new OutlineWalk(piece, size, context.Facts.Sizes.Count, gauge!, isRound);
            if (walk.Go() is not { } made)
            {
                var which = context.Facts.Sizes.Count > 1 ? $" (size {context.Facts.Sizes.Names[size]})" : "";
                return outline with { Reason = walk.Reason + which };
            }

            made = piece.IsMirrored ? made.Mirrored() : made;
            sizes.Add(isDownward && made.Arms.IsEmpty ? made.UpsideDown() : made);
        }

        return !AreAlike(sizes)
            ? outline with { Reason = "its sizes are not worked in the same rows" }
            : sizes.All(s => s.TopCm <= 0) ? outline with { Reason = "it has no rows" }
            : outline with { Gauge = gauge, Sizes = sizes.ToImmutable(), Measures = OutlineMeasures.Of(outline.Name, isRound, sizes.ToImmutable()) };
    }

    private static PieceOutline Sock(CheckContext context, Gauge gauge, PieceOutline outline, Func<int, (SizeOutline? Outline, string? Reason)> walk)
    {
        var sizes = ImmutableArray.CreateBuilder<SizeOutline>();
        outline = outline with { Name = outline.Headings.Length > 1 ? "Sock" : outline.Name };
        for (var size = 0; size < context.Facts.Sizes.Count; size++)
        {
            var (made, reason) = walk(size);
            if (made is null)
            {
                return outline with { Reason = reason };
            }

            sizes.Add(made);
        }

        return !AreAlike(sizes) ? outline with { Reason = "its sizes are not worked in the same rows" } : outline with { View = OutlineView.Sock, Gauge = gauge, Sizes = sizes.ToImmutable(), Measures = SockWalk.Measures(sizes.ToImmutable()) };
    }

    private static PieceOutline Yoke(CheckContext context, ShapedPiece piece, int divide, Gauge gauge, PieceOutline outline, bool isOpen)
    {
        var name = outline.Headings is [.., var one, var other] ? $"{one} and {other.ToLowerInvariant()}" : outline.Name;
        return Yoke(context, gauge, outline with { Name = name }, isOpen, size =>
        {
            var walk = new YokeWalk(piece, divide, size, context.Facts.Sizes.Count, gauge, isOpen);
            return new(walk.Go(), walk.Reason, walk.Underarm, walk.NeckCm);
        });
    }

    private static PieceOutline YokeUp(CheckContext context, ShapedPiece piece, Gauge gauge, PieceOutline outline)
    {
        var name = outline.Headings is [var one, .., var other] ? $"{one} and {other.ToLowerInvariant()}" : outline.Name;
        return Yoke(context, gauge, outline with { Name = name }, isOpen: false, size =>
        {
            var walk = new YokeUpWalk(piece, size, context.Facts.Sizes.Count, gauge);
            return new(walk.Go(), walk.Reason, walk.Underarm, walk.NeckCm);
        });
    }

    // A yoke in every size, whichever way it is worked: a reason in place of the outline where one size has none, or where they do not agree in their rows.
    private static PieceOutline Yoke(CheckContext context, Gauge gauge, PieceOutline outline, bool isOpen, Func<int, WalkedYoke> walk)
    {
        var sizes = ImmutableArray.CreateBuilder<SizeOutline>();
        var walks = new List<WalkedYoke>();
        for (var size = 0; size < context.Facts.Sizes.Count; size++)
        {
            var walked = walk(size);
            if (walked.Outline is not { } made)
            {
                return outline with { Reason = walked.Reason };
            }

            walks.Add(walked);
            sizes.Add(made);
        }

        var all = sizes.ToImmutable();
        return !AreAlike(sizes) || walks.Exists(w => w.Underarm != walks[0].Underarm)
            ? outline with { Reason = "its sizes are not worked in the same rows" }
            : outline with { View = isOpen ? OutlineView.OpenYoke : OutlineView.Yoke, Gauge = gauge, Sizes = all, Measures = YokeWalk.Measures(all, [.. walks.Select(w => w.NeckCm)], walks[0].Underarm, isOpen) };
    }

    /// <summary>A yoke in one size: its outline, or the reason why there is none.</summary>
    private readonly record struct WalkedYoke(SizeOutline? Outline, string? Reason, int Underarm, decimal NeckCm);

    private static PieceOutline Round(CheckContext context, ImmutableArray<ShapedLine> lines, Gauge gauge, PieceOutline outline)
    {
        var sizes = ImmutableArray.CreateBuilder<SizeOutline>();
        bool? flat = null;
        for (var size = 0; size < context.Facts.Sizes.Count; size++)
        {
            var (made, isFlat, reason) = RoundProfile.Of(lines, size, gauge);
            if (made is null || (flat ?? isFlat) != isFlat)
            {
                return outline with { Reason = reason ?? "it lies flat in some sizes and not in others" };
            }

            flat = isFlat;
            sizes.Add(made);
        }

        if (!AreAlike(sizes))
        {
            return outline with { Reason = "its sizes have different numbers of rounds" };
        }

        var all = sizes.ToImmutable();
        return outline with { View = flat == true ? OutlineView.Circle : OutlineView.Side, Gauge = gauge, Sizes = all, Measures = RoundProfile.Measures(all, flat == true, gauge) };
    }

    private static bool AreAlike(ImmutableArray<SizeOutline>.Builder sizes) =>
        sizes.All(s => s.Levels.Length == sizes[0].Levels.Length && s.Arms.Length == sizes[0].Arms.Length && s.Arms.Select(a => a.Length).SequenceEqual(sizes[0].Arms.Select(a => a.Length)));

    /// <summary>The only gauge, or the only one that is no ribbing; else the one that the headings' words speak of.</summary>
    private static Gauge? GaugeOf(CheckContext context, string[] headings)
    {
        Gauge[] plain = [.. context.Facts.Gauges.Where(g => g.Stitch?.Contains("rib", StringComparison.OrdinalIgnoreCase) != true)];
        if (plain.Length == 1)
        {
            return plain[0];
        }

        Gauge?[] spoken = [.. headings.Select(h => PieceWidth.GaugeOf(context, null, h)).Distinct()];
        return spoken.Length == 1 ? spoken[0] : null;
    }
}
