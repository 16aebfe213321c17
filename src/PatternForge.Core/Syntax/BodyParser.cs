using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>
/// Cuts the body into sections and blocks. One instruction a line or list item; it runs on over following lines until a blank line or a new label.
/// </summary>
public sealed class BodyParser
{
    private readonly SourceText _source;
    private readonly FindingBag _bag;
    private readonly int _end;
    private readonly List<SectionNode> _sections = [];
    private readonly List<BlockNode> _blocks = [];
    private (string Heading, string? Role, int Level, TextSpan Span) _heading;
    private int _at;

    private BodyParser(SourceText source, TextSpan body, FindingBag bag)
    {
        _source = source;
        _bag = bag;
        _at = body.Start;
        _end = body.End;
        _heading = ("", null, 0, new TextSpan(body.Start, 0));
    }

    /// <summary>The sections of the body, in order; the first has no heading.</summary>
    public static ImmutableArray<SectionNode> Parse(SourceText source, TextSpan body, FindingBag bag)
    {
        var parser = new BodyParser(source, body, bag);
        parser.Run();
        return [.. parser._sections];
    }

    private void Run()
    {
        var paragraph = TextSpan.FromBounds(_at, _at);
        var inParagraph = false;
        var kind = BlockKind.Text;

        void EndParagraph()
        {
            if (inParagraph)
            {
                AddText(kind, paragraph);
                inParagraph = false;
            }
        }

        while (_at < _end)
        {
            var line = NextLine(out var next);
            var content = TrimStart(line);
            var text = _source.Slice(content);
            if (text.Trim().IsEmpty)
            {
                EndParagraph();
                _at = next;
                continue;
            }

            if (Fence(text) is { } fence)
            {
                EndParagraph();
                _at = next;
                FencedBlock(line, content, fence);
                continue;
            }

            if (text.StartsWith("<!--"))
            {
                // A remark of its own, perhaps over several lines: it ends no paragraph and prints nowhere.
                var close = Remarks.EndOf(_source.Text, content.Start, _end);
                if (close == _end && !_source.Text.AsSpan(0, _end).EndsWith("-->"))
                {
                    _bag.Add(BodyRules.RemarkNotClosed, new TextSpan(content.Start, 4), "this remark is never closed, so nothing after it prints", "write --> where the remark ends");
                }

                var lineEnd = _source.Text.AsSpan(close, _end - close).IndexOfAny('\r', '\n');
                var rest = lineEnd < 0 ? TextSpan.FromBounds(close, _end) : new TextSpan(close, lineEnd);
                if (_source.Slice(rest).Trim().IsEmpty)
                {
                    _at = Math.Max(next, AfterLine(close));
                    continue;
                }
            }

            if (Heading(text) is var level and > 0)
            {
                EndParagraph();
                EndSection();
                _heading = ReadHeading(content, level);
                _at = next;
                continue;
            }

            var indent = content.Start - line.Start;
            if (ListMark(text) is var mark and > 0 && indent < 4 && !(inParagraph && RunsOn(_source.Slice(paragraph), text)))
            {
                EndParagraph();
                inParagraph = true;
                kind = BlockKind.ListItem;
                paragraph = TextSpan.FromBounds(content.Start + mark, content.End);
            }
            else if (!inParagraph && text[0] is '|' or '>' || IsRule(text))
            {
                EndParagraph();
                _blocks.Add(new BlockNode(BlockKind.Other, content, content));
            }
            else if (inParagraph && (IsNumbered(text) ? IsNumbered(_source.Slice(paragraph)) : StartsWithLabel(content) || BeginsInstruction(paragraph, text)))
            {
                EndParagraph();
                inParagraph = true;
                kind = BlockKind.Text;
                paragraph = content;
            }
            else if (inParagraph)
            {
                paragraph = paragraph.Cover(content);
            }
            else
            {
                inParagraph = true;
                kind = BlockKind.Text;
                paragraph = content;
            }

            _at = next;
        }

        EndParagraph();
        EndSection();
    }

    // Words that begin an instruction of its own where the line before ended its sentence; "Turn." and "Rep from *" still belong to a row.
    private static readonly string[] Openings =
    [
        "Cast on ", "Cast off ", "CO ", "Work ", "Knit ", "Purl ", "BO ", "Bind off ", "Dec ", "Decrease ", "Inc ", "Increase ", "Shape ", "Change to ", "With RS ", "With WS ", "With right side ", "With wrong side ", "Rep row", "Rep Row", "Rep rnd", "Rep Rnd", "Rep last ",
        "Repeat row", "Repeat Row", "Repeat round", "Repeat Round", "Repeat last ", "Beg with ", "Begin with ", "Complete ", "Continue ", "Cont ", "Divide ", "Break yarn", "Ch ", "Fasten off",
    ];

