using CsCheck;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Yarn;

namespace Dyepath.Workspace.Tests.Yarn;

public class CountSheetTests
{
    [Fact]
    public void A_repeat_in_the_counting_is_kept_and_disturbs_no_plan()
    {
        var document = Documents.Demo();
        var sheet = new CountSheet(document, 0);

        sheet.Append(5, "");
        sheet.Append(4, "");

        Assert.Equal((8, 2), sheet.Next);
        Assert.Equal([5, 4], sheet.Row(8));
        Assert.Equal(8, sheet.Whole().Count());
        var outcome = Outcome.Of(document, CancellationToken.None);
        Assert.Empty(outcome.Reading.Faults);
        Assert.NotNull(outcome.Plan);
        Assert.Equal(14, outcome.Measured!.Natural.Counted!.Repeats);
        Assert.Empty(outcome.Measured.Findings);
    }

    [Fact]
    public void The_first_count_makes_the_ball_and_taking_it_back_unmakes_it()
    {
        var document = Documents.Demo();
        var sheet = new CountSheet(document, 2);

        sheet.Append(5, "third ball");
        Assert.Equal("third ball", document.Typed("yarn.counted[2].name"));
        Assert.Equal(5, sheet.TakeBack());

        Assert.Equal(2, document.Count("yarn.counted"));
        Assert.Null(sheet.TakeBack());
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Whole_repeats_stand_in_the_yarns_order_whichever_end_is_pulled(bool backwards)
    {
        var document = Documents.Demo();
        document.Set("yarn.fromOtherEnd", backwards);
        document.Set("yarn.counted", null);
        var sheet = new CountSheet(document, 0);
        Assert.Equal(backwards ? 4 : 0, sheet.Next.Section);

        foreach (var count in (int[])[1, 2, 3, 4, 5])
            sheet.Append(count, "a ball");

        Assert.Equal(backwards ? [5, 4, 3, 2, 1] : [1, 2, 3, 4, 5], sheet.Row(0));
        Assert.Equal(5, sheet.TakeBack());
        Assert.Equal(backwards ? 0 : 4, sheet.Next.Section);
        Assert.Equal([1, 2, 3, 4], sheet.Row(0));
    }

    [Fact]
    public void What_is_put_in_is_taken_out_again() => Gen.Select(Gen.Int[0, 7], Gen.Int[0, 4], Gen.Int[0, 12], Gen.Bool).Holds(
        at =>
        {
            var (repeat, column, count, backwards) = at;
            var document = Documents.Demo();
            document.Set("yarn.fromOtherEnd", backwards);
            var before = document.Node("yarn.counted[0]")!.ToJsonString();
            var sheet = new CountSheet(document, 0);
            sheet.Insert(repeat, column, count);
            Assert.Equal(9, sheet.RepeatCount);
            Assert.Equal(count, sheet.Row(repeat)[column]);
            sheet.TakeOut(repeat, column);
            Assert.Equal(before, document.Node("yarn.counted[0]")!.ToJsonString());
        },
        seed: 11, cases: 40);

    [Fact]
    public void Counts_keyed_in_and_taken_back_leave_the_document_as_it_was() => Gen.Select(Gen.Int[0, 20].Array[1, 13], Gen.Bool).Holds(
        keyed =>
        {
            var document = Documents.Demo();
            document.Set("yarn.fromOtherEnd", keyed.Item2);
            var before = document.Text;
            var sheet = new CountSheet(document, 1);
            foreach (var count in keyed.Item1)
                sheet.Append(count, "");
            Assert.Equal(keyed.Item1.Reverse(), keyed.Item1.Select(_ => sheet.TakeBack()!.Value));
            Assert.Equal(before, document.Text);
        },
        seed: 12, cases: 40);
}
