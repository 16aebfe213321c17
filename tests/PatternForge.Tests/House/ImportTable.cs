using System.Text.RegularExpressions;

namespace PatternForge.Tests.House;

/// <summary>One room of the house: its folders, and what it may import.</summary>
/// <param name="Folders">Folders as the table names them: <c>Core/Text</c>; <c>Core</c> is the project's own top folder.</param>
/// <param name="Allowed">Folders, <c>Core/*</c> for a whole project, or <c>Core.Name</c> for one type of a top folder.</param>
internal sealed record Room(string[] Folders, string[] Allowed)
{
    /// <summary>True when the room may import from a folder.</summary>
    public bool Admits(string folder) => Folders.Contains(folder, StringComparer.Ordinal) || Allowed.Contains(folder, StringComparer.Ordinal) || Allowed.Contains(folder.Split('/')[0] + "/*", StringComparer.Ordinal);

    /// <summary>True when the room may use one type of a project's top folder.</summary>
    public bool AdmitsType(string project, string type) => Admits(project) || Allowed.Contains($"{project}.{type}", StringComparer.Ordinal);
}

/// <summary>The table of who may import whom, as DEVELOPERS.md has it, and how the source keeps to it.</summary>
internal static partial class ImportTable
{
    private static readonly string[] Projects = ["Core", "Rendering", "Cli"];

    /// <summary>The rooms in the order of the table.</summary>
    public static Room[] Read(ProjectFile document) =>
        [.. MarkdownTable.Rows(document, "folder", "may import").Select(cells => new Room(MarkdownTable.Quoted(cells[0]), MarkdownTable.Quoted(cells[1])))];

    /// <summary>The folder that a source file stands in, as the table names it.</summary>
    public static string FolderOf(ProjectFile file) => file.Folder["src/PatternForge.".Length..];

    /// <summary>Every folder of the source.</summary>
    public static string[] Folders(IEnumerable<ProjectFile> source) => [.. source.Select(FolderOf).Distinct(StringComparer.Ordinal)];

    /// <summary>Where the source imports what the table does not allow.</summary>
    public static string[] Breaches(Room[] rooms, ProjectFile[] source)
    {
        var folders = Folders(source);
        var topTypes = Projects.ToDictionary(p => p, p => source.Where(f => FolderOf(f) == p).SelectMany(f => Declaration().Matches(f.Text)).Select(m => m.Groups[1].Value).ToArray(), StringComparer.Ordinal);
        return [.. from file in source
                   let own = FolderOf(file)
                   let room = rooms.Single(r => r.Folders.Contains(own, StringComparer.Ordinal))
                   from breach in OfFile(file, own, room, folders, topTypes)
                   select $"{file.Path}: {breach}"];
    }

    private static IEnumerable<string> OfFile(ProjectFile file, string own, Room room, string[] folders, Dictionary<string, string[]> topTypes)
    {
        var code = Remark().Replace(file.Text, "");
        var project = own.Split('/')[0];
        var near = new HashSet<string>(StringComparer.Ordinal) { project };
        foreach (Match use in OwnName().Matches(code))
        {
            var said = use.Groups[1].Value.Split('.');
            if (said.Length > 1 && folders.Contains($"{said[0]}/{said[1]}", StringComparer.Ordinal))
            {
                if (!room.Admits($"{said[0]}/{said[1]}"))
                {
                    yield return use.Value;
                }
            }
            else if (!code.AsSpan(0, use.Index).EndsWith("namespace "))
            {
                near.Add(said[0]);
                if (!room.Admits(said[0]) && !room.Allowed.Any(a => a.StartsWith(said[0] + ".", StringComparison.Ordinal)))
                {
                    yield return use.Value;
                }
            }
        }

        // A folder's neighbours can be named without their project: `Work.WorkedLine`.
        foreach (var neighbour in folders.Where(f => f.StartsWith(project + "/", StringComparison.Ordinal) && !room.Admits(f)))
        {
            foreach (Match use in Regex.Matches(code, $@"(?<![\w.]){neighbour[(project.Length + 1)..]}\.[A-Z]\w*", RegexOptions.ExplicitCapture))
            {
                yield return use.Value;
            }
        }

        // Types of a top folder need no import below it.
        foreach (var (top, type) in near.SelectMany(top => topTypes[top].Select(type => (top, type))))
        {
            if (own != top && !room.AdmitsType(top, type) && Regex.IsMatch(code, $@"(?<![\w.]){type}\b(?!\s*[=:])", RegexOptions.ExplicitCapture))
            {
                yield return $"{top}.{type}";
            }
        }
    }

    [GeneratedRegex(@"\bPatternForge\.((?:Core|Rendering|Cli)(?:\.\w+)*)")]
    private static partial Regex OwnName();

    [GeneratedRegex(@"^(?:public|internal) (?:(?:static|sealed|abstract|readonly|partial) )*(?:class|record struct|record|enum|interface|struct|delegate \w+) (\w+)", RegexOptions.Multiline)]
    private static partial Regex Declaration();

    [GeneratedRegex(@"(?m)^\s*//.*$|""(?:[^""\\\n]|\\.)*""", RegexOptions.ExplicitCapture)]
    private static partial Regex Remark();
}
