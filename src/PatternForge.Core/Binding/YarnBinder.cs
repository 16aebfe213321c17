using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads the yarns.</summary>
internal static class YarnBinder
{
    private static readonly KeySet Keys = new(
        "yarn", "name|yarn", "fibre|fiber|content|composition", "weight|class|yarn-weight", "put-up|putup|put", "needs|need|amount|quantity", "colours|colors|colour|color",
        "label", "shade", "strands|held", "alternatives|alternative|substitutes");

    private static readonly KeySet AlternativeKeys = new("yarn.alternatives", "name|yarn", "note|notes", "put-up|putup", "fibre|fiber", "weight");

    /// <summary>Reads `yarn` and adds what it says to the facts.</summary>
    public static PatternFacts Bind(HeaderContext context, HeaderNode node, PatternFacts facts)
    {
        var yarns = ImmutableArray.CreateBuilder<Yarn>();
        foreach (var item in HeaderContext.Items(node))
        {
            if (context.PlainText(item, Keys) is { } text)
            {
                yarns.Add(YarnLine.Read(context, item, text));
            }
            else if (item is HeaderMap map)
            {
                yarns.Add(FromKeys(context, map));
            }
            else
            {
                context.WrongKind(item, "yarn", "names or keys with values");
            }
        }

        return facts with { Yarns = yarns.ToImmutable() };
    }

    private static Yarn FromKeys(HeaderContext context, HeaderMap map)
    {
        var yarn = new Yarn(context.FirstLine(map.Span));
        foreach (var (key, entry) in context.Known(map, Keys))
        {
            var (node, path) = (entry.Value, Keys.PathOf(key));
            yarn = key switch
            {
                "name" => yarn with { Name = context.Text(node, path) },
                "fibre" => yarn with { Fibre = Fibre(context, node, path) },
                "weight" => Weight(context, node, path, yarn),
                "put-up" => PutUp(context, node, path) is { } putUp ? yarn with { PutUpMass = putUp.Mass, PutUpLength = putUp.Length } : yarn,
                "needs" when node is HeaderScalar asked && SampleBinder.AsksForEstimate(asked.Text) => yarn with { NeedsAreEstimated = true, NeedsOrigin = context.FirstLine(node.Span) },
                "needs" => yarn with { Needs = QuantityBinder.Read(context, node, path, Dimension.YarnLength, Dimension.Mass, Dimension.Count), NeedsOrigin = context.FirstLine(node.Span) },
                "colours" => yarn with { Colours = [.. context.Texts(node, path, atCommas: true).Select(t => t.Value)] },
                "shade" => Shade(context, node, path) is { } shade ? yarn with { Shade = shade } : yarn,
                "strands" => Strands(context, node, path) is { } strands ? yarn with { Strands = strands } : yarn,
                "label" => yarn with { Label = context.Text(node, path) },
                _ => yarn with { Alternatives = Alternatives(context, node, path) },
            };
        }

        return yarn;
    }

    /// <summary>A shade as web pages write it: "#335577".</summary>
    private static string? Shade(HeaderContext context, HeaderNode node, string path)
    {
        var said = context.Text(node, path)?.Trim().ToLowerInvariant();
        if (said is null)
        {
            return null;
        }

        if (said.Length == 7 && said[0] == '#' && said[1..].All(char.IsAsciiHexDigitLower))
        {
            return said;
        }

        context.WrongKind(node, path, "a colour as web pages write it, such as \"#335577\"");
        return null;
    }

    /// <summary>Strands held together: a number, or "double", "2 strands".</summary>
    private static int? Strands(HeaderContext context, HeaderNode node, string path)
    {
        var said = context.Text(node, path)?.ToLowerInvariant();
        int? strands = said?.Split(' ', StringSplitOptions.RemoveEmptyEntries)[0] switch
        {
            "1" or "single" or "one" => 1,
            "2" or "double" or "two" => 2,
            "3" or "triple" or "three" => 3,
            "4" or "four" => 4,
            "5" or "five" => 5,
            "6" or "six" => 6,
            _ => null,
        };
        if (said is not null && strands is null)
        {
            context.WrongKind(node, path, "how many strands are held together, up to six", "`2`");
        }

        return strands;
    }

