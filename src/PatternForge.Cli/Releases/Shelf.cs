using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Rendering;
using PatternForge.Rendering.Documents;

namespace PatternForge.Cli.Releases;

/// <summary>The patterns of a folder beside each other: which there are is known before the first is released, so that each page can name others.</summary>
/// <param name="Designs">The design of each pattern that has no error, by its files' stem.</param>
/// <param name="View">All of them.</param>
internal sealed record Shelf(ImmutableDictionary<string, DesignView> Designs, ShelfView View)
{
    private const string PageExtension = ".html";

    // What every page and style sheet of ours says of itself, whatever the templates are.
    private const string Mark = "PatternForge";

    /// <summary>The files of a shelf, besides those of its patterns.</summary>
    public static ImmutableArray<string> Names { get; } = ["index.html", "studio.css", "index" + ReleaseManifest.Extension];

    /// <summary>Reads what stands on the shelf. The patterns are read once more when they are released: a shelf of hundreds does not fit in memory at once.</summary>
    public static Shelf Of(ImmutableArray<InputFile> files, HouseFiles houses, bool draft, Surroundings around)
    {
        var designs = new DesignView?[files.Length];
        Parallel.For(0, files.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = around.Stop }, i => designs[i] = DesignOf(files[i], houses, draft, around));
        var found = designs.OfType<DesignView>().ToArray();
        return new(files.Select((f, i) => (f, design: designs[i])).Where(p => p.design is not null).ToImmutableDictionary(p => StemOf(p.f), p => p.design!, StringComparer.Ordinal), ShelfBuilder.Build(found));
    }

    /// <summary>The stem of a pattern's files, as a path below the shelf.</summary>
    public static string StemOf(InputFile file) => file.Stem.Replace('\\', '/');

    /// <summary>Writes the page and its style sheet; null, or a sentence on why they were not written.</summary>
    /// <param name="built">What was released.</param>
    /// <param name="plan">How.</param>
    /// <param name="findings">Takes what is wrong with the templates.</param>
    public (ImmutableArray<string> Written, string? Problem) Write(IEnumerable<Released> built, ReleasePlan plan, ImmutableArray<Finding>.Builder findings)
    {
        var released = built.Where(b => (b.IsUnchanged || !b.Written.IsEmpty) && Designs.ContainsKey(StemOf(b.Worked.File))).ToArray();
        if (released.Length == 0)
        {
            return ([], null);
        }

        var made = Renderer.Shelf(ShelfBuilder.Build(released.Select(b => WithPicture(Designs[StemOf(b.Worked.File)], b))), plan.Templates);
        findings.AddRange(made.Findings);
        if (made.Files.IsEmpty)
        {
            return ([], null);
        }

        foreach (var name in made.Files.Select(f => f.Name))
        {
            if (!IsOurs(Path.GetFullPath(name, plan.Folder)))
            {
                return ([], $"`{name}` in the folder to write into is not from this program and was left alone: the shelf was not written; choose another folder with --out");
            }
        }

        var folder = new ReleaseFolder(new InputFile("the shelf", null, "index"), plan.Folder, []);
        foreach (var file in made.Files)
        {
            folder.Write(file.Name, file.Text);
        }

        folder.Write("index" + ReleaseManifest.Extension, ReleaseManifest.Of(View.Title, folder.Files));
        return (folder.Names, folder.Problems.FirstOrDefault());
    }

    private static DesignView? DesignOf(InputFile file, HouseFiles houses, bool draft, Surroundings around)
    {
        try
        {
            if (file.FullPath is null)
            {
                return null;
            }

            // Photos cost more than all the rest, and say nothing here.
            var options = PatternWork.OptionsFor(file, houses, around, out _) with { LookAtPhoto = null, Checking = Checking.ErrorsAlone };
            var read = InputFiles.Read(file, options.MaxLength, around);
            if (read.Problem is not null || read.TooLarge)
            {
                return null;
            }

            var compilation = Compiler.Compile(read.Source, options, around.Stop);
            var hasErrors = compilation.Findings.Any(f => f is { Severity: Severity.Error, Accepted: null });
            return hasErrors && !draft ? null : ShelfBuilder.Design(compilation, StemOf(file), PageExtension, draft);
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            // It is met again, and told, when the pattern is released.
            return null;
        }
    }

    private static DesignView WithPicture(DesignView design, Released released)
    {
        if (released.Picture is not { } picture)
        {
            return design;
        }

        var stem = StemOf(released.Worked.File);
        var below = stem.LastIndexOf('/') is >= 0 and var slash ? stem[..(slash + 1)] : "";
        var address = string.Join('/', (below + picture.Name).Split('/').Select(Uri.EscapeDataString));
        return design with { Photo = new PhotoView { Address = address, Alt = picture.Alt, Width = picture.Width, Height = picture.Height } };
    }

    private static bool IsOurs(string path)
    {
        try
        {
            return !File.Exists(path) || File.ReadAllText(path).Contains(Mark, StringComparison.Ordinal);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
