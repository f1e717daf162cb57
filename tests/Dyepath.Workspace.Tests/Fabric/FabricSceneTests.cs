using Dyepath.Core.Garments;
using Dyepath.Core.Making;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Fabric;

namespace Dyepath.Workspace.Tests.Fabric;

/// <summary>What the canvas is given to draw.</summary>
public sealed class FabricSceneTests
{
    [Theory]
    [InlineData("up")]
    [InlineData("sideways")]
    public void Every_piece_is_a_patch_with_its_name_its_place_and_its_turns(string way)
    {
        var plan = Demo.Plan(d =>
        {
            d.Set("garment.direction", way);
            d.Set("garment.grading.unevenWidths", true);
            d.Set("garment.grading.severalLeans", true);
        });
        var unrolled = Unrolled.Of(plan, plan.Sizes[2]);
        var scene = FabricScene.Of(unrolled, Eyes.All[0], Distance.All[0], null);
        Assert.Equal($"M {string.Join(' ', unrolled.Pieces.Select(p => p.Piece.Name))}", scene.Key);
        Assert.Equal("sc", scene.Stitch);
        foreach (var (patch, laid) in scene.Patches.Zip(unrolled.Pieces))
        {
            Assert.Equal((laid.X, laid.Y, laid.Width, laid.Height), (patch.X, patch.Y, patch.Width, patch.Height));
            Assert.Equal((laid.Columns, laid.Worn.Rows), (patch.Columns, patch.Rows));
            Assert.Equal((laid.HiddenLeft, laid.HiddenRight), (patch.HiddenLeft, patch.HiddenRight));
            Assert.Equal((way == "sideways", laid.Piece.WrongSideOut), (patch.Sideways, patch.Over));
            Assert.Empty(patch.RowShares);
        }
        Assert.Equal("Front", scene.Patches[0].Label);
        // One sleeve is drawn for the two that are made.
        Assert.Equal("Sleeve (make 2)", scene.Patches.Single(p => p.Label.StartsWith("Sleeve", StringComparison.Ordinal)).Label);
        Assert.Equal(YarnPalette.Of(plan), scene.Palette);
        // S would be read as the size.
        Assert.Equal(["D", "H", "F", "W", "K", ""], scene.Symbols);
        Assert.Equal((0, false), (scene.Blur, scene.Inches));
        // Seams are numbered from 1 as the list beside them; an opening has no number.
        var telling = unrolled.Telling.ToList();
        Assert.Equal(
            unrolled.Seams.Select(s => string.Join(", ", s.Seams.Select(i => $"{telling.IndexOf(i) + 1}"))), scene.Lines.Where(l => l.Seam).Select(l => l.Tag));
        Assert.All(scene.Lines.Where(l => !l.Seam), l => Assert.Equal("", l.Tag));
        Assert.Equal(
            unrolled.Seams.Concat(unrolled.Openings).Select(s => (s.X1, s.Y1, s.X2, s.Y2)), scene.Lines.Select(l => (l.X1, l.Y1, l.X2, l.Y2)));
    }

    /// <summary>Dark ink on light colours and light ink on dark ones, by whoever looks.</summary>
    [Fact]
    public void Symbols_are_legible_on_every_colour_and_eyes_and_distance_change_the_picture()
    {
        var plan = Demo.Plan(d => d.Set("edition.units", "in"));
        var unrolled = Unrolled.Of(plan, plan.Sizes[0]);
        var near = FabricScene.Of(unrolled, Eyes.All[0], Distance.All[0], null);
        Assert.Equal([0xffffff, 0x000000, 0x000000, 0x000000, 0xffffff, 0xffffff], near.Inks);
        Assert.True(near.Inches);
        var grey = FabricScene.Of(unrolled, Eyes.All.Single(e => e.Name == "grey"), Distance.All.Single(d => d.Name == "street"), null);
        Assert.All(grey.Palette, c => Assert.True((c & 0xff) == (c >> 8 & 0xff) && (c & 0xff) == c >> 16));
        // 2 minutes of arc at 20 m are 1.16 cm, of which a standard deviation is 1 in 2.355.
        Assert.Equal(0.494, grey.Blur, 0.001);
        var json = near.ToJson();
        Assert.Contains("\"patches\":[{\"label\":\"Front\"", json, StringComparison.Ordinal);
        Assert.DoesNotContain("cells", json, StringComparison.Ordinal);
    }

