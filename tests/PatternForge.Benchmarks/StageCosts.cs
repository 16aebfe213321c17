using System.Diagnostics;
using System.Globalization;
using PatternForge.Core;
using PatternForge.Core.Binding;
using PatternForge.Core.Checks;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;
using PatternForge.Core.Work;
using PatternForge.Rendering;
using PatternForge.Rendering.Formats;

namespace PatternForge.Benchmarks;

/// <summary>What each stage of compiling costs in bytes and in time, on its own and warm: the first thing to look at when a run has become slower.</summary>
internal static class StageCosts
{
    private const int Runs = 400;

    /// <summary>Prints a table for a pattern made for measuring.</summary>
    public static int Print(int lines)
    {
        var source = MadePattern.Source(1, lines);
        var options = CompileOptions.Default;
        var file = FileSplitter.Split(source, new FindingBag(source));
        var header = HeaderReader.Read(source, file.Header!.Value, options, new FindingBag(source));
        var facts = HeaderBinder.Bind(header, source, new FindingBag(source));
        var sections = BodyParser.Parse(source, file.Body, new FindingBag(source));
        var body = BodyBinder.Bind(sections, facts, source, new FindingBag(source), options, default);
        var worked = PatternWorker.Work(body.Lines, facts, new FindingBag(source), options, default);
        var texts = sections.SelectMany(s => s.Blocks).Where(b => b.Kind is BlockKind.Text or BlockKind.ListItem).Select(b => b.Content).ToArray();
        var compilation = Compiler.Compile(source);
        Console.WriteLine("| stage | bytes | µs |\n|---|--:|--:|");
        Row("header read", () => HeaderReader.Read(source, file.Header!.Value, options, new FindingBag(source)));
        Row("header bound", () => HeaderBinder.Bind(header, source, new FindingBag(source)));
        Row("body cut into blocks", () => BodyParser.Parse(source, file.Body, new FindingBag(source)));
        Row("lines cut into tokens", () => Array.ForEach(texts, t => Lexer.Lex(source, t)));
        Row("rows parsed, tokens included", () => Array.ForEach(texts, t => RowParser.Parse(source, Lexer.Lex(source, t), new FindingBag(source), options.MaxDepth)));
        Row("rows bound, parsing included", () => BodyBinder.Bind(sections, facts, source, new FindingBag(source), options, default));
        Row("rows worked", () => PatternWorker.Work(body.Lines, facts, new FindingBag(source), options, default));
        Row("checks", () => CheckList.Run(new CheckContext(new Pattern(facts, body.Sections), worked, source, new FindingBag(source)) { Abbreviations = body.Abbreviations, Words = body.Words }));
        Row("all of it", () => Compiler.Compile(new SourceText(source.Path, source.Text)));
        Row("HTML", () => Renderer.Render(compilation, OutputFormat.Html));
        Row("Markdown", () => Renderer.Render(compilation, OutputFormat.Markdown));
        return 0;
    }

    private static void Row(string stage, Action work)
    {
        for (var i = 0; i < Runs; i++)
        {
            work();
        }

        var times = new double[Runs];
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < Runs; i++)
        {
            var start = Stopwatch.GetTimestamp();
            work();
            times[i] = Stopwatch.GetElapsedTime(start).TotalMicroseconds;
        }

        var bytes = (GC.GetAllocatedBytesForCurrentThread() - before) / Runs;
        Array.Sort(times);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {stage} | {bytes:N0} | {times[Runs / 2]:0} |"));
    }
}
