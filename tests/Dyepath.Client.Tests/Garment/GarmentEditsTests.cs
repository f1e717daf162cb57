using System.Text;
using Dyepath.Client.Garment;
using Dyepath.Client.Work;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;

namespace Dyepath.Client.Tests.Garment;

public sealed class GarmentEditsTests
{
    public static TheoryData<string> Shapes => [.. GarmentShapes.All.Select(s => s.Value)];

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Whatever_becomes_of_the_demo_is_read_and_planned(string shape)
    {
        var document = Demo();
        GarmentShapes.Change(document, shape);
        var outcome = Outcome.Of(document, TestContext.Current.CancellationToken);
        Assert.Empty(outcome.Reading.Faults);
        Assert.NotNull(outcome.Plan);
    }

    [Fact]
    public void A_chart_taken_over_gives_the_same_plan_until_a_number_is_changed()
    {
        var document = Demo();
        var before = Outcome.Of(document, TestContext.Current.CancellationToken).Plan!;
        Assert.True(SizeCharts.TryFind("women", out var chart));
        SizeTable.MakeOwn(document, chart);
        var own = Outcome.Of(document, TestContext.Current.CancellationToken).Plan!;
        Assert.Equal(before.Sizes.Select(s => (s.Name, s.Pieces[0].Stitches, s.Pieces[0].Rows)), own.Sizes.Select(s => (s.Name, s.Pieces[0].Stitches, s.Pieces[0].Rows)));
        document.Set("sizes.own[8].measures.bust", "162 cm");
        document.Set("sizes.own[8].measures.hip", "162 cm");
        var wider = Outcome.Of(document, TestContext.Current.CancellationToken).Plan!;
        Assert.True(wider.Sizes[8].Pieces[0].Width > own.Sizes[8].Pieces[0].Width);
    }

    [Fact]
    public void A_size_left_out_takes_its_own_numbers_along_and_comes_back_in_its_place()
    {
        var document = Demo();
        Assert.True(SizeCharts.TryFind("women", out var chart));
        document.Set("sizes.base", "L");
        SizeTable.Turn(document, chart, "L", wanted: false);
        Assert.Equal(["XS", "S", "M", "1X", "2X", "3X", "4X", "5X"], SizeTable.Names(document));
        Assert.False(document.Has("sizes.base"));
        SizeTable.Turn(document, chart, "L", wanted: true);
        Assert.Equal(Outcome.Of(Demo(), TestContext.Current.CancellationToken).Plan!.Sizes.Select(s => s.Name), Outcome.Of(document, TestContext.Current.CancellationToken).Plan!.Sizes.Select(s => s.Name));
    }

    private static ProjectDocument Demo() => ProjectDocument.TryParse(Encoding.UTF8.GetString(DemoProject.Utf8))!;
}
