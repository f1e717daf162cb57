using System.Collections.Immutable;
using System.Text;
using Dyepath.Core.Colours;
using Dyepath.Core.Quantities;
using Dyepath.Core.Workshops;

namespace Dyepath.Core.Tests.Workshops;

public class WorkshopCardTests
{
    private static readonly ImmutableArray<CardColour> Four =
    [
        new("kelp", new Srgb(1, 2, 3), 6), new("foam", new Srgb(4, 5, 6), 5), new("rust", new Srgb(7, 8, 9), 6), new("slate", new Srgb(10, 11, 12), 5),
    ];

    [Fact]
    public void The_starter_is_read_without_faults()
    {
        var (workshop, faults) = WorkshopDocument.Read(Encoding.UTF8.GetBytes(WorkshopDocument.Starter()));
        Assert.Empty(faults);
        Assert.Equal(2, CardWriter.Write(workshop!).Cards.Length);
    }

    [Theory]
    [InlineData("{\"title\":\"T\",\"minutes\":120,\"people\":[]}", "people", "1 to 60 people")]
    [InlineData("{\"title\":\"T\",\"minutes\":5,\"people\":[{\"yarn\":{\"thickness\":\"thin\",\"sequence\":\"arm\",\"change\":\"sharp\"},\"makes\":\"hat\"}]}", "minutes", "20 to 2000")]
    [InlineData("{\"title\":\"T\",\"minutes\":50,\"people\":[{\"yarn\":{\"thickness\":\"thik\",\"sequence\":\"arm\",\"change\":\"sharp\"},\"makes\":\"hat\"}]}", "people[0].yarn.thickness", "\"thick\"")]
    [InlineData("{\"title\":\"T\",\"minutes\":50,\"people\":[{\"yarn\":{\"thickness\":\"thin\",\"sequence\":\"arm\",\"change\":\"sharp\"},\"makes\":\"bag\",\"worked\":\"rounds\"}]}", "people[0].worked", "rows")]
    [InlineData("{\"title\":\"T\",\"minutes\":50,\"people\":[{\"yarn\":{\"thickness\":\"thin\",\"sequence\":\"arm\",\"change\":\"sharp\"},\"makes\":\"bag\",\"width\":\"300 cm\"}]}", "people[0].width", "5 to 200 cm")]
    [InlineData("{\"title\":\"T\",\"minutes\":50,\"people\":[{\"yarn\":{\"thickness\":\"thin\",\"sequence\":\"arm\",\"change\":\"sharp\",\"colours\":[{\"name\":\"a\",\"colour\":\"#000\"}]},\"makes\":\"bag\"}]}", "people[0].yarn.colours", "two and more")]
    public void Faults_are_located(string text, string path, string allowed)
    {
        var (workshop, faults) = WorkshopDocument.Read(Encoding.UTF8.GetBytes(text));
        Assert.Null(workshop);
        var fault = Assert.Single(faults);
        Assert.Equal(path, fault.Path);
        Assert.Contains(allowed, fault.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_many_people_and_too_large_a_document_are_refused()
    {
        var one = "{\"yarn\":{\"thickness\":\"thin\",\"sequence\":\"arm\",\"change\":\"sharp\"},\"makes\":\"hat\"}";
        var many = $"{{\"title\":\"T\",\"minutes\":50,\"people\":[{string.Join(',', Enumerable.Repeat(one, 61))}]}}";
        Assert.Equal("people", Assert.Single(WorkshopDocument.Read(Encoding.UTF8.GetBytes(many)).Faults).Path);
        Assert.Single(WorkshopDocument.Read(new byte[WorkshopDocument.MostBytes + 1]).Faults);
    }

    /// <summary>Law 16: the yarn of a sequence over 9, 13 and 16 is the width that it makes.</summary>
    [Theory]
    [InlineData(SequenceReach.Arm, 20, "sc", 80 / 9.0)]
    [InlineData(SequenceReach.Longer, 20, "hdc", 300 / 13.0)]
    [InlineData(SequenceReach.Longer, 15, "dc", 300 / 16.0)]
    public void Widths_follow_from_the_yarn_of_a_sequence(SequenceReach reach, double wanted, string stitch, double diamond)
    {
        var person = Person(new(YarnThickness.Medium, reach, ColourChange.Sharp, []), WorkshopPiece.Scarf) with { Width = Length.FromCentimetres(wanted) };
        var measures = CardWriter.Measures(person);
        Assert.Equal(stitch, measures.Stitch.Id);
        Assert.Equal(diamond, measures.Diamond.Likely, 1e-9);
        Assert.True(measures.Width.Low < measures.Width.Likely && measures.Width.Likely < measures.Width.High);
        // No other number of whole rounds comes nearer.
        Assert.All(Enumerable.Range(1, 12), m => Assert.True(
            Math.Abs(measures.Width.Likely - wanted) <= Math.Abs(m * diamond + measures.StitchWidth - wanted) + 1e-9));
    }

    [Fact]
    public void A_counted_yarn_says_where_half_a_round_ends()
    {
        var card = Card(Person(new(YarnThickness.Medium, SequenceReach.BothArms, ColourChange.Sharp, Four), WorkshopPiece.Cowl));
        Assert.Equal(34, CardWriter.Measures(Person(new(YarnThickness.Medium, SequenceReach.BothArms, ColourChange.Sharp, Four), WorkshopPiece.Cowl)).RowStitches);
        Assert.Equal(
            "With that end work one single crochet into the second chain from the hook, then one into each chain. Each time kelp begins again, the colours have come round once. "
            + "When they have come round once, go on until rust begins: work ONE stitch of it and stop.",
            Step(card, "First row"));
        Assert.Contains("Row 1 begins in kelp and ends in rust", Step(card, "Check each row"), StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_come_first_and_rounds_with_a_warning()
    {
        var yarn = new WorkshopYarn(YarnThickness.Medium, SequenceReach.Arm, ColourChange.Sharp, []);
        var rows = Card(Person(yarn, WorkshopPiece.Cowl));
        Assert.Contains("turn", Step(rows, "Turn"), StringComparison.Ordinal);
        Assert.Empty(rows.Cautions);
        var rounds = Card(Person(yarn, WorkshopPiece.Cowl) with { Way = WorkshopWay.Rounds });
        Assert.Contains("miss by more", Assert.Single(rounds.Cautions), StringComparison.Ordinal);
        Assert.DoesNotContain(rounds.Steps, s => s.Heading == "Turn");
    }

    [Fact]
    public void Cautions_stand_where_they_apply_alone()
    {
        var yarn = new WorkshopYarn(YarnThickness.Medium, SequenceReach.Arm, ColourChange.Sharp, []);
        foreach (var piece in Enum.GetValues<WorkshopPiece>())
        {
            var child = Card(Person(yarn, piece) with { ForChild = true });
            Assert.Contains("no cords", Assert.Single(child.Cautions), StringComparison.Ordinal);
            Assert.DoesNotContain(child.Steps, s => s.Text.Contains("handles", StringComparison.Ordinal));
            Assert.Empty(Card(Person(yarn, piece)).Cautions);
        }
    }

    [Fact]
    public void Specks_get_another_ball_and_no_drawing()
    {
        var card = Card(Person(new(YarnThickness.Medium, SequenceReach.Arm, ColourChange.Speckled, []), WorkshopPiece.Hat));
        Assert.Null(card.Fabric);
        Assert.Contains("another ball", card.Steps[0].Text, StringComparison.Ordinal);
    }

    /// <summary>12 to 20 single crochet a minute: common practice, no source.</summary>
    [Fact]
    public void Time_and_yarn_follow_from_stitches()
    {
        var measures = CardWriter.Measures(Person(new(YarnThickness.Medium, SequenceReach.BothArms, ColourChange.Sharp, Four), WorkshopPiece.Cowl));
        var stitches = 34 * measures.Rows;
        Assert.Equal(stitches / 20.0, measures.Minutes.Low, 1e-9);
        Assert.Equal(stitches / 12.0, measures.Minutes.High, 1e-9);
        Assert.Equal(1.25 * stitches * 9 * (10.0 / 15) / 100, measures.SafeMetres, 1e-9);
        Assert.Equal((120 * 12 / 34, 120 * 20 / 34), measures.RowsIn(120));
    }

    [Fact]
    public void The_kit_adds_up()
    {
        var yarn = new WorkshopYarn(YarnThickness.Thick, SequenceReach.Arm, ColourChange.Sharp, [], Length.FromMetres(100));
        var people = Enumerable.Range(0, 12).Select(_ => Person(yarn, WorkshopPiece.Hat)).ToImmutableArray();
        var balls = 12 * WorkshopKit.Balls(people[0]);
        var kit = WorkshopKit.Of(new Workshop("T", 60, people));
        Assert.StartsWith(FormattableString.Invariant($"Thick coloured yarn for 12 people: {balls} balls, and {(balls + 9) / 10} more in reserve (one in ten). All of one colourway from one lot"), kit[0], StringComparison.Ordinal);
        Assert.Contains("Hooks of 8 mm: 12", kit[2], StringComparison.Ordinal);
    }

    private static WorkshopPerson Person(WorkshopYarn yarn, WorkshopPiece piece) => new("Ada", yarn, piece);

    private static WorkshopCard Card(WorkshopPerson person) => CardWriter.Write(new Workshop("T", 120, [person])).Cards[0];

    private static string Step(WorkshopCard card, string heading) => card.Steps.Single(s => s.Heading == heading).Text;
}
