using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Reads a put-up: the mass and the length of one ball, in either order.</summary>
internal static class PutUp
{
    /// <summary>The first mass and the first yarn length in a text; null for what it does not hold.</summary>
    public static (Quantity? Mass, Quantity? Length) In(string text)
    {
        Quantity? mass = null;
        Quantity? length = null;
        for (var at = 0; at < text.Length;)
        {
            var from = at;
            if (!NumberReader.TryRead(text, ref at, out var number))
            {
                at = from + 1;
                continue;
            }

            var word = at;
            while (word < text.Length && char.IsWhiteSpace(text[word]))
            {
                word++;
            }

            var unit = Unit.Find(ValueListReader.WordAt(text, word));
            mass ??= unit is { Dimension: Dimension.Mass } && number > 0 ? new Quantity(number, unit) : null;
            length ??= unit is { Dimension: Dimension.YarnLength } && number > 0 ? new Quantity(number, unit) : null;
        }

        return (mass, length);
    }
}
