using System.Collections.Immutable;
using System.Globalization;
using CsCheck;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Yarn;

namespace Dyepath.Workspace.Tests.Yarn;

public class SequenceRulerTests
{
    private static SequenceRuler Demo(bool fromOtherEnd = false, bool inches = false) =>
        SequenceRuler.Of(SectionView.Read(Documents.Demo()), [5, 4, 3, 5, 4], fromOtherEnd, inches);

    [Fact]
    public void Sections_lie_end_to_end_aextentsthe_sequence()
    {
        var ruler = Demo();

        Assert.Equal(132.5, ruler.Total, 9);
        Assert.Equal(0, ruler.Parts[0].From);
        Assert.Equal(["D", "H", "F", "W", "K"], ruler.Parts.Select(p => p.Section.Symbol));
        Assert.All(ruler.Parts.Zip(ruler.Parts.Skip(1)), pair => Assert.Equal(pair.First.To, pair.Second.From, 9));
        Assert.Equal(["K", "W", "F", "H", "D"], Demo(fromOtherEnd: true).Parts.Select(p => p.Section.Symbol));
    }

    [Fact]
    public void An_inner_boundary_takes_from_one_what_it_gives_the_other() =>
        Assert.Equal([(0, "33.8 cm"), (1, "23 cm")], Demo().Move(0, 33.83));

    [Fact]
    public void From_the_other_end_the_same_hand_moves_the_other_two() =>
        Assert.Equal([(4, "20 cm"), (3, "36.3 cm")], Demo(fromOtherEnd: true).Move(0, 20));

    [Fact]
    public void The_last_boundary_lengthens_the_sequence() => Assert.Equal([(4, "26.4 cm")], Demo().Move(4, 133.5));

    [Fact]
    public void In_inches_lengths_are_eighths() =>
        Assert.All(Demo(inches: true).Move(4, 53).Select(m => m.Length), l => Assert.EndsWith(".875 in", l, StringComparison.Ordinal));

    [Fact]
    public void No_drag_makes_a_length_that_the_document_refuses() => Gen.Select(Gen.Int[0, 4], Gen.Double[-500, 500], Gen.Bool).Holds(
        drag =>
        {
            var document = Documents.Demo();
            var moved = Demo(drag.Item3).Move(drag.Item1, drag.Item2);
            foreach (var (section, length) in moved)
                document.Set($"yarn.sections[{section}].length", length);
            var lengths = SectionView.Read(document).Select(s => s.Length!.Value.Centimetres).ToArray();
            Assert.All(lengths, l => Assert.InRange(l, 0.0999, 10_000));
            if (drag.Item1 < 4)
                Assert.Equal(132.5, lengths.Sum(), 6);
        },
        seed: 14, cases: 100);

    [Fact]
    public void Without_lengths_the_ruler_shows_counted_stitches()
    {
        var document = Documents.Demo();
        for (var i = 0; i < 5; i++)
        {
            document.Set(string.Create(CultureInfo.InvariantCulture, $"yarn.sections[{i}].length"), null);
        }
        var sections = SectionView.Read(document);

        var ruler = SequenceRuler.Of(sections, [5, 4, 3, 5, 4], false, false);
        Assert.Equal((RulerScale.Stitches, 21.0), (ruler.Scale, ruler.Total));
        Assert.False(ruler.CanMove(0));
        Assert.Equal(22, ruler.Marks().Count());
        Assert.Equal(RulerScale.Nothing, SequenceRuler.Of(sections, [], false, false).Scale);
    }

    [Fact]
    public void A_section_without_length_holds_a_place_that_cannot_be_dragged()
    {
        var document = Documents.Demo();
        document.Set("yarn.sections[2].length", "about a span");

        var ruler = SequenceRuler.Of(SectionView.Read(document), [], false, false);

        Assert.False(ruler.Parts[2].Known);
        Assert.Equal([true, false, false, true, true], Enumerable.Range(0, 5).Select(ruler.CanMove));
    }

