using System.Security.Cryptography;
using System.Text;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Trials;

namespace PatternForge.Rendering.Documents;

/// <summary>Words the sheet of a test maker.</summary>
internal static class TestSheetBuilder
{
    /// <summary>The sheet of a size.</summary>
    /// <param name="compilation">The pattern.</param>
    /// <param name="size">The size, by its number from 0.</param>
    /// <param name="script">The script of the form.</param>
    public static TestSheetView Build(Compilation compilation, int size, string script)
    {
        var facts = compilation.Pattern.Facts;
        var sheet = TestSheet.Of(compilation, size);
        var code = script.Replace("\r\n", "\n", StringComparison.Ordinal).Replace("</", "<\\/", StringComparison.Ordinal);
        return new TestSheetView
        {
            Title = sheet.Title,
            Designer = Wording.Said(facts.Designer),
            Version = sheet.Version,
            Edition = Wording.Edition(facts.Version, facts.Date),
            Size = sheet.Size,
            File = FileName(compilation, size) + ".answers.json",
            Level = facts.Level is { } level ? Wording.LevelName(level.Value).ToLowerInvariant() : null,
            Contact = Wording.Said(facts.Contact) is { } contact ? new LinkView { Text = contact, Address = SafeAddress.FromWords(contact) } : null,
            Tools = [.. facts.Tools.Select(t => ToolNames.Add(t.Text.Trim(), facts.Craft != Craft.Knitting, compilation.Edition?.Readers))],
            Gauges = [.. sheet.Gauges.SelectMany(g => Gauge(g, sheet.Gauges.Length > 1))],
            Yarns = [.. sheet.Yarns.Select(Yarn)],
            Measures = [.. sheet.Measures.Select(m => new AskView { Key = m.Key, Name = Capital(m.Key), Told = m.Told.ToString(), Unit = m.Told.Unit.Symbol })],
            Sections = sheet.Sections,
            Questions = [.. TestQuestion.All.Select(q => new QuestionView { Key = q.Key, Text = q.Text, Hint = q.Hint })],
            Script = code,
            ScriptHash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(code))),
        };
    }

    /// <summary>What the files of a size's test are called, without their ends: "saltgrass-hat.test-adult-m".</summary>
    public static string FileName(Compilation compilation, int size)
    {
        var slug = new StringBuilder();
        foreach (var c in compilation.Pattern.Facts.Sizes.Names[size].Trim().ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(c))
            {
                slug.Append(c);
            }
            else if (slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }
        }

        var name = slug.ToString().Trim('-');
        return ReleaseName.Of(compilation.Source.Path) + ".test" + (name.Length > 0 ? "-" + name : "");
    }

    private static IEnumerable<AskView> Gauge(AskedGauge gauge, bool isNamed)
    {
        var tail = isNamed ? $", {gauge.Key}" : gauge.Stitch is { Length: > 0 } stitch ? $", {stitch}" : "";
        yield return new AskView { Key = gauge.Key, Field = "stitches", Name = $"Stitches{(gauge.Width is { } width ? $" to {width}" : "")}{tail}", Told = gauge.Stitches is { } n ? Wording.Number(n) : Wording.None, Unit = "" };
        yield return new AskView { Key = gauge.Key, Field = "rows", Name = $"{(gauge.AreRounds ? "Rounds" : "Rows")}{(gauge.Height is { } height ? $" to {height}" : "")}{tail}", Told = gauge.Rows is { } r ? Wording.Number(r) : Wording.None, Unit = "" };
    }

    private static AskView Yarn(AskedYarn yarn)
    {
        var told = yarn.Needs is null ? Wording.None
            : yarn.Needs.Unit.Dimension == Dimension.Count ? $"{Wording.Number(yarn.Needs.Value)} {(yarn.Needs.Value == 1 ? "ball" : "balls")}"
            : yarn.Needs.ToString();
        return new AskView
        {
            Key = yarn.Key,
            Name = yarn.Key == yarn.Name ? yarn.Name : yarn.Name == "Yarn" ? Capital(yarn.Key) : $"{yarn.Key}: {yarn.Name}",
            Told = yarn.Grams is { } grams && yarn.Needs is { Unit.Symbol: not "g" } ? $"{told}, about {Wording.Number(decimal.Round(grams))} g" : told,
            Unit = "g",
        };
    }

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
