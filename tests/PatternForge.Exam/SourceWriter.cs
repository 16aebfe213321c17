using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PatternForge.Core.Text;

namespace PatternForge.Exam;

/// <summary>A case written out as a source file, and where the rows asked about stand in it.</summary>
public sealed record CaseSource(SourceText Source, ImmutableArray<TextSpan> Rows);

/// <summary>Writes the header and the body of a source as a designer would.</summary>
internal sealed class SourceWriter
{
    private readonly StringBuilder _text = new("---\n");
    private readonly ImmutableArray<TextSpan>.Builder _rows = ImmutableArray.CreateBuilder<TextSpan>();

    public void Key(string key, string value) => _text.Append(CultureInfo.InvariantCulture, $"{key}: {Quoted(value)}\n");

    public void Lines(params ReadOnlySpan<string> lines)
    {
        foreach (var line in lines)
        {
            _text.Append(line).Append('\n');
        }
    }

    public void List(string key, IEnumerable<string> values)
    {
        var all = values.Select(Quoted).ToArray();
        if (all.Length > 0)
        {
            _text.Append(CultureInfo.InvariantCulture, $"{key}: [{string.Join(", ", all)}]\n");
        }
    }

    public void Table(string key, IEnumerable<(string Name, string Value)> entries, string indent = "")
    {
        var all = entries.ToArray();
        if (all.Length == 0)
        {
            return;
        }

        _text.Append(CultureInfo.InvariantCulture, $"{indent}{key}:\n");
        foreach (var (name, value) in all)
        {
            _text.Append(CultureInfo.InvariantCulture, $"{indent}  {Quoted(name)}: {Quoted(value)}\n");
        }
    }

    public void EndHeader() => _text.Append("---\n");

    public void Heading(string heading) => _text.Append(CultureInfo.InvariantCulture, $"\n## {heading}\n");

    public void Paragraph(string text) => _text.Append('\n').Append(OneLine(text)).Append('\n');

    /// <summary>A row that is asked about.</summary>
    public void Row(string text)
    {
        var line = OneLine(text);
        _text.Append('\n');
        _rows.Add(new TextSpan(_text.Length, line.Length));
        _text.Append(line).Append('\n');
    }

    public CaseSource ToSource(string id) => new(new SourceText(id + ".pattern.md", _text.ToString()), _rows.ToImmutable());

    /// <summary>"34 (38, 42)": the numbers of all sizes as the trade writes them, a dash where a size has none; one alone when all agree.</summary>
    public static string Sized(IReadOnlyList<int?> values)
    {
        var words = values.Select(v => v?.ToString(CultureInfo.InvariantCulture) ?? "-").ToArray();
        return Sized(words);
    }

    /// <summary>"S (M, L)": the values of all sizes as the trade writes them; one alone when all agree.</summary>
    public static string Sized(IReadOnlyList<string> words) =>
        words.All(w => string.Equals(w, words[0], StringComparison.Ordinal)) ? words[0] : $"{words[0]} ({string.Join(", ", words.Skip(1))})";

    private static string OneLine(string text) => text.ReplaceLineEndings(" ").Trim();

    private static string Quoted(string value) => value.Length > 0 && value.All(c => char.IsAsciiLetterOrDigit(c) || c is ' ' or '-') && !char.IsWhiteSpace(value[^1]) && char.IsAsciiLetter(value[0])
        ? value
        : $"\"{value.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
