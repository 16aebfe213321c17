using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads the header's notes on turning chains: "Ch 3 counts as dc throughout", "The beginning chain counts as the first stitch", "Ch-4 counts as dc and ch 1".</summary>
internal static class TurningChainReader
{
    /// <summary>What the notes say, in order.</summary>
    public static ImmutableArray<TurningChainNote> Read(ImmutableArray<Located<string>> notes)
    {
        var found = ImmutableArray.CreateBuilder<TurningChainNote>();
        foreach (var sentence in notes.SelectMany(n => n.Value.Split('.', ';')))
        {
            if (sentence.Length is 0 or > 300)
            {
                continue;
            }

            var source = new SourceText("", sentence);
            var folder = NumberFolder.Fold(source, Lexer.Lex(source, new TextSpan(0, sentence.Length)));
            var atoms = folder.Atoms.ToImmutableArray();
            folder.Release();
            if (atoms.Length > 0 && One(Vocabulary.Normalise(atoms)) is { } note)
            {
                found.Add(note);
            }
        }

        return found.ToImmutable();
    }

    private static TurningChainNote? One(List<Lexeme> lexemes)
    {
        var verb = lexemes.FindIndex(l => l.Norm is "counts" or "count" or "counted" or "counting");
        if (verb < 1)
        {
            return null;
        }

        var ch = lexemes.FindIndex(0, verb, l => l.Norm is "ch" or "chain" or "chains" or "tch" or "3ch" || l.Norm.StartsWith("ch-", StringComparison.Ordinal));
        if (ch < 0 || lexemes.FindIndex(0, verb, l => l.Norm is "sp" or "space" or "spaces" or "sps") >= 0)
        {
            return null;
        }

        int? length = null;
        if (lexemes[ch].Norm.StartsWith("ch-", StringComparison.Ordinal) && int.TryParse(lexemes[ch].Norm.AsSpan(3), out var joined))
        {
            length = joined;
        }
        else if (ch + 1 < verb && lexemes[ch + 1].Number is { IsList: false } behind)
        {
            length = (int)Math.Min(behind.Values[0] ?? 0, 1000);
        }
        else if (ch > 0 && lexemes[ch - 1].Number is { IsList: false, IsOrdinal: false } before)
        {
            length = (int)Math.Min(before.Values[0] ?? 0, 1000);
        }

        return CountsWords.Read(lexemes.GetRange(Math.Max(0, verb - 2), lexemes.Count - Math.Max(0, verb - 2))) is { } said ? new TurningChainNote(length, said.Counts, null, said.Counts ? said.Over : null) : null;
    }
}
