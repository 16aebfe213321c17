using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads the header's nodes into typed facts. What cannot be made out is a finding at its place; the rest still binds.</summary>
public static class HeaderBinder
{
    private static readonly KeySet Keys = new(
        "", "title", "designer|design-by|author", "version", "date", "craft", "terms", "level|difficulty", "level-reason", "audience|wearer|wearers", "techniques|technique|skills", "summary|description",
        "sizes|size", "fits|to-fit", "finished|finished-measurements|measurements", "ease", "measured", "seam|seams", "band-overlap|overlap", "gauge|tension", "yarn|yarns", "tools|tool", "needles|needle", "hook|hooks", "notions|materials",
        "stitches|special-stitches", "abbreviations", "numbers", "notes|note", "charts", "sample", "swatch", "yarn-margin|margin", "shown", "care", "photos|photo", "videos|video", "links|link", "contact", "corrections|errata", "omit", "release|editions", "paper|paper-size");

    /// <summary>Parts of a pattern that may be left out on purpose, in the words of `omit`.</summary>
    public static ImmutableArray<string> Parts { get; } =
    [
        "title", "designer", "version", "date", "summary", "level", "level-reason", "audience", "techniques", "sizes", "fits", "finished", "ease", "measured", "gauge", "gauge-stitch", "gauge-tool", "gauge-size", "gauge-state",
        "yarn", "fibre", "weight", "put-up", "needs", "alternatives", "tools", "notions", "terms", "abbreviations", "sample", "shown", "photos", "videos", "links", "contact", "about", "construction",
        "lengthening", "instructions", "schematic", "chart", "charts", "stripes", "notes", "blocking", "finishing", "care", "cautions", "styling", "terms-of-use", "corrections", "thanks", "commissions", "designs",
    ];

    /// <summary>Binds the header; without one the facts are empty. What it does not say is taken from the house.</summary>
    public static PatternFacts Bind(HeaderNode? header, SourceText source, FindingBag bag, House? house = null, Func<string, string?>? readFile = null)
        => Bind(header, new HeaderContext(source, bag) { ReadFile = readFile }, house);

    /// <summary>Binds the header in a context of its own, which afterwards knows the sizes and the numbers.</summary>
    internal static PatternFacts Bind(HeaderNode? header, HeaderContext context, House? house)
    {
        if (header is not HeaderMap map)
        {
            return new PatternFacts();
        }

        foreach (var damaged in map.Damaged)
        {
            context.Damage(Keys.Find(damaged) ?? KeySet.Plain(damaged));
        }

        var facts = new PatternFacts { HeaderOrigin = OpeningLine(context.Source, map.Span) };
        var entries = context.Known(map, Keys).ToArray();

        context.Numbers = new NumberBook(context, entries);

        // The sizes come first, wherever they stand: every list of values is counted by them.
        foreach (var (_, entry) in entries.Where(e => e.Key == "sizes"))
        {
            facts = SizesBinder.Bind(context, entry, facts, CompileOptions.Default.MaxSizes);
        }

        if (context.HasGivenUp("sizes"))
        {
            context.SizesKnown = false;
        }

        foreach (var (key, entry) in entries.Where(e => e.Key != "sizes"))
        {
            facts = One(context, key, entry, facts);
        }

        facts = facts with { Unread = context.Unread };
        return house is null || house.DefaultKeys.IsEmpty ? facts : HouseDefaults.Apply(facts, house, [.. entries.Select(e => e.Key)]);
    }

    /// <summary>What a studio's project file says for all headers, and the keys that it says.</summary>
    internal static (PatternFacts Facts, ImmutableArray<string> Keys) BindDefaults(HeaderContext context, HeaderMap map)
    {
        var facts = new PatternFacts();
        var said = ImmutableArray.CreateBuilder<string>();
        foreach (var (key, entry) in context.Known(map, Keys with { Path = "defaults" }))
        {
            if (!HouseDefaults.Keys.Contains(key, StringComparer.Ordinal))
            {
                context.Report(HouseRules.NoDefault, entry.Key.Span, $"`{entry.Name}` is each pattern's own and has no default", $"the keys here are {HeaderContext.Listed(HouseDefaults.Keys)}");
                continue;
            }

            said.Add(key);
            facts = One(context, key, entry, facts);
        }

        return (facts, said.ToImmutable());
    }