    /// <summary>A number every 20 cm or 10 in, ten fine marks to each, or half inches; stitches one by one.</summary>
    [Fact]
    public void Scales_have_numbers_and_finer_marks_between()
    {
        var centimetres = Demo().Marks().ToArray();
        Assert.Equal([0, 20, 40, 60, 80, 100, 120], centimetres.Where(m => m.Numbered).Select(m => m.At));
        Assert.Equal(2, centimetres[1].At, 9);
        var inches = Demo(inches: true).Marks().ToArray();
        Assert.Equal([0, 10, 20, 30, 40, 50], inches.Where(m => m.Numbered).Select(m => m.At));
        Assert.Equal(1, inches[1].At, 9);
        Assert.Equal(("cm", 0.1m, "in", 0.125m), (Demo().Unit, Demo().Step, Demo(inches: true).Unit, Demo(inches: true).Step));
        Assert.True(Demo().HasLengths && Demo(inches: true).HasLengths);
    }

    /// <summary>A boundary stays a step away from its neighbours; the last one may double the sequence.</summary>
    [Fact]
    public void A_boundary_goes_as_far_as_its_neighbours_let_it()
    {
        var ruler = Demo();
        Assert.Equal((0.1, 56.7), (ruler.Range(0).Least, Math.Round(ruler.Range(0).Most, 6)));
        Assert.Equal((107.2, 265), (Math.Round(ruler.Range(4).Least, 6), ruler.Range(4).Most));
        Assert.Equal([(0, "0.1 cm"), (1, "56.7 cm")], ruler.Move(0, -5));
        Assert.Equal([(0, "56.7 cm"), (1, "0.1 cm")], ruler.Move(0, 500));
    }

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(0, 0)]
    [InlineData(0.23, 0)]
    [InlineData(0.25, 1)]
    [InlineData(0.5, 2)]
    [InlineData(1, 4)]
    [InlineData(2, 4)]
    public void A_place_on_the_ruler_is_of_one_part(double share, int part) => Assert.Equal(part, Demo().PartAt(share));

    private static SequenceRuler Ruler(RulerScale scale, params double[] extents)
    {
        var document = Documents.Demo();
        document.Set("yarn.sections", new System.Text.Json.Nodes.JsonArray());
        for (var i = 0; i < extents.Length; i++)
        {
            var section = new System.Text.Json.Nodes.JsonObject { ["name"] = $"colour {i}", ["colour"] = "#112233" };
            if (scale is RulerScale.Centimetres or RulerScale.Inches)
                section["length"] = FormattableString.Invariant($"{extents[i]} {(scale == RulerScale.Inches ? "in" : "cm")}");
            document.Add("yarn.sections", section);
        }
        return SequenceRuler.Of(SectionView.Read(document), scale == RulerScale.Stitches ? extents : [], false, scale == RulerScale.Inches);
    }

    [Fact]
    public void A_yarn_without_sections_or_figures_has_no_marks_and_no_unit()
    {
        var none = Ruler(RulerScale.Nothing);
        Assert.Equal((0.0, RulerScale.Nothing, "", false), (none.Total, none.Scale, none.Unit, none.HasLengths));
        Assert.Empty(none.Marks());
        Assert.Equal(-1, none.PartAt(0.5));
        // Sections of which nothing is known stand equally wide, a width of 1 each, and are no scale.
        var unknown = Ruler(RulerScale.Nothing, 4, 7, 9);
        Assert.Equal([(0.0, 1.0, false), (1, 2, false), (2, 3, false)], unknown.Parts.Select(p => (p.From, p.To, p.Known)));
        Assert.Empty(unknown.Marks());
        Assert.False(unknown.CanMove(0) || unknown.CanMove(2));
        Assert.Equal("stitches", Ruler(RulerScale.Stitches, 4, 7).Unit);
        Assert.False(Ruler(RulerScale.Stitches, 4, 7).HasLengths);
    }

    /// <summary>Every stitch has its mark, about twelve of them a number; a section of no stitch is still to be seen.</summary>
    [Theory]
    [InlineData(4, 8, 1, 13)]
    [InlineData(20, 4, 2, 25)]
    [InlineData(60, 60, 10, 121)]
    public void Stitches_are_marked_one_by_one(int one, int other, int numbers, int marks)
    {
        var all = Ruler(RulerScale.Stitches, one, other).Marks().ToArray();
        Assert.Equal(Enumerable.Range(0, marks).Select(n => ((double)n, n % numbers == 0)), all);
        Assert.Equal(0.1, Ruler(RulerScale.Stitches, 0, 5).Parts[0].Extent);
        Assert.Equal(5, Ruler(RulerScale.Stitches, 0, 5).Parts[1].Extent, 9);
    }

    /// <summary>About eight numbers; ten marks to each, but no finer than half an inch.</summary>
    [Theory]
    [InlineData(RulerScale.Centimetres, 7, 0.1, 10)]
    [InlineData(RulerScale.Centimetres, 9, 0.2, 10)]
    [InlineData(RulerScale.Centimetres, 800, 10, 10)]
    [InlineData(RulerScale.Inches, 8, 0.5, 2)]
    [InlineData(RulerScale.Inches, 16, 0.5, 4)]
    [InlineData(RulerScale.Inches, 120, 2, 10)]
    public void Lengths_have_ten_marks_to_a_number_or_half_inches(RulerScale scale, double total, double fine, int each)
    {
        var marks = Ruler(scale, total / 2, total / 2).Marks().ToArray();
        Assert.Equal((int)Math.Floor(total / fine + 1e-6) + 1, marks.Length);
        Assert.All(marks.Index(), m => Assert.Equal((m.Index * fine, m.Index % each == 0), (Math.Round(m.Item.At, 9), m.Item.Numbered), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-6 && a.Item2 == b.Item2));
    }

    /// <summary>A short sequence may grow by 10, a long one to twice its length.</summary>
    [Fact]
    public void The_last_boundary_goes_to_twice_the_length_or_ten_further()
    {
        Assert.Equal(16, Ruler(RulerScale.Centimetres, 3, 3).Range(1).Most, 9);
        Assert.Equal(24, Ruler(RulerScale.Centimetres, 6, 6).Range(1).Most, 9);
        Assert.Equal(3.1, Ruler(RulerScale.Centimetres, 3, 3).Range(1).Least, 9);
        Assert.Equal([(1, "13 cm")], Ruler(RulerScale.Centimetres, 3, 3).Move(1, 99));
        Assert.Equal([(1, "0.1 cm")], Ruler(RulerScale.Centimetres, 3, 3).Move(1, -99));
        // What is left to both is kept to the millimetre, by whichever is dragged.
        Assert.Equal([(0, "0.2 cm"), (1, "5.8 cm")], Ruler(RulerScale.Centimetres, 3, 3).Move(0, 0.15));
        // Two that have no two steps between them keep one step each.
        Assert.Equal((0, "0.1 cm"), Ruler(RulerScale.Centimetres, 0.05, 0.05).Move(0, 0.05)[0]);
    }

    /// <summary>What is not known takes the place of the mean of what is.</summary>
    [Fact]
    public void What_is_not_known_is_as_wide_as_the_others_are_on_average()
    {
        var document = Documents.Demo();
        document.Set("yarn.sections[2].length", null);
        var ruler = SequenceRuler.Of(SectionView.Read(document), [], false, false);
        Assert.Equal(ruler.Parts.Where(p => p.Known).Average(p => p.Extent), ruler.Parts[2].Extent, 9);
        Assert.Equal(RulerScale.Centimetres, ruler.Scale);
        Assert.Equal(RulerScale.Nothing, SequenceRuler.Of(SectionView.Read(Documents.Demo()).Select(s => s with { Length = null }).ToImmutableArray(), [1, 2], false, false).Scale);
    }
}
