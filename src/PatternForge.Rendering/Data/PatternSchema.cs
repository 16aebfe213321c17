namespace PatternForge.Rendering.Data;

/// <summary>The published description of a pattern's JSON (JSON Schema, draft 7).</summary>
public static class PatternSchema
{
    /// <summary>Its text.</summary>
    public static string Text
    {
        get
        {
            using var stream = typeof(PatternSchema).Assembly.GetManifestResourceStream("schemas/pattern.schema.json")!;
            using var reader = new StreamReader(stream);
            return reader.ReadToEnd().ReplaceLineEndings("\n");
        }
    }
}