    /// <summary>True for a word that is a key of the header.</summary>
    internal static bool IsKey(string word) => Keys.Find(word) is not null;

    private static PatternFacts One(HeaderContext context, string key, HeaderEntry entry, PatternFacts facts)
    {
        var node = entry.Value;
        return key switch
        {
            "title" => facts with { Title = Title(context, node) },
            "designer" => facts with { Designer = context.Text(node, key) },
            "version" => facts with { Version = context.Text(node, key) },
            "date" => facts with { Date = context.Text(node, key) },
            "craft" => facts with { Craft = Choice(context, node, key, Crafts, "knitting, crochet and tunisian", HeaderRules.UnknownChoice)?.Value ?? facts.Craft },
            "terms" => facts with { Terms = Choice(context, node, key, Dialects, "us and uk", HeaderRules.UnknownChoice) },
            "level" => facts with { Level = Choice(context, node, key, Levels, "basic, easy, intermediate and complex", HeaderRules.UnknownLevel) },
            "level-reason" => facts with { LevelReason = context.Text(node, key) },
            "audience" => facts with { Audience = Choice(context, node, key, Audiences, "babies, children, youths, women, men, adults and anyone", HeaderRules.UnknownAudience) },
            "techniques" => facts with { Techniques = context.Texts(node, key, atCommas: true) },
            "summary" => facts with { Summary = context.Text(node, key) },
            "fits" => facts with { Fits = [.. facts.Fits, .. SizesBinder.Measurements(context, node, key)] },
            "finished" => facts with { Finished = [.. facts.Finished, .. SizesBinder.Measurements(context, node, key)] },
            "ease" => SizesBinder.Ease(context, node, facts),
            "measured" => facts with { Measured = MeasuredBinder.Measured(context, node) },
            "seam" => facts with { Seam = MeasuredBinder.Seam(context, node) },
            "band-overlap" => facts with { BandOverlap = QuantityBinder.Read(context, node, key, Dimension.Length) },
            "gauge" => GaugeBinder.Bind(context, node, facts),
            "yarn" => YarnBinder.Bind(context, node, facts),
            "tools" or "needles" or "hook" => facts with { Tools = [.. facts.Tools, .. MaterialsBinder.Items(context, node, key)] },
            "notions" => facts with { Notions = MaterialsBinder.Items(context, node, key) },
            "stitches" => facts with { Stitches = StitchesBinder.Stitches(context, node) },
            "abbreviations" => facts with { Abbreviations = StitchesBinder.Abbreviations(context, node) },
            "numbers" => facts with { Numbers = StitchesBinder.Numbers(context, node) },
            "notes" => facts with { Notes = context.Texts(node, key) },
            "charts" => facts with { Charts = StitchesBinder.Charts(context, node) },
            "sample" => facts with { Sample = SampleBinder.Sample(context, node) },
            "swatch" => facts with { Swatch = SampleBinder.Swatch(context, node) },
            "yarn-margin" => facts with { YarnMargin = SampleBinder.Margin(context, node, key) },
            "shown" => facts with { Shown = UseBinder.Shown(context, node) },
            "care" => facts with { Care = UseBinder.Care(context, node) },
            "photos" => facts with { Photos = MaterialsBinder.Photos(context, node) },
            "videos" => facts with { Videos = MaterialsBinder.Links(context, node, key) },
            "links" => facts with { Links = MaterialsBinder.Links(context, node, key) },
            "contact" => facts with { Contact = node is HeaderList ? string.Join(", ", context.Texts(node, key).Select(t => t.Value)) : context.Text(node, key) },
            "corrections" => facts with { Corrections = CorrectionsBinder.Corrections(context, node) },
            "omit" => facts with { Omit = Omitted(context, node) },
            "paper" => facts with { Paper = Choice(context, node, key, Papers, "a4, letter and both", HeaderRules.UnknownChoice) },
            "release" => facts with { Release = context.Texts(node, key, atCommas: true) },
            _ => facts,
        };
    }

    private static readonly (string Name, Craft Value)[] Crafts =
        [("knitting", Craft.Knitting), ("knit", Craft.Knitting), ("crochet", Craft.Crochet), ("tunisian", Craft.Tunisian), ("tunisian crochet", Craft.Tunisian)];

