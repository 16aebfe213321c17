using System.Buffers.Binary;

namespace PatternForge.Cli.Photos;

/// <summary>The segments of a JPEG file (ITU-T T.81, annex B; JFIF 1.02).</summary>
internal static class JpegFile
{
    private const byte StartOfImage = 0xD8;
    private const byte EndOfImage = 0xD9;
    private const byte StartOfScan = 0xDA;
    private const byte App0 = 0xE0;
    private const byte App1 = 0xE1;
    private const byte App2 = 0xE2;
    private const byte App14 = 0xEE;
    private const byte App15 = 0xEF;
    private const byte Comment = 0xFE;

    private static ReadOnlySpan<byte> ExifName => "Exif\0\0"u8;

    /// <summary>A marker with what belongs to it: its own segment and, for a scan, the coded data behind it.</summary>
    private readonly record struct Segment(byte Marker, int Start, int End)
    {
        public ReadOnlySpan<byte> Body(ReadOnlySpan<byte> file) => Start + 4 <= End ? file[(Start + 4)..End] : [];
    }

    /// <summary>What the file says of itself.</summary>
    public static PictureFacts FactsOf(ReadOnlySpan<byte> file)
    {
        var (width, height, hasLocation) = ((int?)null, (int?)null, false);
        foreach (var segment in Segments(file, out _))
        {
            var body = segment.Body(file);

            // The frame headers: C0 to CF but for the tables C4, C8 and CC.
            if (segment.Marker is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC) && body.Length >= 5)
            {
                (height, width) = (BinaryPrimitives.ReadUInt16BigEndian(body[1..]), BinaryPrimitives.ReadUInt16BigEndian(body[3..]));
            }
            else if (segment.Marker == App1)
            {
                hasLocation |= body.StartsWith(ExifName) ? ExifBlock.Read(body[ExifName.Length..]).HasLocation : Picture.TellsPlace(body);
            }
        }

        return new(width, height, hasLocation);
    }

    /// <summary>The file without the segments of cameras and programs, and without what follows its end; null where its segments do not follow each other as they should.</summary>
    public static byte[]? Cleaned(ReadOnlySpan<byte> file)
    {
        var segments = Segments(file, out var isSound);
        if (!isSound)
        {
            return null;
        }

        var orientation = 1;
        foreach (var segment in segments)
        {
            if (segment.Marker == App1 && segment.Body(file) is var body && body.StartsWith(ExifName))
            {
                orientation = ExifBlock.Read(body[ExifName.Length..]).Orientation;
                break;
            }
        }

        var kept = new MemoryStream(file.Length);
        kept.Write([0xFF, StartOfImage]);
        var isTurned = orientation == 1;
        foreach (var segment in segments)
        {
            // JFIF wants to be the first; the turn comes right behind it.
            if (!isTurned && segment.Marker != App0)
            {
                isTurned = true;
                byte[] block = [.. ExifName, .. ExifBlock.Turned(orientation)];
                kept.Write([0xFF, App1, 0, (byte)(block.Length + 2), .. block]);
            }

            if (IsKept(segment, file))
            {
                kept.Write(file[segment.Start..segment.End]);
            }
        }

        kept.Write([0xFF, EndOfImage]);
        return kept.ToArray();
    }

    // Of the application segments those that colours depend on: JFIF, colour profiles (ICC.1, annex B) and Adobe's colour transform.
    private static bool IsKept(Segment segment, ReadOnlySpan<byte> file) => segment.Marker switch
    {
        App0 => segment.Body(file).StartsWith("JFIF\0"u8),
        App2 => segment.Body(file).StartsWith("ICC_PROFILE\0"u8),
        App14 => segment.Body(file).StartsWith("Adobe"u8),
        >= App0 and <= App15 or Comment => false,
        _ => true,
    };

    /// <summary>The segments between the start and the end of the image; what follows the end is none of it.</summary>
    private static List<Segment> Segments(ReadOnlySpan<byte> file, out bool isSound)
    {
        var segments = new List<Segment>();
        var at = 2;
        isSound = false;
        while (at + 1 < file.Length && file[at] == 0xFF)
        {
            var marker = file[at + 1];
            if (marker == 0xFF)
            {
                at++;
                continue;
            }

            if (marker == EndOfImage)
            {
                isSound = true;
                break;
            }

            // TEM and the restart markers stand alone.
            var end = marker is 0x01 or (>= 0xD0 and <= 0xD7) ? at + 2 : at + 4 > file.Length ? int.MaxValue : at + 2 + BinaryPrimitives.ReadUInt16BigEndian(file[(at + 2)..]);
            if (marker is 0 or StartOfImage || end > file.Length || end < at + 2)
            {
                break;
            }

            if (marker == StartOfScan)
            {
                while (end + 1 < file.Length && (file[end] != 0xFF || file[end + 1] is 0 or (>= 0xD0 and <= 0xD7)))
                {
                    end++;
                }

                if (end + 1 >= file.Length)
                {
                    // Cut off inside the picture: a browser shows what there is.
                    segments.Add(new(marker, at, file.Length));
                    isSound = true;
                    break;
                }
            }

            segments.Add(new(marker, at, end));
            at = end;
        }

        return segments;
    }
}
