using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Tests.Garments;

namespace Dyepath.Core.Tests.Projects;

/// <summary>Number and date of a published pattern, in the document and at the head of its text.</summary>
public sealed class EditionNumberTests
{
    /// <summary>Days of the Gregorian calendar as ISO 8601:2004, 3.2.1 and 4.1.2.2, has it: leap years of centuries only where 400 divides them.</summary>
    [Theory]
    [InlineData("2026-12-01")]
    [InlineData("2024-02-29")]
    [InlineData("2000-02-29")]
    [InlineData("1999-12-31")]
    public void A_day_of_the_calendar_is_kept(string day)
    {
        var project = Read(With("date", day)).Project!;
        Assert.Equal(day, JsonNode.Parse(ProjectWriter.Write(project))!["edition"]!["date"]!.GetValue<string>());
        Assert.True(DocumentSchema.Allows(With("date", day)));
    }

    [Theory]
    [InlineData("2025-02-29")]
    [InlineData("1900-02-29")]
    [InlineData("2026-04-31")]
    [InlineData("2026-13-01")]
    [InlineData("2026-00-10")]
    [InlineData("2026-01-00")]
    [InlineData("0000-01-01")]
    [InlineData("2026-1-1")]
    [InlineData("01.12.2026")]
    [InlineData("2026-12-01T00:00")]
    [InlineData("2026-12-01\n")]
    [InlineData(" 2026-12-01")]
    [InlineData("٢٠٢٦-١٢-٠١")]
    [InlineData("")]
    public void What_is_no_day_is_refused_at_its_place(string day)
    {
        var fault = Assert.Single(Read(With("date", day)).Faults);
        Assert.Equal("edition.date", fault.Path);
        Assert.Contains("2026-12-01", fault.Allowed, StringComparison.Ordinal);
        // The library's $ lets a line break follow; JSON Schema's (ECMA-262) does not.
        Assert.Equal(day.EndsWith('\n'), DocumentSchema.Allows(With("date", day)));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("1000")]
    [InlineData("-1")]
    [InlineData("1.5")]
    [InlineData("\"2\"")]
    [InlineData("null")]
    public void What_is_no_number_of_an_edition_is_refused_at_its_place(string number)
    {
        var json = With("number", JsonNode.Parse(number));
        Assert.Equal("edition.number", Assert.Single(Read(json).Faults).Path);
        Assert.False(DocumentSchema.Allows(json));
    }

    [Theory]
    [InlineData(2, "2026-12-01", "Edition 2, 2026-12-01")]
    [InlineData(999, null, "Edition 999")]
    [InlineData(null, "2026-12-01", "Edition of 2026-12-01")]
    [InlineData(null, null, null)]
    public void It_stands_below_the_title_and_the_text_is_still_the_documents(int? number, string? day, string? line)
    {
        var plan = TestProjects.Tideline.Planned();
        var own = plan.Project.Edition with { Number = number, Date = day is null ? null : DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture) };
        plan = plan with { Project = plan.Project with { Edition = own } };
        var booklet = PatternWriter.Write(plan, TestContext.Current.CancellationToken);
        var text = TextBooklet.Write(booklet, own);
        var head = text.Split('\n').TakeWhile(l => !l.StartsWith("Sizes", StringComparison.Ordinal)).Skip(2).Where(l => l.Length > 0);
        Assert.Equal(new[] { plan.Project.Designer, line }.Where(l => !string.IsNullOrEmpty(l)), head);
        Assert.Empty(PatternCheck.Delivered(plan, text, TestContext.Current.CancellationToken).Findings);
        Assert.Empty(PatternCheck.Text(plan, text));
    }

    private static string With(string name, JsonNode? value)
    {
        var document = JsonNode.Parse(ProjectWriter.Write(TestProjects.Tideline))!;
        document["edition"] ??= new JsonObject();
        document["edition"]![name] = value;
        return document.ToJsonString();
    }

    private static ProjectReading Read(string json) => ProjectReader.Read(Encoding.UTF8.GetBytes(json));
}
