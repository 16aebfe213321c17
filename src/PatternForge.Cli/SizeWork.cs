using PatternForge.Cli.Reporting;
using PatternForge.Core;

namespace PatternForge.Cli;

/// <summary>What came of adding a size to one source.</summary>
/// <param name="Worked">The source as it is.</param>
/// <param name="Added">The new size; null where the source could not be read.</param>
/// <param name="IsWritten">True when the file, or standard output, has the new size.</param>
/// <param name="Problem">Why it was not written though that was wanted; null otherwise.</param>
internal sealed record SizedFile(WorkedFile Worked, AddedSize? Added, bool IsWritten, string? Problem)
{
    /// <summary>True when the source came over standard input.</summary>
    public bool IsStandardInput => Worked.File.FullPath is null;

    /// <summary>The findings of the new size as a report tells them.</summary>
    public FileReport ReportOf(AddedSize added) => Worked.Report! with { Sizes = added.Names, Findings = added.Findings, Coverage = null, OpenLines = [] };
}

/// <summary>Adds sizes to sources: reads one, works the new size out, and writes it back whole or not at all where that is wanted.</summary>
internal static class SizeWork
{
    /// <summary>Adds one size to one source.</summary>
    public static SizedFile Of(InputFile file, SizeWish wish, HouseFiles houses, bool write, Surroundings around)
    {
        try
        {
            var options = PatternWork.OptionsFor(file, houses, around, out var house);
            var read = InputFiles.Read(file, options.MaxLength, around);
            if (read.Problem is not null || read.TooLarge)
            {
                return new(PatternWork.Refused(file, read, house, options), null, false, null);
            }

            var worked = PatternWork.WorkedOf(file, Compiler.Compile(read.Source, options, around.Stop), house, options, [], around);
            if (worked.Compilation is not { } plain)
            {
                return new(worked, null, false, null);
            }

            var added = SizeAdder.Add(plain, wish, options, around.Stop);
            if (added.Refusal is not null || !write)
            {
                return new(worked, added, false, null);
            }

            if (!added.CanBeWritten)
            {
                return new(worked, added, false, $"`{file.Path}` was not written: it is a draft that was mended in reading, and the places of the new values are not certain; repair it first with `patternforge lint --fix`");
            }

            return file.FullPath is { } full && RepairWork.Replace(full, read, added.Source!.Text) is { } reason
                ? new(worked, added, false, $"`{file.Path}` was not written: {reason}")
                : new(worked, added, true, null);
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            return new(new(file, null, null, null, e), null, false, null);
        }
    }
}
