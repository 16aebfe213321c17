using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads a project file's nodes: what a studio settles for all its patterns. What cannot be made out is a finding, and the usual value holds.</summary>
internal static class HouseBinder
{
    private const string NeverAccept = "never-accept";

    private static readonly KeySet Keys = new("", "defaults|default", "tolerances|tolerance", "style|style-sheet", NeverAccept);

    private static readonly KeySet ToleranceKeys = new("tolerances", [.. ToleranceSetting.All.Select(s => s.Name)]);

    private static readonly KeySet StyleKeys = new("style", [.. StyleMatter.All.Select(m => m.Key)]);

    /// <summary>Binds a project file.</summary>
    /// <param name="map">Its keys.</param>
    /// <param name="source">The file.</param>
    /// <param name="codeOf">The code of a finding by its code or name; null where there is none.</param>
    /// <param name="bag">What is found.</param>
    public static House Bind(HeaderMap map, SourceText source, Func<string, string?> codeOf, FindingBag bag)
    {
        var context = new HeaderContext(source, bag) { KeyRule = HouseRules.UnknownSetting, Whole = "a project file", SizesKnown = false };
        foreach (var damaged in map.Damaged)
        {
            context.Damage(Keys.Find(damaged) ?? KeySet.Plain(damaged));
        }

        var house = House.None;
        foreach (var (key, entry) in context.Known(WithoutStrayKeys(map, context), Keys))
        {
            house = key switch
            {
                "defaults" => Defaults(context, entry, house),
                "tolerances" => house with { Tolerances = ReadTolerances(context, entry) },
                "style" => house with { Style = ReadStyle(context, entry) },
                _ => house with { NeverAccepted = Codes(context, entry, codeOf) },
            };
        }

        return house;
    }

    // A key of the header at the outermost level is a default that lost its place.
    private static HeaderMap WithoutStrayKeys(HeaderMap map, HeaderContext context)
    {
        var stray = map.Entries.Where(e => Keys.Find(e.Name) is null && HeaderBinder.IsKey(e.Name)).ToArray();
        foreach (var entry in stray)
        {
            context.Report(HouseRules.UnknownSetting, entry.Key.Span, $"`{entry.Name}` is no key of a project file", "what headers are taken to say stands under `defaults`, set in by two blanks");
        }

        return stray.Length == 0 ? map : new HeaderMap(map.Span, [.. map.Entries.Except(stray)]) { Damaged = map.Damaged };
    }

    private static House Defaults(HeaderContext context, HeaderEntry entry, House house)
    {
        if (context.Map(entry.Value, "defaults", "header keys under it, such as `designer: ...`") is not { } map)
        {
            return house;
        }

        var (facts, keys) = HeaderBinder.BindDefaults(context, map);
        return house with { Defaults = facts, DefaultKeys = keys };
    }

    private static Tolerances ReadTolerances(HeaderContext context, HeaderEntry entry)
    {
        var tolerances = Tolerances.Default;
        if (context.Map(entry.Value, "tolerances", "names with values, such as `measurement: 5%`") is not { } map)
        {
            return tolerances;
        }

        foreach (var (key, one) in context.Known(map, ToleranceKeys))
        {
            var setting = ToleranceSetting.All.First(s => s.Name == key);
            if (context.Scalar(one.Value, ToleranceKeys.PathOf(key), "one value") is not { } scalar)
            {
                continue;
            }

            if (setting.ValueOf(scalar.Text) is { } value)
            {
                tolerances = setting.Set(tolerances, value);
                continue;
            }

            context.Report(
                HouseRules.UnreadableSetting,
                scalar.Span,
                $"`{key}` wants {(setting.IsShare ? "a share from 0% to 100%" : $"a whole number up to {setting.Most}")}, but says `{HeaderContext.Short(scalar.Text)}`",
                $"without a setting it is {setting.Written(setting.Read(Tolerances.Default))}");
        }

        return tolerances;
    }

    private static StyleSheet ReadStyle(HeaderContext context, HeaderEntry entry)
    {
        var choices = ImmutableDictionary.CreateBuilder<StyleMatter, int>();
        if (context.Map(entry.Value, "style", "matters with the form you write, such as `round: rnd`") is not { } map)
        {
            return StyleSheet.Open;
        }

        foreach (var (key, one) in context.Known(map, StyleKeys))
        {
            var matter = StyleMatter.All.First(m => m.Key == key);
            if (context.Scalar(one.Value, StyleKeys.PathOf(key), "one form") is not { } scalar)
            {
                continue;
            }

            var said = scalar.Text.Trim();
            var form = matter.Forms.IndexOf(said);
            form = form >= 0 || matter == StyleMatter.Letters ? form : matter.Forms.IndexOf(said, StringComparer.OrdinalIgnoreCase);
            if (form >= 0)
            {
                choices[matter] = form;
                continue;
            }

            context.Report(HouseRules.UnreadableSetting, scalar.Span, $"`{HeaderContext.Short(said)}` is no form for `{key}`", $"write {HeaderContext.Listed(matter.Forms, "or")}");
        }

        return new StyleSheet(choices.ToImmutable());
    }

    private static ImmutableArray<string> Codes(HeaderContext context, HeaderEntry entry, Func<string, string?> codeOf)
    {
        var codes = ImmutableArray.CreateBuilder<string>();
        foreach (var said in context.Texts(entry.Value, NeverAccept, atCommas: true))
        {
            if (codeOf(said.Value) is { } code)
            {
                codes.Add(code);
            }
            else
            {
                context.Report(HouseRules.UnreadableSetting, said.Origin, $"`{HeaderContext.Short(said.Value)}` is no code and no name of a finding", "write codes such as PF301");
            }
        }

        return codes.ToImmutable();
    }
}
