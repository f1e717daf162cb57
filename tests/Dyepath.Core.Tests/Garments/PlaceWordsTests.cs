using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Tests.Garments;

/// <summary>Edges, fits, mends and uses of yarn are told apart by what they are; each has words of its own, and in JSON a name that stays.</summary>
public sealed class PlaceWordsTests
{
    [Fact]
    public void Every_edge_has_words_of_its_own() => Distinct<EdgeId>(EdgeWords.Of);

    [Fact]
    public void Every_part_of_an_edge_has_words_of_its_own() => Distinct<EdgePart>(part => EdgeWords.Of(new StretchId.OfEdge(EdgeId.FrontNeck, part)));

    [Fact]
    public void Every_part_of_a_side_has_words_of_its_own() => Distinct<SidePart>(part => EdgeWords.Of(new StretchId.OfSide(part)));

    [Fact]
    public void Every_end_of_an_open_edge_has_words_of_its_own() => Distinct<OpenEnd>(PlaceWords.At);

    [Fact]
    public void Every_edging_place_has_words_of_its_own() => Distinct<EdgingPlace>(PlaceWords.Of);

    [Fact]
    public void Every_part_that_is_held_against_the_body_has_words_of_its_own() => Distinct<FitPart>(WornWords.Subject);

    [Fact]
    public void Every_mend_has_words_of_its_own() => Distinct<Mend>(WornWords.Of);

    [Fact]
    public void Pieces_seams_and_openings_have_words_of_their_own()
    {
        Distinct<PieceId>(PlaceNames.Of);
        Distinct<SeamId>(PlaceNames.Of);
        Distinct<OpeningId>(PlaceNames.Of);
    }

    /// <summary>An edge at the wearer's left is told as one at her right is, with left for right; so are pieces, seams and their like.</summary>
    [Fact]
    public void What_lies_at_the_left_is_told_as_what_lies_at_the_right()
    {
        Mirrored<EdgeId>(EdgeWords.Of);
        Mirrored<PieceId>(PlaceNames.Of);
        Mirrored<SeamId>(PlaceNames.Of);
        Mirrored<OpeningId>(PlaceNames.Of);
    }

    private static void Mirrored<T>(Func<T, string> words) where T : struct, Enum
    {
        var all = Enum.GetValues<T>();
        Assert.All(all.Where(id => id.ToString().Contains("Left", StringComparison.Ordinal)), id =>
        {
            var other = id.ToString().Replace("Left", "Right", StringComparison.Ordinal);
            Assert.Contains("left", words(id), StringComparison.OrdinalIgnoreCase);
            if (Enum.TryParse<T>(other, out var mirrored))
                Assert.Equal(words(mirrored), words(id).Replace("left", "right", StringComparison.Ordinal).Replace("Left", "Right", StringComparison.Ordinal));
        });
    }

    /// <summary>An edge's words say all that its name does: front or back, upper or lower, above or below.</summary>
    [Fact]
    public void An_edge_is_told_by_every_word_of_its_name() => Assert.All(Enum.GetValues<EdgeId>(), edge =>
        Assert.All(
            System.Text.RegularExpressions.Regex.Matches(edge.ToString(), "[A-Z][a-z]+").Select(m => m.Value),
            word => Assert.Contains(word, EdgeWords.Of(edge), StringComparison.OrdinalIgnoreCase)));

    [Theory]
    [InlineData(Mend.WidenNeck, "make the neck wider")]
    [InlineData(Mend.NarrowNeck, "make the neck narrower")]
    [InlineData(Mend.NarrowNeckOrEase, "make the neck narrower, or give more ease")]
    [InlineData(Mend.Ease, "give more ease")]
    [InlineData(Mend.BustEase, "give more ease at the bust")]
    [InlineData(Mend.HipEase, "give more ease at the hip")]
    [InlineData(Mend.UpperArmEase, "give more ease at the upper arm")]
    [InlineData(Mend.SleeveEase, "give the sleeves more ease")]
    [InlineData(Mend.EaseOrWiderSleeves, "give more ease, or wider sleeves")]
    [InlineData(Mend.LessOffHead, "take less off the head")]
    [InlineData(Mend.LongerSleeves, "take less off, or leave sleeves out")]
    [InlineData(Mend.DeeperGusset, "make it deeper, or 0 for none")]
    [InlineData(Mend.LargerArmShare, "give a larger share, or leave the sides open")]
    [InlineData(Mend.JoinLessOfSides, "join less of the sides")]
    public void A_mend_goes_the_way_that_helps(Mend mend, string words) => Assert.Equal(words, WornWords.Of(mend));

    [Theory]
    [InlineData(EdgePart.Whole, "back neck")]
    [InlineData(EdgePart.LowerEdge, "back neck, lower edge")]
    [InlineData(EdgePart.UpperEdge, "back neck, upper edge")]
    [InlineData(EdgePart.UprightEdge, "back neck, upright edge")]
    [InlineData(EdgePart.WearersLeft, "back neck, edge at the wearer's left")]
    [InlineData(EdgePart.WearersRight, "back neck, edge at the wearer's right")]
    [InlineData(EdgePart.Steps, "back neck, steps")]
    [InlineData(EdgePart.RowEnds, "back neck, row ends")]
    [InlineData(EdgePart.AlongSteps, "back neck, along its steps")]
    [InlineData(EdgePart.StepsAtWearersLeft, "back neck, along the steps at the wearer's left")]
    [InlineData(EdgePart.StepsAtWearersRight, "back neck, along the steps at the wearer's right")]
    [InlineData(EdgePart.Step, "back neck, step")]
    public void A_part_is_named_after_its_edge(EdgePart part, string words) =>
        Assert.Equal(words, EdgeWords.Of(new StretchId.OfEdge(EdgeId.BackNeck, part)));

