namespace PatternForge.Tests.Corpus;

/// <summary>One change of a text: its old words, the new ones, and which of several places is meant (from 1; null for the only one).</summary>
internal sealed record CatalogueEdit(string Old, string New, int? Which);

/// <summary>A planted mistake: a base pattern, the changes that plant it, and what must be found. The form is told in the catalogue's README.</summary>
internal sealed record CatalogueEntry(string Name, string Base, IReadOnlyList<CatalogueEdit> Edits, string Found, string? Line, string? Message)
{
    /// <summary>All entries of all files, in order.</summary>
    public static IReadOnlyList<CatalogueEntry> All { get; } =
        [.. Directory.EnumerateFiles(RepositoryRoot.Path("tests", "catalogue"), "*.txt").Order(StringComparer.Ordinal).SelectMany(f => Read(Path.GetFileName(f), File.ReadAllLines(f)))];

    private static IEnumerable<CatalogueEntry> Read(string file, string[] lines)
    {
        var pattern = "";
        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i].StartsWith("base: ", StringComparison.Ordinal))
            {
                pattern = lines[i][6..].Trim();
            }
            else if (lines[i].StartsWith("# ", StringComparison.Ordinal))
            {
                var end = i + 1;
                while (end < lines.Length && lines[end].Length > 0)
                {
                    end++;
                }

                yield return One(file, pattern, lines[i][2..].Trim(), lines[(i + 1)..end]);
                i = end;
            }
            else if (lines[i].Length > 0)
            {
                throw new InvalidDataException($"{file}, line {i + 1}: an entry begins with `# its-name`");
            }
        }
    }

    private static CatalogueEntry One(string file, string pattern, string name, string[] lines)
    {
        var (edits, found) = (new List<(List<string> Old, List<string> New, int? Which)>(), new Dictionary<char, string>());
        var last = ' ';
        foreach (var line in lines)
        {
            var (mark, text) = (line[0], line.Length > 1 ? line[2..] : "");
            if (mark is '-' && last is not '-')
            {
                edits.Add(([], [], null));
            }

            switch (mark)
            {
                case '-':
                    edits[^1].Old.Add(text);
                    break;
                case '+' when edits.Count > 0:
                    edits[^1].New.Add(text);
                    break;
                case '~' when edits.Count > 0:
                    edits[^1] = edits[^1] with { Which = int.Parse(text, System.Globalization.CultureInfo.InvariantCulture) };
                    break;
                case '!' or '@' or '=':
                    found[mark] = text;
                    break;
                default:
                    throw new InvalidDataException($"{file}, {name}: `{line}`");
            }

            last = mark;
        }

        return new CatalogueEntry(
            $"{Path.GetFileNameWithoutExtension(file)}/{name}",
            pattern,
            [.. edits.Select(e => new CatalogueEdit(string.Join('\n', e.Old), string.Join('\n', e.New), e.Which))],
            found['!'],
            found.GetValueOrDefault('@'),
            found.GetValueOrDefault('='));
    }
}
