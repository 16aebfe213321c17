using System.Runtime.CompilerServices;
using SkiaSharp;

namespace PatternForge.Cli;

/// <summary>The native library that reads and writes pictures. It is asked for only where a pattern has photos or a drawing is wanted as PNG.</summary>
internal static class PictureLibrary
{
    private static readonly Lazy<string?> Found = new(Try);

    /// <summary>Why it cannot be had, in a few words; null when it can.</summary>
    public static string? Problem => Found.Value;

    private static string? Try()
    {
        try
        {
            Touch();
            return null;
        }
        catch (Exception e) when (e is DllNotFoundException or EntryPointNotFoundException or BadImageFormatException or TypeInitializationException or InvalidOperationException)
        {
            return "the library that reads and writes pictures (libSkiaSharp) is not beside the program, or does not run on this system";
        }
    }

    // Alone, so that the types of the library are made only here.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Touch()
    {
        using var dot = new SKBitmap(1, 1);
    }
}