    [Fact]
    public void What_is_no_edge_of_the_garment_is_named_by_what_lies_there()
    {
        Assert.Equal("end of the hem", EdgeWords.Of(new StretchId.EndOf(EdgingPlace.Hem)));
        Assert.Equal("end of the top edge", EdgeWords.Of(new StretchId.EndOf(EdgingPlace.TopEdge)));
        Assert.Equal("side bands", EdgeWords.Of(new StretchId.SideBands()));
    }

    /// <summary>Programs read them: a change here breaks their reading.</summary>
    [Theory]
    [InlineData(FitPart.Body, "body")]
    [InlineData(FitPart.ClosedBody, "body, closed")]
    [InlineData(FitPart.Hem, "hem")]
    [InlineData(FitPart.Sleeve, "sleeve")]
    [InlineData(FitPart.Armhole, "armhole")]
    [InlineData(FitPart.NeckOpening, "neck opening, all round and stretched")]
    [InlineData(FitPart.ShoulderBesideNeck, "shoulder beside the neck")]
    [InlineData(FitPart.ShouldersBesideBoatNeck, "shoulder breadth beside the boat neck")]
    [InlineData(FitPart.Brim, "brim, stretched")]
    [InlineData(FitPart.Waist, "waist, before it is drawn in")]
    [InlineData(FitPart.TopEdge, "top edge, before it is drawn in")]
    [InlineData(FitPart.JoinedSides, "joined sides, all round")]
    [InlineData(FitPart.FrontBackAndTabs, "front, back and tabs, all round")]
    public void Json_keeps_the_name_of_a_fit(FitPart part, string name) => Assert.Equal(name, FitPartNames.Of(part));

    [Fact]
    public void Json_has_a_name_for_every_fit() => Distinct<FitPart>(FitPartNames.Of);

    [Fact]
    public void Json_keeps_the_names_of_the_uses_of_yarn()
    {
        Assert.Equal("front: stitches", Piece(YarnPurpose.Stitches));
        Assert.Equal("front: turning", Piece(YarnPurpose.Turning));
        Assert.Equal("front: foundation", Piece(YarnPurpose.Foundation));
        Assert.Equal("front: chains to work on over", Piece(YarnPurpose.ChainsToWorkOver));
        Assert.Equal("front: side bands", Piece(YarnPurpose.SideBands));
        Assert.Equal("front: ends", Piece(YarnPurpose.Ends));
        Assert.Equal("edging: topedge", YarnUseNames.Of(Use(YarnPurpose.Edging) with { Edging = EdgingPlace.TopEdge }));
        Assert.Equal("seams", YarnUseNames.Of(Use(YarnPurpose.Seams)));
        Assert.Equal("swatch", YarnUseNames.Of(Use(YarnPurpose.Swatch)));
        Assert.Equal("restarts, joins and their ends", YarnUseNames.Of(Use(YarnPurpose.RestartsAndJoins)));
        Distinct<YarnPurpose>(purpose => YarnUseNames.Of(Use(purpose)));

        static YarnUse Use(YarnPurpose purpose) => new(purpose, false, Length.Zero);

        static string Piece(YarnPurpose purpose) => YarnUseNames.Of(Use(purpose) with { Piece = PieceId.Front });
    }

    /// <summary>Parts that stand on one part are told in the order of work, from the first.</summary>
    [Fact]
    public void Json_keeps_the_names_of_what_is_worked_in_one_go()
    {
        Assert.Equal("front", new PieceRun(PieceId.Front).Name);
        Assert.Equal("sleeve 2", new PieceRun(PieceId.Sleeve, 2).Name);
        Assert.Equal("left front, second side", new PieceRun(PieceId.LeftFront, null, 1).Name);
        Assert.Equal("sleeve 1, first side", new PieceRun(PieceId.Sleeve, 1, 0).Name);
    }

    /// <summary>The table of joins names the copy, the row and the place in the colours, and no identity is written as the code spells it.</summary>
    [Fact]
    public void A_booklet_names_what_a_ball_ends_in()
    {
        var plan = TestProjects.Tideline.Sleeved(pooled: true).Planned();
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition);
        Assert.Matches(@"\n  Ball 1 +front, row \d+: ", text);
        Assert.Matches(@" sleeve 2, row \d+: ", text);
        Assert.DoesNotContain(" { ", text, StringComparison.Ordinal);
    }

    /// <summary>A member without words throws.</summary>
    private static void Distinct<T>(Func<T, string> say)
        where T : struct, Enum
    {
        var said = Enum.GetValues<T>().Select(say).ToArray();
        Assert.All(said, words => Assert.NotEqual("", words));
        Assert.Equal(said.Length, said.Distinct().Count());
    }
}
