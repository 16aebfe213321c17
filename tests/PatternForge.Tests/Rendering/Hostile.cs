using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using static PatternForge.Tests.Rendering.HandMade;

namespace PatternForge.Tests.Rendering;

/// <summary>Patterns in which every field that a designer can write holds a given text.</summary>
internal static class Hostile
{
    /// <summary>A pattern with every field filled by the next text that is handed out.</summary>
    public static Compilation Fill(Func<string> next)
    {
        var made = new HandMade();
        for (var level = 0; level <= 4; level++)
        {
            made.Heading(next(), next(), level).Prose(next()).Row(next(), next(), [1, 2], [3, 4], [3, 4], [1, 2, 3]).Row("", next()).Fenced(next(), next());
        }

        foreach (var role in new[] { "about", "construction", "sizes", "yarn", "tools", "gauge", "abbreviations", "photos", "videos", "care", "contact", "terms-of-use", "thanks", "other-designs" })
        {
            made.Heading(next(), role).Prose(next());
        }

        made.Row(next(), next(), [1, 2], [3, 4], [3, 4], [1], [Kind(next()), Kind(next())]);
        made.Abbreviations = [Short(next(), next(), false), Short(next(), next(), true)];
        made.Facts = Facts(next);
        return made.Compile(next());
    }

    private static ImmutableSortedDictionary<string, int> Kind(string name) =>
        new Dictionary<string, int>(StringComparer.Ordinal) { [name] = 2, [name + "x"] = 3 }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    private static PatternFacts Facts(Func<string> next) => new()
    {
        Title = new Located<string>(next(), default),
        Designer = next(),
        Version = next(),
        Date = next(),
        Terms = new Located<Dialect>(Dialect.Uk, default),
        Level = new Located<Level>(Level.Complex, default),
        LevelReason = next(),
        Techniques = [new Located<string>(next(), default), new Located<string>(next(), default)],
        Shown = new Shown(next(), next(), default),
        Care = [new CareEntry(CareKind.ProfessionalCare, next(), default), new CareEntry(null, next(), default)],
        Audience = new Located<Audience>(Audience.Youths, default),
        Summary = next(),
        Sizes = new SizeSet([next(), next()]) { Word = next() },
        Fits = [new Measurement(next(), Each(Cm, 1, 2), default)],
        Finished = [new Measurement(next(), PerSize.Each<Quantity?>([new Quantity(1, new Unit(next(), Dimension.Count, 1)), null]), default)],
        Ease = next(),
        Measured = [new MeasuredPieces(next(), [], false, next(), next(), default)],
        Seam = 1,
        BandOverlap = PerSize.Shared<Quantity?>(Cm(3)),
        Gauges = [new Gauge(default) { Name = next(), Stitch = next(), Stitches = 20, Rows = 20, Width = Cm(10), Height = In(4), Tool = next(), Blocked = false }, new Gauge(default) { Stitch = next() }],
        GaugeRemark = next(),
        Yarns =
        [
            new Yarn(default)
            {
                Name = next(), Label = next(), Fibre = next(), Weight = next(), WeightClass = 9, PutUpMass = G(50), PutUpLength = M(100),
                Needs = PerSize.Each<Quantity?>([new Quantity(2, new Unit(next(), Dimension.Count, 1)), M(3)]), Colours = [next(), next()],
                Alternatives = [new YarnAlternative(next(), next(), G(100), M(90), default)],
            },
            new Yarn(default) { Name = next(), Needs = Each(M, 100, 200) },
        ],
        Tools = [new Item(next(), next(), default)],
        Notions = [new Item(next(), next(), default)],
        Stitches = [new StitchDefinition(next(), next(), next(), 1, 1, default)],
        Notes = [new Located<string>(next(), default)],
        Sample = new Sample(next(), G(88), default),
        Swatch = new Swatch(default) { WeighsBy = [new YarnUsed(next(), G(12)!, default)] },
        YarnMargin = 0.2m,
        Photos = [new Photo(next(), next(), next(), default), new Photo(next(), null, null, default)],
        Videos = [new Link(next(), next(), default)],
        Links = [new Link(next(), next(), default)],
        Charts = [new NamedNumber(next(), PerSize.Shared<Quantity?>(new Quantity(8, new Unit("", Dimension.Count, 1))), default)],
        Contact = next(),
        Corrections =
        [
            new ReleasedCorrection(default) { Version = new Located<string>(next(), default), Date = new Located<string>(next(), default), Rows = next(), Text = next(), Sizes = [new Located<string>(next(), default), new Located<string>(next(), default)] },
            new ReleasedCorrection(default) { Text = next() },
        ],
    };
}