    private static string? Fibre(HeaderContext context, HeaderNode node, string path) =>
        node is HeaderList ? string.Join(", ", context.Texts(node, path).Select(t => t.Value)) : context.Text(node, path);

    private static Yarn Weight(HeaderContext context, HeaderNode node, string path, Yarn yarn)
    {
        if (context.Scalar(node, path) is not { IsBlank: false } scalar)
        {
            return yarn;
        }

        if (YarnWeight.Find(scalar.Text) is { } weight)
        {
            return yarn with { Weight = scalar.Text.Trim(), WeightClass = weight.Class };
        }

        context.Report(
            HeaderRules.UnknownYarnWeight,
            scalar.Span,
            $"`{HeaderContext.Short(scalar.Text)}` is none of the trade's weights of yarn",
            $"the classes are {string.Join(", ", YarnWeight.All.Select(w => $"{w.Class} {w.Name}"))}");
        return yarn with { Weight = scalar.Text.Trim() };
    }

    private static (Quantity? Mass, Quantity? Length)? PutUp(HeaderContext context, HeaderNode node, string path)
    {
        if (context.Scalar(node, path) is not { IsBlank: false } scalar)
        {
            return null;
        }

        var (mass, length) = Binding.PutUp.In(scalar.Text);
        if (mass is null || length is null)
        {
            context.GiveUp(path);
            context.Report(
                HeaderRules.UnreadablePutUp,
                scalar.Span,
                (mass, length) switch
                {
                    (null, null) => $"`{HeaderContext.Short(scalar.Text)}` gives neither the mass nor the length of a ball",
                    (null, _) => $"`{HeaderContext.Short(scalar.Text)}` gives the length of a ball, but not its mass",
                    _ => $"`{HeaderContext.Short(scalar.Text)}` gives the mass of a ball, but not its length",
                },
                "write both, as in `100 g = 200 m`");
        }

        return (mass, length);
    }

    private static ImmutableArray<YarnAlternative> Alternatives(HeaderContext context, HeaderNode node, string path)
    {
        var alternatives = ImmutableArray.CreateBuilder<YarnAlternative>();
        foreach (var item in HeaderContext.Items(node))
        {
            if (item is HeaderScalar scalar)
            {
                alternatives.Add(new YarnAlternative(scalar.Text.Trim(), null, null, null, scalar.Span));
            }
            else if (item is HeaderMap { Entries: [{ Value: HeaderScalar note } only] } && AlternativeKeys.Find(only.Name) is null)
            {
                // "Quayside Cotton: cooler to wear" is a name and a word on it.
                alternatives.Add(new YarnAlternative(only.Name.Trim(), note.IsBlank ? null : note.Text.Trim(), null, null, context.FirstLine(item.Span)));
            }
            else if (item is HeaderMap map)
            {
                var alternative = new YarnAlternative("", null, null, null, context.FirstLine(map.Span));
                var notes = new List<string>();
                foreach (var (key, entry) in context.Known(map, AlternativeKeys))
                {
                    switch (key)
                    {
                        case "name":
                            alternative = alternative with { Name = context.Text(entry.Value, path) ?? "" };
                            break;
                        case "put-up":
                            var putUp = PutUp(context, entry.Value, AlternativeKeys.PathOf(key));
                            alternative = alternative with { PutUpMass = putUp?.Mass, PutUpLength = putUp?.Length };
                            break;
                        default:
                            notes.AddRange(context.Text(entry.Value, AlternativeKeys.PathOf(key)) is { } said ? [said] : Array.Empty<string>());
                            break;
                    }
                }

                alternatives.Add(alternative with { Note = notes.Count > 0 ? string.Join("; ", notes) : null });
            }
            else
            {
                context.WrongKind(item, path, "names or keys with values");
            }
        }

        return alternatives.ToImmutable();
    }
}