    [Fact]
    public void A_likely_piece_shows_how_much_of_each_row_is_in_its_colour()
    {
        var plan = Demo.Plan();
        var unrolled = Unrolled.Of(plan, plan.Sizes[0]);
        var likely = new SimulatedTrials("back", 0.9, 0.8, 1, 1, [0.5, 0.75], new DrawnTrial(0.9, 0, []));
        var scene = FabricScene.Of(unrolled, Eyes.All[0], Distance.All[0], [likely]);
        Assert.Equal([0.5, 0.75], scene.Patches.Single(p => p.Label == "Back").RowShares);
        Assert.All(scene.Patches.Where(p => p.Label != "Back"), p => Assert.Empty(p.RowShares));
    }

    [Fact]
    public void Distances_eyes_and_habits_are_called_what_they_are()
    {
        Assert.Equal(
            ["From near", "From across the room, 6 m", "From across the street, 20 m", "With eyes half shut, as clarity is reckoned"],
            Distance.All.Select(d => d.Words));
        Assert.Equal([null, 6, 20, null], Distance.All.Select(d => d.Metres));
        Assert.Equal(
            ["Eyes that see all colours", "Eyes without red cones", "Eyes without green cones", "Eyes without blue cones", "In grey, as a photograph"],
            Eyes.All.Select(e => e.Words));
        Assert.Equal(
            [
                (CheckHabit.Never, "never"), (CheckHabit.EveryRow, "after every row"), (CheckHabit.EverySequence, "after every whole sequence"),
                (CheckHabit.EverySection, "at every change of colour"),
            ],
            Simulator.Habits);
        var sand = Dyepath.Core.Colours.Srgb.Parse("#b89468");
        foreach (var (name, lacks) in new[] { ("protan", Core.Colours.ColourVision.Protan), ("deutan", Core.Colours.ColourVision.Deutan) })
            Assert.Equal(Core.Colours.ColourVisionSimulation.Brettel(sand.ToLinear(), lacks).ToSrgb(), Eyes.All.Single(e => e.Name == name).Seen!(sand));
    }

    /// <summary>
    /// Ink turns from white to black where a ground's relative luminance passes 0.179; each of these grounds lies beyond it by one channel
    /// alone, by the weights 0.2126, 0.7152 and 0.0722 of red, green and blue.
    /// </summary>
    [Theory]
    [InlineData("#f80000", 0x000000)]
    [InlineData("#e80000", 0xffffff)]
    [InlineData("#008c00", 0x000000)]
    [InlineData("#008400", 0xffffff)]
    [InlineData("#6262ff", 0x000000)]
    [InlineData("#626280", 0xffffff)]
    public void Ink_is_chosen_by_the_light_of_all_three_channels(string colour, int ink)
    {
        var plan = Demo.Plan(d => d.Set("yarn.sections[2].colour", colour));
        var scene = FabricScene.Of(Unrolled.Of(plan, plan.Sizes[0]), Eyes.All[0], Distance.All[0], null);
        Assert.Equal(Convert.ToInt32(colour[1..], 16), scene.Palette[2]);
        Assert.Equal(ink, scene.Inks[2]);
    }

