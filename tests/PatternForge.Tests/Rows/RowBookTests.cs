namespace PatternForge.Tests.Rows;

/// <summary>The row books: rows in every form that designers use, with what each must come to. Counts worked out by hand, common practice.</summary>
public class RowBookTests
{
    private static readonly Lazy<Dictionary<string, RowEntry>> Entries = new(() =>
        Directory.GetFiles(RepositoryRoot.Path("tests", "PatternForge.Tests", "Rows"), "*.txt").Order(StringComparer.Ordinal)
            .SelectMany(file => RowBook.Read(Path.GetFileNameWithoutExtension(file), File.ReadLines(file)))
            .ToDictionary(e => e.Place, StringComparer.Ordinal));

    public static TheoryData<string, string> All()
    {
        var data = new TheoryData<string, string>();
        foreach (var entry in Entries.Value.Values)
        {
            data.Add(entry.Place, entry.Question.Text);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_row_comes_to_what_its_book_says(string place, string text)
    {
        var entry = Entries.Value[place];
        Assert.Equal(text, entry.Question.Text);
        Assert.Equal(entry.Expected, RowBook.Tell(entry));
    }
}