    private static readonly (string Name, Dialect Value)[] Dialects =
        [("us", Dialect.Us), ("usa", Dialect.Us), ("american", Dialect.Us), ("us terms", Dialect.Us), ("uk", Dialect.Uk), ("british", Dialect.Uk), ("uk terms", Dialect.Uk)];

    private static readonly (string Name, Paper Value)[] Papers =
        [("a4", Paper.A4), ("letter", Paper.Letter), ("us letter", Paper.Letter), ("both", Paper.Both), ("a4 and letter", Paper.Both), ("a4, letter", Paper.Both)];

    private static readonly (string Name, Level Value)[] Levels =
        [("basic", Level.Basic), ("easy", Level.Easy), ("intermediate", Level.Intermediate), ("complex", Level.Complex)];

    private static readonly (string Name, Audience Value)[] Audiences =
    [
        ("babies", Audience.Babies), ("baby", Audience.Babies), ("infants", Audience.Babies), ("infant", Audience.Babies), ("newborns", Audience.Babies),
        ("children", Audience.Children), ("child", Audience.Children), ("kids", Audience.Children), ("toddlers", Audience.Children), ("toddler", Audience.Children),
        ("youths", Audience.Youths), ("youth", Audience.Youths), ("teens", Audience.Youths), ("teenagers", Audience.Youths),
        ("women", Audience.Women), ("woman", Audience.Women), ("men", Audience.Men), ("man", Audience.Men),
        ("adults", Audience.Adults), ("adult", Audience.Adults), ("women and men", Audience.Adults), ("men and women", Audience.Adults),
        ("anyone", Audience.Anyone), ("anybody", Audience.Anyone), ("everyone", Audience.Anyone), ("everybody", Audience.Anyone), ("all", Audience.Anyone), ("unisex", Audience.Anyone),
    ];

    private static Located<string>? Title(HeaderContext context, HeaderNode node) =>
        context.Text(node, "title") is { } title ? new Located<string>(title, node.Span) : null;

    private static Located<T>? Choice<T>(HeaderContext context, HeaderNode node, string key, (string Name, T Value)[] choices, string listed, Rule rule)
    {
        if (context.Scalar(node, key) is not { IsBlank: false } scalar)
        {
            return null;
        }

        var said = scalar.Text.Trim();
        foreach (var (name, value) in choices)
        {
            if (string.Equals(name, said, StringComparison.OrdinalIgnoreCase))
            {
                return new Located<T>(value, scalar.Span);
            }
        }

        context.GiveUp(key);
        var near = Suggest.Nearest(said, choices.Select(c => c.Name), 1);
        context.Report(rule, scalar.Span, $"`{HeaderContext.Short(said)}` is no `{key}` that is known here", near.Count > 0 ? $"did you mean `{near[0]}`?" : $"there are {listed}");
        return null;
    }

    private static ImmutableArray<string> Omitted(HeaderContext context, HeaderNode node)
    {
        var parts = ImmutableArray.CreateBuilder<string>();
        foreach (var said in context.Texts(node, "omit", atCommas: true))
        {
            var part = KeySet.Plain(said.Value);
            if (!Parts.Contains(part, StringComparer.Ordinal))
            {
                part = Keys.Find(part) ?? part;
            }

            parts.Add(part);
            if (!Parts.Contains(part, StringComparer.Ordinal))
            {
                var near = Suggest.Nearest(part, Parts, 2);
                context.Bag.Add(new Finding(HeaderRules.UnknownPart, context.Source, said.Origin, $"`{HeaderContext.Short(said.Value)}` is no part of a pattern that could be left out")
                {
                    Help = near.Count > 0 ? $"did you mean `{near[0]}`?" : null,
                    Fix = near.Count == 1 ? new Fix($"Write `{near[0]}`", [new Edit(said.Origin, near[0])]) : null,
                });
            }
        }

        return parts.ToImmutable();
    }

    private static TextSpan OpeningLine(SourceText source, TextSpan header)
    {
        var line = source.Lines.PositionOf(Math.Max(0, header.Start - 1)).Line;
        return FileSplitter.Trimmed(source.Text, source.Lines.SpanOf(line, source.Text));
    }
}
