using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace PatternForge.Core.Syntax;

/// <summary>Reads the header's YAML into nodes with exact places. Whatever cannot be read is a finding, and reading goes on at the next key.</summary>
public static class HeaderReader
{
    // A line that cannot be read is left out and its part of the header is read again, this many times at most.
    private const int MostRetries = 4;

    private const int MostBadParts = 50;

    /// <summary>Reads the header that stands at <paramref name="header"/>.</summary>
    /// <returns>The header's keys; empty when nothing could be read.</returns>
    public static HeaderMap Read(SourceText source, TextSpan header, CompileOptions options, FindingBag bag)
    {
        if (header.Length > options.MaxHeaderLength)
        {
            var cut = source.Text.LastIndexOf('\n', header.Start + options.MaxHeaderLength - 1, options.MaxHeaderLength) + 1;
            var rest = TextSpan.FromBounds(Math.Max(cut, header.Start), header.End);
            bag.Add(
                SyntaxRules.HeaderTooLong,
                FileSplitter.LineAt(source.Text, rest.Start),
                $"the header is longer than {options.MaxHeaderLength} characters; from here on it was not read",
                "move long texts into sections of the body");
            header = TextSpan.FromBounds(header.Start, rest.Start);
        }

        var scan = HeaderScan.Of(source, header, bag);
        var entries = new EntryList(source, bag);
        var whole = new Reading(source, header, scan, options, new FindingBag(source));
        if (whole.Run() is { } documents && whole.Failure is null)
        {
            whole.Report(bag);
            foreach (var root in documents)
            {
                entries.AddRoot(root);
            }

            return entries.ToMap(header, []);
        }

        return ByKeys(source, header, scan, options, bag, entries);
    }

    // The header in parts, one for each of its keys, so that a part that cannot be read does not hide the others.
    private static HeaderMap ByKeys(SourceText source, TextSpan header, HeaderScan scan, CompileOptions options, FindingBag bag, EntryList entries)
    {
        var damaged = ImmutableArray.CreateBuilder<string>();
        var starts = scan.KeyLines.Count > 0 && scan.KeyLines[0] == header.Start ? [.. scan.KeyLines] : scan.KeyLines.Prepend(header.Start).ToArray();
        for (var i = 0; i < starts.Length; i++)
        {
            var part = TextSpan.FromBounds(starts[i], i + 1 < starts.Length ? starts[i + 1] : header.End);
            if (damaged.Count >= MostBadParts)
            {
                bag.Add(SyntaxRules.UnreadableHeader, FileSplitter.LineAt(source.Text, part.Start), $"{MostBadParts} parts of the header could not be read; from here on it was left alone");
                break;
            }

            var reading = new Reading(source, part, scan, options, new FindingBag(source));
            var roots = reading.Run();
            var isRest = false;
            if (reading.Failure is { } first)
            {
                isRest = true;
                bag.Add(first);
                damaged.Add(KeyOf(source, part));
                for (var retry = 0; retry < MostRetries && reading.Failure is { } failure && reading.MayWinMore && reading.BlankOut(failure.Span.Start); retry++)
                {
                    reading = new Reading(source, part, scan, options, new FindingBag(source));
                    roots = reading.Run();
                }
            }

            reading.Report(bag);
            foreach (var root in roots)
            {
                entries.AddRoot(root, isRest);
            }
        }

        return entries.ToMap(header, damaged.ToImmutable());
    }

    private static string KeyOf(SourceText source, TextSpan part)
    {
        var line = source.Slice(FileSplitter.LineAt(source.Text, part.Start));
        var colon = line.IndexOf(':');
        return (colon < 0 ? line : line[..colon]).Trim().ToString();
    }

    /// <summary>Collects a map's keys; one that stands twice is a finding and counts once.</summary>
    private sealed class EntryList(SourceText source, FindingBag bag)
    {
        private readonly ImmutableArray<HeaderEntry>.Builder _entries = ImmutableArray.CreateBuilder<HeaderEntry>();
        private readonly Dictionary<string, HeaderEntry> _byName = new(StringComparer.Ordinal);

        public void Add(HeaderEntry entry)
        {
            if (_byName.TryAdd(entry.Name, entry))
            {
                _entries.Add(entry);
                return;
            }

            var first = _byName[entry.Name];
            bag.Add(new Finding(SyntaxRules.DuplicateKey, source, entry.Key.Span, $"`{entry.Name}` stands here for the second time")
            {
                Labels = [new Label(first.Key.Span, "it stands here first; this one was read")],
                Help = "keep one of the two",
            });
        }

