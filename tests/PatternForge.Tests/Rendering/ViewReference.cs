using System.Collections;
using System.Collections.Immutable;
using System.Reflection;
using System.Text;
using System.Xml.Linq;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Tests.Rendering;

/// <summary>Reads the view records by reflection, as only tests may, and writes the reference for writers of templates.</summary>
internal static class ViewReference
{
    /// <summary>Every record of the view with the names that templates know it by.</summary>
    public static IEnumerable<(Type Record, ICollection<string> Names)> Records =>
        typeof(ViewScript).GetFields(BindingFlags.Static | BindingFlags.Public)
            .Select(f => (f.FieldType.BaseType!.GetGenericArguments()[1].GetGenericArguments()[0], (ICollection<string>)((IDictionary)f.GetValue(null)!).Keys.Cast<string>().ToArray()));

    /// <summary>The name of a property in templates: <c>LevelReason</c> is <c>level_reason</c>.</summary>
    public static string NameOf(string property) =>
        string.Concat(property.Select((c, i) => char.IsUpper(c) && i > 0 ? "_" + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));

    public static IEnumerable<PropertyInfo> PropertiesOf(Type record) =>
        record.GetProperties(BindingFlags.Instance | BindingFlags.Public).Where(p => p.Name != "EqualityContract").OrderBy(p => p.MetadataToken);

    /// <summary>The reference, the pattern first and the other views in the order in which they are met.</summary>
    public static string Write()
    {
        var comments = XDocument.Load(Path.ChangeExtension(typeof(PatternView).Assembly.Location, ".xml")).Descendants("member")
            .ToDictionary(m => (string)m.Attribute("name")!, m => Words(m.Element("summary")), StringComparer.Ordinal);
        var text = new StringBuilder();
        var waiting = new Queue<Type>([typeof(PatternView)]);
        var seen = new HashSet<Type> { typeof(PatternView) };
        while (waiting.TryDequeue(out var record))
        {
            text.Append('\n').Append(record == typeof(PatternView) ? "### The page" : $"### {TitleOf(record)}").Append("\n\n");
            text.Append(comments["T:" + record.FullName]).Append("\n\n| name | type | what it is |\n| --- | --- | --- |\n");
            foreach (var property in PropertiesOf(record))
            {
                var (type, inner) = TypeOf(property);
                text.Append($"| `{NameOf(property.Name)}` | {type} | {comments[$"P:{record.FullName}.{property.Name}"].Replace("|", "\\|", StringComparison.Ordinal)} |\n");
                if (inner is not null && seen.Add(inner))
                {
                    waiting.Enqueue(inner);
                }
            }
        }

        return text.Append('\n').ToString();
    }

    private static (string Type, Type? Inner) TypeOf(PropertyInfo property)
    {
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        var mayBeNull = type != property.PropertyType || new NullabilityInfoContext().Create(property).ReadState == NullabilityState.Nullable;
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>))
        {
            var item = type.GetGenericArguments()[0];
            return item == typeof(string) ? ("list of texts", null) : ($"list of {TitleOf(item)}", item);
        }

        var name = type == typeof(string) ? "text" : type == typeof(bool) ? "yes or no" : type == typeof(int) ? "number" : type == typeof(ProseText) ? "prose" : type == typeof(SizedText) ? "marked text" : TitleOf(type);
        return (mayBeNull ? name + ", may be null" : name, type.Namespace == typeof(PatternView).Namespace && type != typeof(ProseText) && type != typeof(SizedText) ? type : null);
    }

    private static string TitleOf(Type record) => NameOf(record.Name[..^"View".Length]).Replace('_', ' ');

    private static string Words(XElement? summary)
    {
        var text = string.Concat(summary?.Nodes().Select(n => n switch
        {
            XText plain => plain.Value,
            XElement { Name.LocalName: "see" } see => $"`{NameOf(((string)see.Attribute("cref")!).Split('.')[^1])}`",
            XElement code => $"`{code.Value}`",
            _ => "",
        }) ?? []);
        return string.Join(' ', text.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
    }
}
