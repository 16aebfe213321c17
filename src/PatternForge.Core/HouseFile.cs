using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Binding;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core;

/// <summary>A key of the project file, for the documents.</summary>
/// <param name="Path">The key with those above it ("style.round").</param>
/// <param name="Values">What may stand there.</param>
/// <param name="Usual">What holds without it.</param>
/// <param name="About">What it settles.</param>
public sealed record HouseKey(string Path, string Values, string Usual, string About);

/// <summary>A project file as it was read: what it settles, and what is wrong with it. Never throws for bad input.</summary>
/// <param name="Source">The file.</param>
/// <param name="House">What it settles; what could not be read is as if it were not there.</param>
/// <param name="Findings">What was found in the file itself, by place.</param>
public sealed record HouseFile(SourceText Source, House House, ImmutableArray<Finding> Findings)
{
    /// <summary>What the file is called.</summary>
    public const string Name = "patternforge.yaml";

    /// <summary>The largest project file in UTF-16 units.</summary>
    public const int MaxLength = 256 * 1024;

    /// <summary>Every key, in the order of the documents.</summary>
    public static ImmutableArray<HouseKey> Keys =>
    [
        .. HouseDefaults.Keys.Select(k => new HouseKey($"defaults.{k}", "as in a header", "–", k == "omit" ? "parts left out in every pattern, besides its own" : "what a header says that does not say it itself")),
        .. ToleranceSetting.All.Select(s => new HouseKey($"tolerances.{s.Name}", s.IsShare ? "0% to 100%" : string.Create(CultureInfo.InvariantCulture, $"0 to {s.Most}"), s.Written(s.Read(Tolerances.Default)), s.About)),
        .. StyleMatter.All.Select(m => new HouseKey($"style.{m.Key}", string.Join(", ", m.Forms.Select(f => $"`{f}`")), "each pattern's own", m.About)),
        new HouseKey("never-accept", "a list of codes", "none", "findings that nobody may accept in a pattern"),
    ];

    /// <summary>True when an error stands that was not accepted.</summary>
    public bool HasErrors => Findings.Any(f => f.Severity == Severity.Error && f.Accepted is null);

    /// <summary>Reads a project file.</summary>
    public static HouseFile Read(SourceText source)
    {
        var bag = new FindingBag(source);
        if (source.Text.Length > MaxLength)
        {
            return TooLarge(source);
        }

        var house = House.None;
        var whole = new TextSpan(0, source.Text.Length);
        if (FileRules.Check(source, bag))
        {
            var map = HeaderReader.Read(source, whole, CompileOptions.Default, bag);
            house = HouseBinder.Bind(map, source, said => RuleCatalog.Find(said)?.Code, bag);
        }

        return new(source, house, Acceptances.Apply(bag.ToSorted(), source, new SplitFile(whole, new TextSpan(source.Text.Length, 0)), []));
    }

    /// <summary>A file that is larger than any project file and was not read.</summary>
    public static HouseFile TooLarge(SourceText source) => new(source, House.None, [FileRules.TooLarge(source, MaxLength)]);
}