    /// <summary>A new line of a draft that begins a new instruction, although no blank line stands between.</summary>
    private bool BeginsInstruction(TextSpan paragraph, ReadOnlySpan<char> text)
    {
        var before = _source.Slice(paragraph).TrimEnd();
        if (before.IsEmpty || before[^1] is not ('.' or ')' or ']') || !char.IsAsciiLetterUpper(text[0]) || SectionRoles.IsProse(_heading.Role ?? SectionRoles.Slug(_heading.Heading)))
        {
            return false;
        }

        foreach (var opening in Openings)
        {
            if (text.StartsWith(opening, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    private void AddText(BlockKind kind, TextSpan span)
    {
        var text = _source.Slice(span);
        span = new TextSpan(span.Start, text.TrimEnd().Length);
        _blocks.Add(new BlockNode(kind, span, span));
    }

    private TextSpan NextLine(out int next)
    {
        var rest = _source.Text.AsSpan(_at, _end - _at);
        var length = rest.IndexOfAny('\r', '\n');
        if (length < 0)
        {
            next = _end;
            return TextSpan.FromBounds(_at, _end);
        }

        next = AfterLine(_at + length);
        return new TextSpan(_at, length);
    }

    private int AfterLine(int at)
    {
        var text = _source.Text;
        while (at < _end && text[at] is not ('\r' or '\n'))
        {
            at++;
        }

        if (at < _end)
        {
            at += text[at] == '\r' && at + 1 < _end && text[at + 1] == '\n' ? 2 : 1;
        }

        return at;
    }

    private TextSpan TrimStart(TextSpan line)
    {
        var text = _source.Slice(line);
        var trimmed = text.TrimStart();
        return TextSpan.FromBounds(line.End - trimmed.Length, line.End);
    }

    private static string? Fence(ReadOnlySpan<char> text)
    {
        if (text.StartsWith("```"))
        {
            return "```";
        }

        return text.StartsWith("~~~") ? "~~~" : null;
    }

    private void FencedBlock(TextSpan line, TextSpan opening, string fence)
    {
        var info = _source.Slice(opening).TrimStart(fence[0]).Trim();
        var name = info.IndexOf(' ') is var blank and >= 0 ? info[..blank].ToString() : info.ToString();
        var start = _at;
        while (_at < _end)
        {
            var inside = NextLine(out var next);
            _at = next;
            if (_source.Slice(TrimStart(inside)).TrimEnd().StartsWith(fence))
            {
                _blocks.Add(new BlockNode(BlockKind.Fence, line.Cover(inside), TextSpan.FromBounds(start, inside.Start), name));
                return;
            }
        }

        _bag.Add(BodyRules.BlockNotClosed, new TextSpan(opening.Start, fence.Length), "this block is never closed, so everything after it is taken for its content", $"write {fence} on a line of its own where it ends");
        _blocks.Add(new BlockNode(BlockKind.Fence, TextSpan.FromBounds(line.Start, _end), TextSpan.FromBounds(start, _end), name));
    }

    private static int Heading(ReadOnlySpan<char> text)
    {
        var level = 0;
        while (level < text.Length && level < 7 && text[level] == '#')
        {
            level++;
        }

        return level is > 0 and <= 6 && (level == text.Length || text[level] is ' ' or '\t') ? level : 0;
    }

    private (string Heading, string? Role, int Level, TextSpan Span) ReadHeading(TextSpan content, int level)
    {
        var words = Remarks.Strip(_source.ToString(content))[level..].Trim().TrimEnd('#').TrimEnd();
        string? role = null;
        var open = words.LastIndexOf("{#", StringComparison.Ordinal);
        if (open >= 0 && words.EndsWith('}'))
        {
            role = words[(open + 2)..^1].Trim().ToLowerInvariant();
            words = words[..open].TrimEnd();
        }

        return (words, role, level, new TextSpan(content.Start, _source.Slice(content).TrimEnd().Length));
    }

    private static int ListMark(ReadOnlySpan<char> text)
    {
        if (text.Length > 1 && text[0] is '-' or '+' && text[1] == ' ')
        {
            return 2;
        }

        // A star with a blank behind it is a list mark unless the line goes on to repeat from it.
        if (text.Length > 2 && text[0] == '*' && text[1] == ' ' && text[2..].IndexOf('*') < 0)
        {
            return 2;
        }

        return 0;
    }

    /// <summary>True where a narrow column has put "* to end" or "- 24 sts." of a row at the start of a line.</summary>
    private static bool RunsOn(ReadOnlySpan<char> before, ReadOnlySpan<char> line)
    {
        var end = before.TrimEnd();
        return line[0] == '*'
            ? end.EndsWith("from", StringComparison.OrdinalIgnoreCase) || end.EndsWith("between", StringComparison.OrdinalIgnoreCase)
            : line is ['-', ' ', _, ..] && line.Length < 40 && char.IsAsciiDigit(line[2]) && line.TrimEnd().TrimEnd(".)").EndsWith("sts");
    }

    private static bool IsRule(ReadOnlySpan<char> text)
    {
        var trimmed = text.Trim();
        return trimmed.Length >= 3 && trimmed[0] is '-' or '*' or '_' && trimmed.TrimEnd(trimmed[0]).IsEmpty;
    }

    /// <summary>"12. K5, turn.": a number with a full stop stands before the words.</summary>
    internal static bool IsNumbered(ReadOnlySpan<char> text)
    {
        var digits = 0;
        while (digits < text.Length && digits < 4 && char.IsAsciiDigit(text[digits]))
        {
            digits++;
        }

        return digits is > 0 and < 4 && digits + 1 < text.Length && text[digits] == '.' && text[digits + 1] == ' ';
    }

    private bool StartsWithLabel(TextSpan line)
    {
        // Only the start of the line matters for a label.
        var head = new TextSpan(line.Start, Math.Min(line.Length, 200));
        var folder = NumberFolder.Fold(_source, Lexer.Lex(_source, head));
        var at = 0;
        var starts = LabelParser.TryParse(folder.Atoms, ref at) is { IsTitle: false };
        folder.Release();
        return starts;
    }

    private void EndSection()
    {
        if (_heading.Level > 0 || _blocks.Count > 0)
        {
            _sections.Add(new SectionNode(_heading.Heading, _heading.Role, _heading.Level, _heading.Span, [.. _blocks]));
        }

        _blocks.Clear();
    }
}
