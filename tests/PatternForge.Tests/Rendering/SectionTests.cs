using PatternForge.Rendering.Documents;

namespace PatternForge.Tests.Rendering;

public class SectionTests
{
    [Fact]
    public void Sections_stand_in_the_place_that_their_role_gives_them()
    {
        var made = new HandMade();
        foreach (var role in new[] { "thanks", "other-designs", "care", "body", "notes", "construction", "about", "terms-of-use" })
        {
            made.Heading(role, role).Prose("x");
        }

        var view = ViewBuilder.Build(made.Compile());
        Assert.Equal(["about"], view.About.Select(s => s.Role));
        Assert.Equal(["construction", "notes"], view.Before.Select(s => s.Role));
        Assert.Equal(["body"], view.Instructions.Select(s => s.Role));
        Assert.Equal(["care"], view.After.Select(s => s.Role));
        Assert.Equal(["terms-of-use", "other-designs", "thanks"], view.Closing.Select(s => s.Role));
    }

    [Fact]
    public void A_section_with_rows_stays_among_the_instructions_whatever_it_is_called()
    {
        var made = new HandMade().Heading("Body", "body").Row("Row 1", "K.").Heading("Care", "care").Row("", "Wash.").Heading("End", "end").Row("", "Rest.");
        Assert.Equal(["body", "care", "end"], ViewBuilder.Build(made.Compile()).Instructions.Select(s => s.Role));
    }

    [Fact]
    public void A_heading_with_nothing_under_it_is_left_out()
    {
        var made = new HandMade().Heading("Empty", "empty").Heading("Body", "body").Prose("x").Heading("Nothing", "nothing", 3);
        var section = Assert.Single(ViewBuilder.Build(made.Compile()).Instructions);
        Assert.Single(section.Parts);
    }

    [Fact]
    public void A_heading_over_lower_headings_with_text_stays()
    {
        var made = new HandMade().Heading("Fronts", "fronts").Heading("Right", "right", 3).Heading("Neck", "neck", 4).Row("Row 1", "K.").Heading("Left", "left", 3);
        var section = Assert.Single(ViewBuilder.Build(made.Compile()).Instructions);
        Assert.Equal(["Right", "Neck"], section.Parts.Select(p => p.Heading));
        Assert.Equal([3, 4], section.Parts.Select(p => p.Rank));
    }

    [Fact]
    public void Ranks_never_jump()
    {
        var made = new HandMade().Heading("A").Prose("x").Heading("B", "b", 6).Prose("x").Heading("C", "c", 4).Prose("x").Heading("D", "d", 6).Prose("x");
        Assert.Equal([3, 3, 4, 5], ViewBuilder.Build(made.Compile()).Instructions.Single().Parts.Select(p => p.Rank));
    }

    [Fact]
    public void Words_under_a_heading_that_the_page_makes_itself_go_there()
    {
        var view = ViewBuilder.Build(new HandMade().Heading("Yarn", "yarn").Prose("Any will do.").Heading("Contact", "contact").Prose("Write.").Compile());
        Assert.Equal("Any will do.", view.Remarks.Yarn.Single().Prose!.Value.Markdown);
        Assert.Equal("Write.", view.ContactNotes.Single().Prose!.Value.Markdown);
        Assert.Empty(view.Instructions);
    }

    [Fact]
    public void The_title_as_a_heading_is_not_printed_twice()
    {
        var view = ViewBuilder.Build(new HandMade { Facts = new() { Title = new("Hat", default) } }.Heading("Hat", "hat", 1).Prose("Hello.").Compile());
        Assert.Equal("Hello.", view.Opening.Single().Prose!.Value.Markdown);
        Assert.Empty(view.Instructions);
    }

    [Fact]
    public void Identifiers_are_unique_and_plain()
    {
        var made = new HandMade();
        foreach (var heading in new[] { "Crown", "Crown", "Crown 2", "Yarn!", "日本", "2nd sleeve", "yarn" })
        {
            made.Heading(heading, "x").Row("", "K.");
        }

        Assert.Equal(["crown", "crown-2", "crown-2-2", "yarn-2", "part", "part-2nd-sleeve", "yarn-3"], ViewBuilder.Build(made.Compile()).Instructions.Select(s => s.Id));
    }

    [Fact]
    public void Many_headings_are_no_more_work_than_their_number()
    {
        var made = new HandMade();
        for (var i = 0; i < 40_000; i++)
        {
            made.Heading("Same", "same", 2 + (i % 2)).Prose("x");
        }

        Assert.Equal(20_000, ViewBuilder.Build(made.Compile()).Instructions.Length);
    }

    [Fact]
    public void Rows_that_follow_one_another_make_one_list_and_prose_divides_it()
    {
        var blocks = ViewBuilder.Build(new HandMade().Heading("Body").Row("Row 1", "K.").Row("Row 2", "P.").Prose("Now turn.").Row("Row 3", "K.").Compile()).Instructions.Single().Parts.Single().Blocks;
        Assert.Equal(["rows", "prose", "rows"], blocks.Select(b => b.Kind));
        Assert.Equal(2, blocks[0].Rows.Length);
    }

    [Fact]
    public void Other_designs_and_thanks_come_last_whatever_they_are_called()
    {
        var made = new HandMade();
        foreach (var role in new[] { "acknowledgments", "more-designs", "commissions", "license", "links", "errata" })
        {
            made.Heading(role, role).Prose("x");
        }

        Assert.Equal(["errata", "license", "commissions", "links", "more-designs", "acknowledgments"], ViewBuilder.Build(made.Compile()).Closing.Select(s => s.Role));
    }

    [Fact]
    public void Lower_headings_under_a_part_of_the_page_go_with_it()
    {
        var made = new HandMade().Heading("Yarn", "yarn").Prose("one").Heading("Substitutes", "substitutes", 3).Prose("two");
        var view = ViewBuilder.Build(made.Compile());
        Assert.Empty(view.Instructions);
        Assert.Equal(["one", "#### Substitutes", "two"], view.Remarks.Yarn.Select(b => b.Prose!.Value.Markdown));
    }
}
