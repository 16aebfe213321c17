using System.Text;
using PatternForge.Core;

namespace PatternForge.Cli;

/// <summary>What came of repairing one source.</summary>
/// <param name="Worked">What is found after the repairs, or before them where none may be made.</param>
/// <param name="Before">The text as it was; null when it could not be read.</param>
/// <param name="After">The repaired text; null when nothing changes.</param>
/// <param name="Made">How many repairs.</param>
/// <param name="Remarks">What is worth knowing, a sentence each.</param>
/// <param name="Failed">True when the file could not be written.</param>
internal sealed record RepairedFile(WorkedFile Worked, string? Before, string? After, int Made, string[] Remarks, bool Failed);

/// <summary>Repairs sources: reads one, makes the exact repairs that its findings offer, and writes it back whole or not at all.</summary>
internal static class RepairWork
{
    /// <summary>Repairs one source in memory, and in its place where that is wanted.</summary>
    public static RepairedFile Of(InputFile file, HouseFiles houses, bool write, Surroundings around)
    {
        try
        {
            var options = PatternWork.OptionsFor(file, houses, around, out var house);
            var read = InputFiles.Read(file, options.MaxLength, around);
            if (read.Problem is not null || read.TooLarge)
            {
                return new(PatternWork.Refused(file, read, house, options), null, null, 0, [], false);
            }

            var mended = Repairs.Make(read.Source, options, around.Stop);
            var worked = PatternWork.WorkedOf(file, mended.Compilation, house, options, null, around).ForReport;
            string[] remarks = mended.Refused == 0 ? [] : [$"`{file.Path}`: {Reporting.Words.Counted(mended.Refused, "repair")} left out: a new error would have followed"];
            if (!mended.IsChanged)
            {
                return new(worked, read.Source.Text, null, 0, remarks, false);
            }

            var (before, after) = (read.Source.Text, mended.Compilation.Source.Text);
            if (!write || file.FullPath is not { } full)
            {
                return new(worked, before, after, mended.Made, remarks, false);
            }

            if (Replace(full, read, after) is { } reason)
            {
                return new(worked, before, after, 0, [.. remarks, $"`{file.Path}` was not repaired: {reason}"], true);
            }

            return new(worked, before, after, mended.Made, [.. remarks, $"`{file.Path}`: {Reporting.Words.Counted(mended.Made, "repair")} made"], false);
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            return new(new(file, null, null, null, e), null, null, 0, [], false);
        }
    }

    /// <summary>Writes a new text in the place of the file; a few words on why not.</summary>
    public static string? Replace(string full, ReadResult read, string text)
    {
        // A link is written through, but never out of its folder.
        var target = full;
        if (File.ResolveLinkTarget(full, returnFinalTarget: true) is { } linked)
        {
            var folder = Path.GetDirectoryName(full)! + Path.DirectorySeparatorChar;
            if (!linked.FullName.StartsWith(folder, StringComparison.Ordinal))
            {
                return "it is a link to a file in another folder; name that file";
            }

            target = linked.FullName;
        }

        var bytes = Encoding.UTF8.GetBytes(text);
        byte[] content = read.HasMark ? [0xEF, 0xBB, 0xBF, .. bytes] : bytes;
        return OutputFiles.Replace(target, content, read.Source.Text);
    }
}