    /// <summary>What is undyed has its own grey; the companion has its colour, after the others.</summary>
    [Fact]
    public void The_companion_follows_the_sections_or_undyed_yarn_where_there_is_none()
    {
        var project = Core.Projects.StarterDocument.Project;
        Assert.Equal(0xc9c4ba, YarnPalette.Of(project with { Companion = null }).Last());
        var plan = Demo.Plan();
        var companion = plan.Project.Companion!.Colour;
        Assert.Equal((companion.Red << 16) + (companion.Green << 8) + companion.Blue, YarnPalette.Of(plan).Last());
        Assert.Equal(plan.Sequence.Colours.Length + 1, YarnPalette.Of(plan).Length);
        Assert.Equal(0x010203, YarnPalette.Number(new Core.Colours.Srgb(1, 2, 3)));
    }

    /// <summary>Half shut eyes are as dim as the clarity of a plan is reckoned: so many stitches wide.</summary>
    [Fact]
    public void Half_shut_eyes_see_as_far_as_clarity_does()
    {
        var squint = Distance.All.Single(d => d.Name == "squint");
        Assert.Equal(new Core.Motifs.MotifOptions().BlurStitches * 0.625, squint.Blur(0.625), 9);
        Assert.Equal(0, Distance.All[0].Blur(0.625));
        // A whole is 2.3548 standard deviations wide at half its height; 2 minutes of arc at 6 m are 3.49 mm.
        Assert.Equal(0.349066 / 2.354820, Distance.All.Single(d => d.Name == "room").Blur(0.625), 1e-6);
        Assert.Equal(["near", "room", "street", "squint"], Distance.All.Select(d => d.Name));
        Assert.Equal(["all", "protan", "deutan", "tritan", "grey"], Eyes.All.Select(e => e.Name));
        var red = new Core.Colours.Srgb(255, 0, 0);
        // Red has 0.2126 of the light of white: a grey of 127.
        Assert.Equal(new Core.Colours.Srgb(127, 127, 127), Eyes.All.Single(e => e.Name == "grey").Seen!(red));
        Assert.Equal(Core.Colours.ColourVisionSimulation.Brettel(red.ToLinear(), Core.Colours.ColourVision.Tritan).ToSrgb(), Eyes.All.Single(e => e.Name == "tritan").Seen!(red));
    }

    /// <summary>Four planes a patch: cells, forms, others, changes, without what seams hide.</summary>
    [Fact]
    public void Stitches_are_handed_over_plane_by_plane()
    {
        var plan = Demo.Plan(d =>
        {
            d.Set("fabric.keeping", "free");
            d.Set("fabric.sectionStitches", null);
        });
        var unrolled = Unrolled.Of(plan, plan.Sizes[0]);
        var handed = FabricScene.Stitches(unrolled);
        var at = 0;
        foreach (var laid in unrolled.Pieces)
        {
            var (planned, count) = (WornStitches.Of(laid.Worn), laid.Columns * laid.Worn.Rows);
            for (var i = 0; i < count; i += 11)
            {
                var place = i / laid.Columns * laid.Worn.Columns + laid.HiddenLeft + i % laid.Columns;
                Assert.Equal(
                    (laid.Worn.Cells[place], planned.Forms[place], planned.Others[place], planned.Changes[place]),
                    (handed[at + i], handed[at + count + i], handed[at + 2 * count + i], handed[at + 3 * count + i]));
            }
            at += 4 * count;
        }
        Assert.Equal(handed.Length, at);
        Assert.Contains(unrolled.Pieces, p => p.HiddenLeft > 0);
        // Where hands wander, nobody knows where within a stitch the yarn changes.
        var front = unrolled.Pieces[0];
        var likely = FabricScene.Stitches(unrolled, new Dictionary<string, WornPiece> { [front.Piece.Name] = front.Worn });
        var own = front.Columns * front.Worn.Rows;
        Assert.Contains(handed[(3 * own)..(4 * own)], c => c > 0);
        Assert.All(likely[(3 * own)..(4 * own)], c => Assert.Equal(0, c));
        Assert.Equal(handed[..(2 * own)], likely[..(2 * own)]);
    }
}
