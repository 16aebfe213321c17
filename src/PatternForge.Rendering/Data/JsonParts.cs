using System.Collections.Immutable;
using System.Text.Json;
using PatternForge.Core.Model;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Data;

/// <summary>Writes the small things that recur in a pattern's JSON. What is not known is null, so that every key is always there.</summary>
internal static class JsonParts
{
    /// <summary>A text, or null.</summary>
    public static void Text(this Utf8JsonWriter json, string name, string? text)
    {
        if (text is null)
        {
            json.WriteNull(name);
        }
        else
        {
            json.WriteString(name, Escaping.Clean(text));
        }
    }

    /// <summary>A list of texts.</summary>
    public static void Texts(this Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(Escaping.Clean(text));
        }

        json.WriteEndArray();
    }

    /// <summary>A number, or null.</summary>
    public static void Number(this Utf8JsonWriter json, string name, decimal? number)
    {
        if (number is { } value)
        {
            json.WriteNumber(name, value / 1.000000000000000000000000000000000m);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    /// <summary>Whole numbers, one a size; null where one is not known.</summary>
    public static void Numbers(this Utf8JsonWriter json, string name, ImmutableArray<int?> numbers)
    {
        json.WriteStartArray(name);
        foreach (var number in numbers.IsDefault ? [] : numbers)
        {
            if (number is { } value)
            {
                json.WriteNumberValue(value);
            }
            else
            {
                json.WriteNullValue();
            }
        }

        json.WriteEndArray();
    }

    /// <summary>A list of things.</summary>
    public static void List<T>(this Utf8JsonWriter json, string name, IEnumerable<T> things, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var thing in things)
        {
            json.WriteStartObject();
            write(thing);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>A quantity with its unit, or null.</summary>
    public static void Quantity(this Utf8JsonWriter json, string name, Quantity? quantity)
    {
        json.WritePropertyName(name);
        json.QuantityValue(quantity);
    }

    /// <summary>Quantities, one a size; null where a size has none.</summary>
    public static void Quantities(this Utf8JsonWriter json, string name, PerSize<Quantity?>? values, int sizes)
    {
        json.WriteStartArray(name);
        for (var size = 0; values is not null && size < sizes; size++)
        {
            json.QuantityValue(values[size]);
        }

        json.WriteEndArray();
    }

    private static void QuantityValue(this Utf8JsonWriter json, Quantity? quantity)
    {
        if (quantity is null)
        {
            json.WriteNullValue();
            return;
        }

        json.WriteStartObject();
        json.Number("value", quantity.Value);
        json.Number("upTo", quantity.UpTo);
        json.WriteString("unit", quantity.Unit.Symbol);
        json.WriteEndObject();
    }
}
