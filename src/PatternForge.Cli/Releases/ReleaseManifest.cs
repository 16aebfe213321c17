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
    private const int MostBytes = 4_000_000;

    private static readonly JsonWriterOptions Layout = new() { Indented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The list of a pattern's release as JSON.</summary>
    /// <param name="facts">What the pattern says of itself.</param>
    /// <param name="draft">True for a draft.</param>
    /// <param name="files">The files.</param>
    /// <param name="stamp">What it was made from; null where it must be made again in any case.</param>
    /// <param name="picture">Its picture on a shelf; null where it has none.</param>
    public static string Of(PatternFacts facts, bool draft, IEnumerable<WrittenFile> files, ReleaseStamp? stamp, ShelfPicture? picture) => Of(facts.Title?.Value, files, json =>
    {
        json.WriteString("version", facts.Version);
        json.WriteString("date", facts.Date);
        json.WriteBoolean("draft", draft);
        if (picture is not null)
        {
            json.WriteString("picture", picture.Name);
        }

        if (stamp is null)
        {
            return;
        }

        json.WriteString("made_from", stamp.Text);
        json.WriteStartObject("beside");
        foreach (var (name, sha) in stamp.Beside)
        {
            json.WriteString(name, sha);
        }

        json.WriteEndObject();
    });

    /// <summary>The list of a shelf's own files.</summary>
    public static string Of(string title, IEnumerable<WrittenFile> files) => Of(title, files, _ => { });

    /// <summary>Where a release stands that was made from the same, and all its files are whole: its picture, or null where it has none. False in any other case.</summary>
    /// <param name="path">The list.</param>
    /// <param name="made">What it would be made from now.</param>
    /// <param name="folder">The pattern's folder.</param>
    /// <param name="picture">The file of its picture on a shelf.</param>
    public static bool IsWhole(string path, string made, string folder, out string? picture)
    {
        picture = null;
        try
        {
            if (new FileInfo(path) is not { Exists: true, Length: <= MostBytes })
            {
                return false;
            }

            using var json = JsonDocument.Parse(File.ReadAllBytes(path));
            var root = json.RootElement;
            if (root.ValueKind is not JsonValueKind.Object || !root.TryGetProperty("made_from", out var from) || from.ValueKind is not JsonValueKind.String || from.GetString() != made
                || !root.TryGetProperty("beside", out var beside) || beside.ValueKind is not JsonValueKind.Object || !root.TryGetProperty("files", out var files) || files.ValueKind is not JsonValueKind.Array)
            {
                return false;
            }

            picture = root.TryGetProperty("picture", out var shown) && shown.ValueKind is JsonValueKind.String ? shown.GetString() : null;
            var place = Path.GetDirectoryName(path)!;
            return beside.EnumerateObject().All(b => b.Value.ValueKind is JsonValueKind.String && ReleaseStamp.ShaOf(InputFiles.FullPathOf(b.Name, folder)) == b.Value.GetString())
                && files.EnumerateArray().All(f => f.GetProperty("name").GetString() is { } name && InputFiles.FullPathOf(name, place) is { } full && full.StartsWith(place, StringComparison.Ordinal)
                    && ReleaseStamp.ShaOf(full) is { Length: > 0 } sha && sha == f.GetProperty("sha256").GetString());
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException or InvalidOperationException or KeyNotFoundException)
        {
            return false;
        }
    }

    private static string Of(string? title, IEnumerable<WrittenFile> files, Action<Utf8JsonWriter> more)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Layout))
        {
            json.WriteStartObject();
            json.WriteNumber("manifest", Form);
            json.WriteString("title", title);
            more(json);
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