        public void AddRoot(HeaderNode root, bool isRest = false)
        {
            if (root is HeaderMap map)
            {
                foreach (var entry in map.Entries)
                {
                    Add(entry);
                }
            }
            else if (!isRest && root is not HeaderScalar { IsBlank: true })
            {
                bag.Add(SyntaxRules.NotKeyAndValue, FirstLine(source, root.Span), "this is no `key: value` line", "write the header in lines such as `title: ...`");
            }
        }

        public HeaderMap ToMap(TextSpan span, ImmutableArray<string> damaged) => new(span, _entries.ToImmutable()) { Damaged = damaged };
    }

    private static TextSpan FirstLine(SourceText source, TextSpan span)
    {
        var line = FileSplitter.LineAt(source.Text, span.Start);
        return FileSplitter.Trimmed(source.Text, TextSpan.FromBounds(span.Start, Math.Clamp(line.End, span.Start, Math.Max(span.Start, span.End))));
    }

    /// <summary>One pass over a stretch of the header. It stops at the first thing that cannot be read and keeps what came before.</summary>
    private sealed class Reading(SourceText source, TextSpan part, HeaderScan scan, CompileOptions options, FindingBag found)
    {
        private readonly int _offset = part.Start;
        private readonly int _scanStart = scan.Start;
        private Parser? _parser;
        private readonly Stack<int> _openBrackets = new();
        private int _lastGood;

        public Finding? Failure { get; private set; }

        public void Report(FindingBag bag)
        {
            foreach (var finding in found.ToSorted())
            {
                bag.Add(finding);
            }
        }

        // False where the rest of the part stands in brackets that do not close: what they hold has been read already.
        public bool MayWinMore => !_openBrackets.TryPeek(out var bracket)
            || (FileSplitter.AfterLineEnd(source.Text, FileSplitter.LineAt(source.Text, bracket).End) is var next && next < part.End && !scan.Mask.Letters.AsSpan(next - _scanStart, part.End - next).IsWhiteSpace());

        // Blanks out the line at an offset; false when there is nothing on it.
        public bool BlankOut(int at)
        {
            var start = at;
            while (start > part.Start && source.Text[start - 1] is not ('\n' or '\r'))
            {
                start--;
            }

            var line = FileSplitter.LineAt(source.Text, start);
            var letters = scan.Mask.Letters.AsSpan(start - _scanStart, Math.Min(line.End, part.End) - start);
            if (letters.IsWhiteSpace())
            {
                return false;
            }

            letters.Fill(' ');
            return true;
        }

        public List<HeaderNode> Run()
        {
            var roots = new List<HeaderNode>();
            _parser = new Parser(new StringReader(new string(scan.Mask.Letters, part.Start - _scanStart, part.Length)));
            while (Next())
            {
                if (_parser.Current is Scalar or MappingStart or SequenceStart or AnchorAlias && Node(0) is { } root)
                {
                    roots.Add(root);
                }
            }

            return roots;
        }

        private bool Next()
        {
            if (Failure is not null)
            {
                return false;
            }

            try
            {
                if (!_parser!.MoveNext())
                {
                    return false;
                }

                var current = _parser.Current!;
                _lastGood = At(current.End);
                if (current is SequenceStart { Style: SequenceStyle.Flow } or MappingStart { Style: MappingStyle.Flow })
                {
                    _openBrackets.Push(At(current.Start));
                }
                else if (current is SequenceEnd or MappingEnd && _openBrackets.Count > 0)
                {
                    _openBrackets.Pop();
                }

                return true;
            }
            catch (YamlException e)
            {
                Failure = Unreadable(e.Start.Index > 0 || e.Start.Line > 1 ? At(e.Start) : _lastGood, e.Message);
            }
            catch (Exception e) when (e is InvalidOperationException or ArgumentException or IndexOutOfRangeException or FormatException or OverflowException or NotSupportedException or NullReferenceException or KeyNotFoundException or InvalidCastException)
            {
                Failure = Unreadable(_lastGood, "");
            }

            return false;
        }

        private int At(Mark mark) => Math.Clamp(_offset + (int)mark.Index, part.Start, part.End);

