using System.Globalization;
using System.Text;
using System.Xml;

namespace PatternForge.Rendering.Drawings;

/// <summary>Writes SVG: well-formed, without script, fonts or anything fetched; the same calls always give the same bytes.</summary>
internal sealed class SvgPage
{
    private const string Namespace = "http://www.w3.org/2000/svg";

    private readonly StringBuilder _text = new();
    private readonly XmlWriter _xml;

    /// <summary>Opens a drawing of a width and height.</summary>
    /// <param name="width">Width.</param>
    /// <param name="height">Height.</param>
    /// <param name="id">What the identifiers inside begin with; null for a mark that needs no name.</param>
    /// <param name="title">The title; null for a mark that needs no name.</param>
    /// <param name="description">The same in words.</param>
    /// <param name="alone">True for a file of its own: black on white, whatever the reader's page is.</param>
    public SvgPage(double width, double height, string? id = null, string? title = null, string? description = null, bool alone = false)
    {
        _xml = XmlWriter.Create(_text, new XmlWriterSettings { OmitXmlDeclaration = true, Indent = false, ConformanceLevel = ConformanceLevel.Fragment, CheckCharacters = true, NewLineChars = "\n" });
        _xml.WriteStartElement("svg", Namespace);
        Attribute("viewBox", $"0 0 {Number(width)} {Number(height)}");
        Attribute("width", Number(width));
        Attribute("height", Number(height));
        Attribute("font-family", "Helvetica, Arial, sans-serif");
        if (title is null)
        {
            Attribute("aria-hidden", "true");
        }
        else
        {
            Attribute("role", "img");
            Attribute("aria-labelledby", $"{id}-title {id}-words");
            Named("title", $"{id}-title", title);
            Named("desc", $"{id}-words", description ?? "");
        }

        if (alone)
        {
            Box(0, 0, width, height, "paper");
        }
    }

    /// <summary>The text of the drawing; nothing can be drawn after it.</summary>
    public string Finish()
    {
        _xml.WriteEndElement();
        _xml.Flush();
        return _text.ToString();
    }

    /// <summary>A group moved to a place.</summary>
    public void Begin(double x, double y)
    {
        _xml.WriteStartElement("g", Namespace);
        Attribute("transform", $"translate({Number(x)} {Number(y)})");
    }

    /// <summary>Begins a group whose ink is thinned down.</summary>
    public void BeginFaint(double opacity)
    {
        _xml.WriteStartElement("g", Namespace);
        if (opacity < 1)
        {
            Attribute("opacity", Number(opacity));
        }
    }

    /// <summary>Begins a group of what belongs to one row or round, so that a page can mark the one that is being worked.</summary>
    /// <param name="number">Its number as the rows of the page have it; null where it has none.</param>
    public void BeginRow(int? number)
    {
        _xml.WriteStartElement("g", Namespace);
        if (number is { } row)
        {
            Attribute("data-row", row.ToString(CultureInfo.InvariantCulture));
        }
    }

    /// <summary>Ends a group.</summary>
    public void End() => _xml.WriteEndElement();

    /// <summary>Lines without a filling.</summary>
    public void Line(string path, double width = 1.6, double opacity = 1)
    {
        _xml.WriteStartElement("path", Namespace);
        Attribute("d", path);
        Attribute("fill", "none");
        Attribute("stroke", "currentColor");
        Attribute("stroke-width", Number(width));
        Attribute("stroke-linecap", "round");
        Attribute("stroke-linejoin", "round");
        if (opacity < 1)
        {
            Attribute("stroke-opacity", Number(opacity));
        }

        _xml.WriteEndElement();
    }

    /// <summary>A broken line.</summary>
    public void Dashes(string path)
    {
        _xml.WriteStartElement("path", Namespace);
        Attribute("d", path);
        Attribute("fill", "none");
        Attribute("stroke", "currentColor");
        Attribute("stroke-width", "1.6");
        Attribute("stroke-dasharray", "6 4");
        _xml.WriteEndElement();
    }

    /// <summary>A shape filled with the ink, thinned down where the opacity says so.</summary>
    public void Ink(string path, double opacity = 1)
    {
        _xml.WriteStartElement("path", Namespace);
        Attribute("d", path);
        Attribute("fill", "currentColor");
        if (opacity < 1)
        {
            Attribute("fill-opacity", Number(opacity));
        }

        _xml.WriteEndElement();
    }

    /// <summary>A shape filled with a colour of its own, "#rrggbb".</summary>
    public void Shade(string path, string colour)
    {
        _xml.WriteStartElement("path", Namespace);
        Attribute("d", path);
        Attribute("fill", colour);
        _xml.WriteEndElement();
    }

    /// <summary>A shape in the colour of the paper with an outline: it hides what lies under it.</summary>
    public void Paper(string path, double width = 1.4)
    {
        _xml.WriteStartElement("path", Namespace);
        Attribute("d", path);
        Attribute("style", "fill:var(--paper,#fff)");
        Attribute("stroke", "currentColor");
        Attribute("stroke-width", Number(width));
        Attribute("stroke-linejoin", "round");
        _xml.WriteEndElement();
    }

    /// <summary>A rectangle: "paper" in the page's colour, "none" an outline.</summary>
    public void Box(double x, double y, double width, double height, string kind, double line = 1)
    {
        _xml.WriteStartElement("rect", Namespace);
        Attribute("x", Number(x));
        Attribute("y", Number(y));
        Attribute("width", Number(width));
        Attribute("height", Number(height));
        if (kind == "paper")
        {
            Attribute("fill", "#fff");
        }
        else
        {
            Attribute("fill", "none");
            Attribute("stroke", "currentColor");
            Attribute("stroke-width", Number(line));
        }

        _xml.WriteEndElement();
    }

    /// <summary>Words: anchored at their "start", "middle" or "end".</summary>
    public void Words(double x, double y, string words, double size, string anchor = "middle", bool bold = false, string? ink = null)
    {
        _xml.WriteStartElement("text", Namespace);
        Attribute("x", Number(x));
        Attribute("y", Number(y));
        Attribute("font-size", Number(size));
        Attribute("text-anchor", anchor);
        Attribute("fill", ink ?? "currentColor");
        if (bold)
        {
            Attribute("font-weight", "bold");
        }

        _xml.WriteString(Valid(words));
        _xml.WriteEndElement();
    }

    /// <summary>A number as SVG writes it: at most two decimals.</summary>
    public static string Number(double value) => (Math.Round(value, 2) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);

    private void Named(string element, string id, string words)
    {
        _xml.WriteStartElement(element, Namespace);
        Attribute("id", id);
        _xml.WriteString(Valid(words));
        _xml.WriteEndElement();
    }

    private void Attribute(string name, string value) => _xml.WriteAttributeString(name, value);

    /// <summary>Words without signs that XML does not know.</summary>
    private static string Valid(string words) => string.Concat(words.Where(c => XmlConvert.IsXmlChar(c) || char.IsSurrogate(c)));
}
