using System.Text;
using System.Text.Json;
using PatternForge.Core.Model;

namespace PatternForge.Cli.Releases;

/// <summary>
/// The list of a release's files, so that whoever has them can tell that they are whole and belong together. It names the pattern's title, version and date and
/// every file with its length and its SHA-256 (FIPS 180-4), in the order of the names; it holds no clock, no machine and no folder.
/// </summary>
internal static class ReleaseManifest
{
    /// <summary>The end of its name.</summary>
    public const string Extension = ".files.json";

    private const int Form = 1;

    private static readonly JsonWriterOptions Layout = new() { Indented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The list as JSON.</summary>
    /// <param name="facts">What the pattern says of itself.</param>
    /// <param name="draft">True for a draft.</param>
    /// <param name="files">The files.</param>
    public static string Of(PatternFacts facts, bool draft, IEnumerable<WrittenFile> files)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Layout))
        {
            json.WriteStartObject();
            json.WriteNumber("manifest", Form);
            json.WriteString("title", facts.Title?.Value);
            json.WriteString("version", facts.Version);
            json.WriteString("date", facts.Date);
            json.WriteBoolean("draft", draft);
            json.WriteStartArray("files");
            foreach (var file in files.OrderBy(f => f.Name, StringComparer.Ordinal))
            {
                json.WriteStartObject();
                json.WriteString("name", file.Name);
                json.WriteNumber("bytes", file.Bytes);
                json.WriteString("sha256", file.Sha256);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length) + "\n";
    }
}
