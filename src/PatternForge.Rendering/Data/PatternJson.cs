using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Rendering.Documents;

namespace PatternForge.Rendering.Data;

/// <summary>
/// A whole pattern as JSON for other programs, in the form that <see cref="PatternSchema"/> describes. Written by hand, key by key: keys are only ever added, and a new
/// <see cref="Version"/> says so when one has to go.
/// </summary>
internal static class PatternJson
{
    /// <summary>The version of the form.</summary>
    public const int Version = 1;

    private static readonly JsonWriterOptions Layout = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The pattern as JSON.</summary>
    /// <param name="compilation">The pattern.</param>
    /// <param name="view">The same as pages show it.</param>
    public static string Of(Compilation compilation, PatternView view)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Layout))
        {
            json.WriteStartObject();
            json.WriteNumber("pattern", Version);
            Head(json, compilation, view);
            Sizes(json, compilation.Pattern.Facts);
            Materials(json, compilation.Pattern.Facts);
            Words(json, compilation, view);
            BodyJson.Write(json, compilation, view);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length) + "\n";
    }

    private static void Head(Utf8JsonWriter json, Compilation compilation, PatternView view)
    {
        var facts = compilation.Pattern.Facts;
        json.Text("title", facts.Title?.Value);
        json.Text("designer", facts.Designer);
        json.Text("version", facts.Version);
        json.Text("date", facts.Date);
        json.Text("edition", compilation.Edition?.Name);
        json.WriteBoolean("draft", view.Draft);
        json.WriteString("craft", facts.Craft switch { Craft.Crochet => "crochet", Craft.Tunisian => "tunisian", _ => "knitting" });
        json.Text("terms", facts.TermsInForce switch { Dialect.Us => "US", Dialect.Uk => "UK", _ => null });
        json.Text("level", facts.Level?.Value.ToString().ToLowerInvariant());
        json.Text("levelReason", facts.LevelReason);
        json.Text("audience", facts.Audience?.Value.ToString().ToLowerInvariant());
        json.Texts("techniques", facts.Techniques.Select(t => t.Value));
        json.Text("summary", facts.Summary);
    }

    private static void Sizes(Utf8JsonWriter json, PatternFacts facts)
    {
        void Measurement(Measurement measured)
        {
            json.Text("name", measured.Name);
            json.Quantities("values", measured.Values, facts.Sizes.Count);
        }

        json.Texts("sizes", facts.Sizes.Names);
        json.List("fits", facts.Fits, Measurement);
        json.List("finished", facts.Finished, Measurement);
        json.Text("ease", facts.Ease);
        json.List("numbers", facts.Numbers, number =>
        {
            json.Text("name", number.Name);
            json.Quantities("values", number.Values, facts.Sizes.Count);
        });
        json.List("gauges", facts.Gauges, gauge =>
        {
            json.Text("name", gauge.Name);
            json.Text("stitch", gauge.Stitch);
            json.Number("stitches", gauge.Stitches);
            json.Number("rows", gauge.Rows);
            json.WriteBoolean("rounds", gauge.RowsAreRounds);
            json.Quantity("width", gauge.Width);
            json.Quantity("height", gauge.Height);
            json.Text("tool", gauge.Tool);
            if (gauge.Blocked is { } blocked)
            {
                json.WriteBoolean("blocked", blocked);
            }
            else
            {
                json.WriteNull("blocked");
            }
        });
        json.Text("gaugeRemark", facts.GaugeRemark);
    }

    private static void Materials(Utf8JsonWriter json, PatternFacts facts)
    {
        json.List("yarns", facts.Yarns, yarn =>
        {
            json.Text("label", yarn.Label);
            json.Text("name", yarn.Name);
            json.Text("fibre", yarn.Fibre);
            json.Text("weight", yarn.Weight);
            json.Number("weightClass", yarn.WeightClass);
            json.Quantity("putUpMass", yarn.PutUpMass);
            json.Quantity("putUpLength", yarn.PutUpLength);
            json.WriteNumber("strands", yarn.Strands);
            json.Texts("colours", yarn.Colours);
            json.Text("shade", yarn.Shade);
            json.Quantities("needs", yarn.Needs, facts.Sizes.Count);
            json.List("alternatives", yarn.Alternatives, other =>
            {
                json.Text("name", other.Name);
                json.Text("note", other.Note);
                json.Quantity("putUpMass", other.PutUpMass);
                json.Quantity("putUpLength", other.PutUpLength);
            });
        });
        void Item(Item item)
        {
            json.Text("text", item.Text);
            json.Text("link", SafeAddress.ForLink(item.Link));
        }

        json.List("tools", facts.Tools, Item);
        json.List("notions", facts.Notions, Item);
    }

    private static void Words(Utf8JsonWriter json, Compilation compilation, PatternView view)
    {
        var facts = compilation.Pattern.Facts;
        json.List("abbreviations", compilation.Abbreviations, a =>
        {
            json.Text("name", a.Name);
            json.Text("meaning", a.Meaning);
            json.WriteBoolean("special", a.IsSpecial);
        });
        json.List("stitches", facts.Stitches, s =>
        {
            json.Text("name", s.Name);
            json.Text("fullName", s.FullName);
            json.Text("how", s.How);
            json.Number("takes", s.Takes);
            json.Number("makes", s.Makes);
        });
        json.Texts("notes", facts.Notes.Select(n => n.Value));
        json.List("care", facts.Care, c =>
        {
            json.Text("treatment", c.Kind switch
            {
                CareKind.Washing => "washing",
                CareKind.Bleaching => "bleaching",
                CareKind.Drying => "drying",
                CareKind.Ironing => "ironing",
                CareKind.ProfessionalCare => "professional care",
                _ => null,
            });
            json.Text("text", c.Text);
        });
        json.List("cautions", view.Cautions, c =>
        {
            json.Text("name", c.Name);
            json.Text("text", c.Text);
        });
        json.List("photos", view.Photos, p =>
        {
            json.Text("file", p.Address);
            json.Text("alt", p.Alt);
            json.Text("caption", p.Caption);
        });
        void Link(LinkView link)
        {
            json.Text("text", link.Text);
            json.Text("address", link.Address);
        }

        json.List("videos", view.Videos, Link);
        json.List("links", view.Links, Link);
        json.Text("contact", facts.Contact);
        json.List("corrections", view.Corrections.SelectMany(v => v.Items.Select(i => (v.Heading, i.Name, i.Value))), c =>
        {
            json.Text("version", c.Heading);
            json.Text("place", c.Name);
            json.Text("text", c.Value);
        });
    }
}
