using System.Collections.Immutable;
using System.CommandLine;
using PatternForge.Cli.Reporting;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Work;

namespace PatternForge.Cli.Commands;

/// <summary><c>counts FILE</c>: the stitches before and after every row, in every size.</summary>
internal static class CountsCommand
{
    /// <summary>What the command line asks for.</summary>
    private sealed record Asked(string? Size, bool Numbers, bool Yarn, string? Trace, string? Form);

    private static readonly string[] Forms = ["text", "json", "csv"];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var file = new Argument<string[]>("FILE") { Description = "A pattern file, or - for standard input", Arity = ArgumentArity.ZeroOrMore };
        file.CompletionSources.Add(Suggestions.PatternFiles);
        var size = new Option<string>("--size") { Description = "Show one size alone, by its name", HelpName = "M" };
        size.CompletionSources.Add(context => SizesOf(context.ParseResult.GetValue(file) ?? [], around));
        var format = Arguments.Form("How to tell the counts", Forms);
        var trace = new Option<string>("--trace") { Description = "Show how the count of one row comes about, clause by clause: its label, or the number of its line", HelpName = "ROW" };
        var numbers = new Option<bool>("--numbers") { Description = "Show the numbers of the header instead: each value, its formula, and how far rounding moved it" };
        var yarn = new Option<bool>("--yarn") { Description = "Show what each size takes of each yarn instead, how it is reckoned, and how far it may be out" };
        var command = new Command("counts", "Show the stitches before and after every row, in every size.") { file, size, numbers, yarn, trace, format };
        command.SetAction(parsed => Run(parsed.GetValue(file) ?? [], new(parsed.GetValue(size), parsed.GetValue(numbers), parsed.GetValue(yarn), parsed.GetValue(trace), parsed.GetValue(format)), around));
        return command;
    }

    private static int Run(string[] paths, Asked asked, Surroundings around)
    {
        if (paths.Length != 1)
        {
            return CommandLine.Refuse("say which pattern to count: one file, or `-` for standard input", around, "counts");
        }

        if (Arguments.Choice(asked.Form ?? Forms[0], "form", Forms, around, "counts") is not { } form)
        {
            return ExitCode.Usage;
        }

        if ((asked.Trace is not null || asked.Numbers || asked.Yarn) && form == "csv")
        {
            return CommandLine.Refuse(asked.Yarn ? "amounts of yarn are told as text or json" : asked.Numbers ? "the header's numbers are told as text or json" : "a row is traced as text or json", around, "counts");
        }

        if (asked.Yarn && (asked.Numbers || asked.Trace is not null))
        {
            return CommandLine.Refuse("ask for the yarn, for the numbers of the header or for the trace of a row, one at a time", around, "counts");
        }

        if (asked.Trace is not null && asked.Numbers)
        {
            return CommandLine.Refuse("ask for the numbers of the header or for the trace of a row, one at a time", around, "counts");
        }

        var full = InputFiles.FullPathOf(paths[0], around.Folder);
        if (full is not null && Directory.Exists(full) && !string.Equals(paths[0], InputFiles.StandardInput, StringComparison.Ordinal))
        {
            return CommandLine.Refuse($"`{paths[0]}` is a folder: counts looks at one file", around, "counts");
        }

        var input = InputFiles.Find(paths, around);
        var code = Arguments.Complain(input, around);
        if (input.Files.IsEmpty)
        {
            return code;
        }

        var file = PatternWork.Compile(input.Files[0], new HouseFiles(around), around, asked.Trace is not null, []);
        code = Math.Max(PatternWork.Complain([file], around), HouseFiles.Complain([file], around));
        if (file.Compilation is not { } compilation)
        {
            if (file.Report is { } refused)
            {
                around.Tell(TextReport.Of([refused], around.Width, new Paint(around.ColourError)));
                code = ExitCode.Findings;
            }

            return code;
        }

        return Math.Max(code, Print(compilation, asked, form, around));
    }

    /// <summary>The sizes of the pattern that a command line names; none where it names none that can be read.</summary>
    public static IEnumerable<string> SizesOf(string[] paths, Surroundings around)
    {
        if (paths is not [var path] || InputFiles.FullPathOf(path, around.Folder) is not { } full || !File.Exists(full))
        {
            return [];
        }

        var names = PatternWork.Compile(new(path, full, path), new HouseFiles(around), around, editions: []).Compilation?.Pattern.Facts.Sizes.Names ?? [];
        return names.Where(name => name.Length > 0);
    }

    private static int Print(Compilation compilation, Asked asked, string form, Surroundings around)
    {
        var sizes = compilation.Pattern.Facts.Sizes;
        var (size, trace) = (asked.Size, asked.Trace);
        var only = -1;
        if (size is not null && (only = sizes.IndexOf(size)) < 0)
        {
            var nearest = Suggest.Nearest(size, sizes.Names, 1);
            var hint = sizes is { Count: 1 } && sizes.Names[0].Length == 0 ? "the pattern names no sizes"
                : nearest.Count > 0 ? $"did you mean `{nearest[0]}`?"
                : $"there {(sizes.Count == 1 ? "is" : "are")} {string.Join(", ", sizes.Names)}";
            return CommandLine.Refuse($"the pattern has no size `{size}`: {hint}", around, "counts");
        }

        WorkedLine? traced = null;
        if (trace is not null && (traced = TracedRow.Find(compilation, trace, around)) is null)
        {
            return ExitCode.Usage;
        }

        var table = TableOf(compilation, traced is null ? compilation.Lines : [traced], only);
        around.Write(form switch
        {
            "json" when asked.Yarn => YarnReport.Json(compilation.Source.Path, compilation.Pattern.Facts, compilation.Yarn, only),
            _ when asked.Yarn => YarnReport.Text(compilation.Pattern.Facts, compilation.Yarn, only, new Paint(around.ColourOut)),
            "json" when asked.Numbers => NumbersReport.Json(compilation.Source.Path, compilation.Pattern.Facts, only),
            _ when asked.Numbers => NumbersReport.Text(compilation.Pattern.Facts, only, new Paint(around.ColourOut)),
            "text" when traced is not null => TraceText.Of(traced, compilation.LineOf(traced.Origin), compilation.Text.Text, [.. sizes.Names.Index().Where(s => only < 0 || s.Index == only)], around.Width, new Paint(around.ColourOut)),
            "json" => CountsJson.Of(table),
            "csv" => CountsCsv.Of(table),
            _ => CountsText.Of(table, around.Width, new Paint(around.ColourOut)),
        });
        var errors = compilation.Findings.Count(f => f is { Accepted: null, Severity: Severity.Error });
        if (errors > 0)
        {
            around.Say($"{Words.Counted(errors, "error")} in this pattern: `patternforge lint` tells which rows are wrong");
        }

        return ExitCode.Clean;
    }

    private static CountsTable TableOf(Compilation compilation, ImmutableArray<WorkedLine> lines, int only)
    {
        var pieces = new List<CountedPiece>();
        var rows = new List<CountedRow>();
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i];
            rows.Add(RowOf(compilation, line, only));
            if (i + 1 == lines.Length || !string.Equals(lines[i + 1].Piece, line.Piece, StringComparison.Ordinal))
            {
                pieces.Add(new(line.Piece, [.. rows]));
                rows.Clear();
            }
        }

        var names = compilation.Pattern.Facts.Sizes.Names;
        return new(compilation.Source.Path, only < 0 ? names : [names[only]], [.. pieces])
        {
            Shares = lines.Length < compilation.Lines.Length ? [] : [.. compilation.Shares.Select(s => CountsJson.SharesOf(s, only < 0 ? [.. Enumerable.Range(0, names.Length)] : [only]))],
        };
    }

    private static CountedRow RowOf(Compilation compilation, WorkedLine line, int only) => new(
        line.Label,
        compilation.LineOf(line.Origin),
        DisplayText.OneLine(line.Text),
        line.Status switch
        {
            LineStatus.Checked => "checked",
            LineStatus.Trusted => "trusted",
            _ => "unread",
        },
        line.Numbers,
        Pick(line.Before, only),
        Pick(line.After, only),
        Pick(line.Kinds, only),
        Pick(line.Stated, only),
        line.Reading)
    {
        Sections = [.. Pick(line.Sections, only).Select(sections => (IReadOnlyList<SectionShape>)[.. sections.Select(s => new SectionShape(s.Stitches, s.Marker))])],
        Mirrored = [.. line.Mirrored.Select(m => new MirroredShape(Words.WellFormed(m.Label), Words.WellFormed(DisplayText.OneLine(m.Text)), Pick(m.After, only), m.IsWrittenOut))],
        Together = line.Together is { } table
            ? new TogetherShape([.. table.Shapings.Select(s => Words.WellFormed(ClauseWords.Of(s, compilation.Text.Text, int.MaxValue)))], [.. Pick(table.Sizes, only).Select(rows => (IReadOnlyList<TogetherRowShape>)[.. rows.Select(r => new TogetherRowShape(r.Row, r.Changes, r.Count))])])
            : null,
        Trace = [.. Pick(line.Trace, only).Select(stretches => TraceShapes.Of(stretches, compilation.Text.Text))],
    };

    private static ImmutableArray<T> Pick<T>(ImmutableArray<T> perSize, int only) =>
        perSize.IsDefaultOrEmpty ? [] : only < 0 ? perSize : only < perSize.Length ? [perSize[only]] : [];
}