        private Finding Unreadable(int at, string why)
        {
            // In brackets, whatever is wrong is mostly that they do not close.
            at = _openBrackets.TryPeek(out var bracket) ? bracket : at;
            var start = at;
            while (start > part.Start && source.Text[start - 1] is not ('\n' or '\r'))
            {
                start--;
            }

            var line = TextSpan.FromBounds(start, Math.Min(FileSplitter.LineAt(source.Text, start).End, part.End));
            var said = FileSplitter.Trimmed(source.Text, line);
            var place = FileSplitter.Trimmed(source.Text, TextSpan.FromBounds(at, line.End));
            var span = place.IsEmpty ? said : place;
            var first = span.IsEmpty ? ' ' : source.Text[span.Start];
            var (message, help) = first switch
            {
                '[' or '{' => ($"the `{first}` that opens here is not closed as it should be", $"close it with `{(first == '[' ? ']' : '}')}`; put texts with commas or brackets of their own in quotes"),
                '"' or '\'' => ("this text in quotes could not be read", "close the quotes at its end, and double a backslash inside them"),
                _ when !source.Slice(said).Contains(':') => ("this line of the header has no key", "write `key: value`; a text that runs on is set in further than its key"),
                _ when why.Contains("mapping values", StringComparison.OrdinalIgnoreCase) => ("this line of the header is not set in like its neighbours, or has a colon too many", "start keys that belong together in the same column, or put the text in quotes"),
                _ => ("this line of the header could not be read", "start keys that belong together in the same column, and put texts with signs of their own in quotes"),
            };
            return new Finding(SyntaxRules.UnreadableHeader, source, span, message) { Help = help };
        }

        private HeaderNode? Node(int depth)
        {
            var current = _parser!.Current!;
            if (depth > options.MaxDepth && current is MappingStart or SequenceStart)
            {
                Failure = new Finding(SyntaxRules.HeaderTooDeep, source, FirstLine(source, new TextSpan(At(current.Start), 1)), $"the header is nested more than {options.MaxDepth} deep here")
                {
                    Help = "two or three steps are enough for every key",
                };
                return null;
            }

            if (current is NodeEvent { Anchor.IsEmpty: false } or NodeEvent { Tag.IsEmpty: false } or AnchorAlias)
            {
                found.Add(SyntaxRules.YamlReference, FirstLine(source, Span(current)), "names and types of YAML are not used in the header", "say what is meant in full each time");
            }

            return current switch
            {
                Scalar scalar => Text(scalar),
                AnchorAlias alias => new HeaderScalar(source, Span(alias), alias.Value.Value),
                SequenceStart => List(current, depth),
                MappingStart => Map(current, depth),
                _ => null,
            };
        }

        private HeaderScalar Text(Scalar scalar)
        {
            var span = Span(scalar);
            return new HeaderScalar(source, span, scan.Mask.Uncover(scalar.Value));
        }

        private HeaderList List(ParsingEvent start, int depth)
        {
            var span = new TextSpan(At(start.Start), 0);
            var items = ImmutableArray.CreateBuilder<HeaderNode>();
            while (Next() && _parser!.Current is not SequenceEnd)
            {
                if (Node(depth + 1) is { } item)
                {
                    items.Add(item);
                    span = span.Cover(item.Span);
                }
            }

            return new HeaderList(Closed(span, start is SequenceStart { Style: SequenceStyle.Flow }), items.ToImmutable());
        }

        private HeaderMap Map(ParsingEvent start, int depth)
        {
            var span = new TextSpan(At(start.Start), 0);
            var entries = new EntryList(source, found);
            while (Next() && _parser!.Current is not MappingEnd)
            {
                var key = Node(depth + 1);
                if (!Next())
                {
                    break;
                }

                var value = Node(depth + 1);
                if (key is HeaderScalar name && value is not null)
                {
                    entries.Add(new HeaderEntry(name, value));
                    span = span.Cover(name.Span).Cover(value.Span);
                }
                else if (key is not null && Failure is null)
                {
                    found.Add(SyntaxRules.NotKeyAndValue, FirstLine(source, key.Span), "a key of the header is one or two plain words", "put a text with brackets in quotes");
                }
            }

            return entries.ToMap(Closed(span, start is MappingStart { Style: MappingStyle.Flow }), []);
        }

        // The end of a flow list or map is where its bracket closes; that of a block is the end of what stands in it.
        private TextSpan Closed(TextSpan span, bool isFlow)
        {
            if (!isFlow || Failure is not null)
            {
                return span;
            }

            var end = Math.Max(span.End, At(_parser!.Current!.Start));
            return end < part.End && source.Text[end] is ']' or '}' ? TextSpan.FromBounds(span.Start, end + 1) : span;
        }

        private TextSpan Span(ParsingEvent e)
        {
            var (start, end) = (At(e.Start), At(e.End));
            while (end > start && char.IsWhiteSpace(source.Text[end - 1]))
            {
                end--;
            }

            return TextSpan.FromBounds(start, end);
        }
    }
}
