using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Dyepath.Core.Adapting;
using Dyepath.Core.Colours;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Reading;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Adapting.Readers;

namespace Dyepath.Core.Tests.Adapting;

/// <summary>What a reader of the demo, and of every garment, is told of her own yarn.</summary>
public sealed class AdapterTests
{
    private static readonly Length Ten = Cm(10);

    public static TheoryData<string> SizesOfDemo => [.. Tideline.Sizes.Select(s => s.Name)];

    public static TheoryData<string> Garments => [.. Repertoire.All.Select(kind => kind.Name)];

    /// <summary>Who has the designer's own yarn makes what the designer published, number for number, and nothing differs.</summary>
    [Theory]
    [MemberData(nameof(SizesOfDemo))]
    public void The_designers_own_yarn_is_as_written(string size)
    {
        var told = Tideline.Adapt(size, Designer(Demo));
        Assert.Equal(AdaptVerdict.AsWritten, told.Verdict);
        Assert.Empty(told.Changes);
        var published = Tideline.Sizes.First(s => s.Name == size);
        Assert.Empty(Differences(published, told.Plan!.Sizes.Single()));
        Assert.Equal(published.Finished, told.Plan.Sizes[0].Finished);
        Assert.Equal(published.Yarn.BallsSafe, told.Plan.Sizes[0].Yarn.BallsSafe);
    }

    /// <summary>By another route: her document is written out, read again and planned, and says the same to the last figure.</summary>
    [Theory]
    [InlineData("XS")]
    [InlineData("4X")]
    public void Her_plan_is_what_planning_the_document_of_her_size_says(string size)
    {
        foreach (var own in (OwnMaterials[])[Designer(Demo), Counted(6, 5, 4, 6, 5), Counted(5, 4, 3, 5, 4) with { Ball = Length.FromMetres(180) }])
        {
            var plan = Tideline.Adapt(size, own).Plan!;
            Assert.Equal(Json(plan), Json(PlanOf(ProjectReader.Read(ProjectWriter.WriteUtf8(plan.Project)).Project!)));
        }
    }

    /// <summary>The same of every garment that can be made, in every size that its first document has.</summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void The_designers_own_yarn_is_as_written_in_every_garment(string garment)
    {
        var plan = PlanOf(garment);
        foreach (var size in plan.Sizes)
        {
            var told = plan.Adapt(size.Name, Designer(plan.Project));
            Assert.True(told.Verdict == AdaptVerdict.AsWritten, $"{size.Name}: {told.Why}");
            Assert.Empty(told.Changes);
            Assert.Empty(Differences(size, told.Plan!.Sizes.Single()));
        }
    }

    /// <summary>A size that no document of its own leads to keeps its published plan, under her colours; it passes the technical check.</summary>
    [Fact]
    public void A_published_size_is_kept_where_no_document_of_one_size_gives_it()
    {
        var vest = PlanOf("vest");
        var told = vest.Adapt("S", Counted(4, 3, 4, 3));
        Assert.Equal(AdaptVerdict.AsWritten, told.Verdict);
        Assert.Empty(Differences(vest.Sizes[0], told.Plan!.Sizes.Single()));
        Assert.Contains(told.Plan.Sequence.Colours, c => c.Name == "night");
        Assert.Empty(PatternCheck.Run(told.Plan, TestContext.Current.CancellationToken));
    }

    /// <summary>Other colours of the same stitches change what is printed of colours, and no number.</summary>
    [Fact]
    public void Other_colours_of_the_same_stitches_are_as_written()
    {
        var told = Tideline.Adapt("M", Counted(5, 4, 3, 5, 4));
        Assert.Equal(AdaptVerdict.AsWritten, told.Verdict);
        Assert.Empty(Differences(Tideline.Sizes[2], told.Plan!.Sizes[0]));
        Assert.Equal(["night", "lemon", "brick", "mint", "plum"], told.Plan.Sequence.Colours.Select(c => c.Name));
    }

    /// <summary>Whichever colour her ball begins with, and whichever end it is pulled from, the ring is the pattern's (law 2 of the ring).</summary>
    [Fact]
    public void A_sequence_that_begins_elsewhere_or_runs_backwards_is_as_written()
    {
        int[] pattern = [5, 4, 3, 5, 4];
        for (var first = 0; first < 5; first++)
        {
            foreach (var way in (int[])[1, -1])
            {
                var own = Enumerable.Range(0, 5).Select(i => pattern[(first + way * i + 5) % 5]).ToArray();
                var told = Tideline.Adapt("L", Counted(own));
                Assert.Equal(AdaptVerdict.AsWritten, told.Verdict);
                Assert.Empty(Differences(Tideline.Sizes[3], told.Plan!.Sizes[0]));
                Assert.Equal(pattern.Select(n => (double)n), Enumerable.Range(0, 5).Select(told.Plan.Sequence.UnitsIn));
            }
        }
    }

    /// <summary>A sequence written down twice over is the same yarn.</summary>
    [Fact]
    public void A_sequence_counted_over_two_rounds_at_once_is_as_written()
    {
        var once = Counted(5, 4, 3, 5, 4);
        var twice = new OwnMaterials(new OwnYarnCount(
            "own", [.. once.Yarn.Sections, .. once.Yarn.Sections], [.. once.Yarn.Repeats.Take(4).Select(r => (ImmutableArray<int>)[.. r, .. r])]));
        var told = Tideline.Adapt("S", twice);
        Assert.Equal(AdaptVerdict.AsWritten, told.Verdict);
        Assert.Empty(Differences(Tideline.Sizes[1], told.Plan!.Sizes[0]));
    }

    /// <summary>
    /// Two readers count the same stitches. One has a longer sequence and the designer's hands, the other the designer's yarn and tighter
    /// hands: only the second is helped by a hook.
    /// </summary>
    [Fact]
    public void A_longer_sequence_is_not_tighter_hands()
    {
        var counted = Repeats([5, 4, 3, 5, 5], [5, 5, 3, 5, 4], [6, 4, 3, 5, 4], [5, 4, 4, 5, 4], [5, 4, 3, 6, 4]);
        var longer = Tideline.Adapt("M", counted with { Gauge = new Gauge(13.75, 15.75, Ten), YarnPerStitch = Cm(6.3) });
        var tighter = Tideline.Adapt("M", counted with { Gauge = new Gauge(14.5, 16.6, Ten), YarnPerStitch = Cm(6) });
        Assert.Equal((AdaptCause.Yarn, AdaptVerdict.ReDerived), (longer.Cause, longer.Verdict));
        Assert.Equal((AdaptCause.Hands, AdaptVerdict.OtherHook), (tighter.Cause, tighter.Verdict));
        Assert.Contains("the yarn that differs and not your hands", longer.Why, StringComparison.Ordinal);
        Assert.Contains("your hands or your hook that differ and not the yarn", tighter.Why, StringComparison.Ordinal);
        Assert.Equal(AdaptCause.Untold, Tideline.Adapt("M", counted).Cause);
    }

    /// <summary>
    /// Hands that take 5 % less yarn and make everything 5 % smaller are put right by a larger hook: with stitches in proportion to the
    /// power 0.6 of the hook (as supposed for one swatch), 5.5 · 1.05^(1/0.6) = 5.97 mm.
    /// </summary>
    [Fact]
    public void Tighter_hands_are_put_right_by_a_larger_hook()
    {
        var told = Tideline.Adapt("M", Repeats([5, 4, 3, 5, 5], [5, 5, 3, 5, 4], [6, 4, 3, 5, 4], [5, 4, 4, 5, 4], [5, 4, 3, 6, 4]) with
        {
            Gauge = new Gauge(13.75 * 1.05, 15.75 * 1.05, Ten),
            YarnPerStitch = Cm(6.3 / 1.05),
        });
        Assert.Equal(AdaptVerdict.OtherHook, told.Verdict);
        Assert.Equal(6, told.Plan!.Project.Fabric.Swatch.HookMillimetres);
        Assert.Empty(Differences(Tideline.Sizes[2], told.Plan.Sizes[0]));
        foreach (var (measure, length) in told.Plan.Sizes[0].Finished)
            Assert.InRange((length - Tideline.Sizes[2].Finished[measure]).Inches, -1, 1);
        Assert.Contains(told.Changes, c => c == new AdaptChange("hook", "5.5 mm", "6 mm"));
    }

    /// <summary>Every finished measure is said before and after, in the figures of the two plans.</summary>
    [Fact]
    public void Changes_say_what_the_two_plans_say()
    {
        var told = Tideline.Adapt("2X", Counted(4, 3, 5, 3, 4, 3, 4));
        var (was, now) = (Tideline.Sizes[5], told.Plan!.Sizes[0]);
        Assert.Equal(AdaptVerdict.ReDerived, told.Verdict);
        foreach (var (measure, length) in was.Finished)
        {
            var said = told.Changes.SingleOrDefault(c => c.What == $"finished {GarmentMeasures.Words(measure)}");
            var (from, to) = ($"{length.Centimetres:0.0} cm", $"{now.Finished[measure].Centimetres:0.0} cm");
            Assert.Equal(from == to ? null : new AdaptChange($"finished {GarmentMeasures.Words(measure)}", from, to), said);
        }
        Assert.Contains(told.Changes, c => c == new AdaptChange("front, stitches", $"{was.Pieces[0].Stitches} stitches", $"{now.Pieces[0].Stitches} stitches"));
        Assert.Contains(told.Changes, c => c is { What: "stitches until the colours come round", From: "21 stitches", To: "26 stitches" });
        Assert.All(told.Changes, c => Assert.NotEqual(c.From, c.To));
    }

    /// <summary>A stranger's seven colours in size 2X: her piece draws the pattern's motif, fits, and passes the technical check.</summary>
    [Fact]
    public void A_strangers_yarn_of_seven_colours_makes_the_largest_but_two()
    {
        var told = Tideline.Adapt("2X", Counted(4, 3, 5, 3, 4, 3, 4));
        var plan = told.Plan!;
        Assert.Equal(MotifKind.Argyle, plan.Sizes[0].Pieces[0].Motif);
        Assert.Equal(7, plan.Sequence.Colours.Length);
        Assert.All(plan.Sizes[0].Target, t => Assert.InRange((plan.Sizes[0].Finished[t.Key] - t.Value).Inches, -1, 1));
        Assert.All(plan.Sizes[0].Worn, w => Assert.True(w.Holds));
        Assert.Empty(PatternCheck.Run(plan, TestContext.Current.CancellationToken));
    }

    /// <summary>Turned rows of N stitches lean by wrap(2N)/2 of the period (law of the lean, derived): here 26 of seven colours.</summary>
    [Fact]
    public void Her_motif_leans_as_the_law_says()
    {
        var piece = Tideline.Adapt("2X", Counted(4, 3, 5, 3, 4, 3, 4)).Plan!.Sizes[0].Pieces[0];
        var wrapped = Math.IEEERemainder(2 * piece.RowStitches.Average(), 26);
        Assert.Equal(wrapped / 2, piece.Lean, 1e-9);
        Assert.InRange(Math.Abs(piece.Lean), 0.5, 2);
    }

    [Fact]
    public void One_colour_makes_nothing()
    {
        var navy = new YarnSection("navy", Srgb.Parse("#000080"));
        var told = Tideline.Adapt("M", new OwnMaterials(new OwnYarnCount("own", [navy, navy], [[5, 4]])));
        Assert.Equal(AdaptVerdict.NotSuited, told.Verdict);
        Assert.Contains("one colour", told.Why, StringComparison.Ordinal);
        Assert.Null(told.Plan);
        Assert.Empty(told.Changes);
        var nearly = new YarnSection("nearly navy", Srgb.Parse("#000382"));
        Assert.Contains("so alike", Tideline.Adapt("M", new OwnMaterials(new OwnYarnCount("own", [navy, nearly], [[5, 4]]))).Why, StringComparison.Ordinal);
    }

    /// <summary>
    /// Colours longer than a panel is wide, and not long enough for bands, make no tunic; what is named instead has a plan for them by
    /// itself.
    /// </summary>
    [Fact]
    public void A_yarn_that_does_not_suit_is_told_what_it_would_make()
    {
        var own = Counted(20, 21, 22, 23, 22);
        var told = Tideline.Adapt("M", own);
        Assert.Equal(AdaptVerdict.NotSuited, told.Verdict);
        Assert.StartsWith("Not this yarn for this piece", told.Why, StringComparison.Ordinal);
        Assert.NotEmpty(told.Others);
        foreach (var other in told.Others)
        {
            var starter = StarterDocument.Of(Repertoire.All.First(kind => kind.Name == other.Garment));
            var plans = new[] { starter.Garment.Motif, MotifKind.Bands }.Select(motif => GarmentPlanner.Plan(
                starter with { Yarn = told.Document.Yarn, Fabric = told.Document.Fabric, Garment = starter.Garment with { Motif = motif } },
                TestContext.Current.CancellationToken).Plan).OfType<Plan>();
            Assert.Contains(plans, p => MotifWords.Of(p.Project.Garment.Motif) == other.Motif);
        }
    }

    /// <summary>Her gauge alone: a tenth more stitches make the pattern's numbers a tenth narrower, so that she gets numbers of her own.</summary>
    [Fact]
    public void Another_gauge_with_the_patterns_stitches_of_yarn_is_worked_out_anew()
    {
        var told = Tideline.Adapt("M", Counted(5, 4, 3, 5, 4) with { Gauge = new Gauge(15.1, 17.3, Ten), YarnPerStitch = Cm(6.3) });
        Assert.Equal(AdaptVerdict.ReDerived, told.Verdict);
        var (own, size) = (told.Plan!, told.Plan!.Sizes[0]);
        Assert.Equal(10 / 15.1, own.StitchWidth.Centimetres, 1e-6);
        Assert.All(size.Target, t => Assert.InRange((size.Finished[t.Key] - t.Value).Inches, -1, 1));
    }

    /// <summary>A companion yarn that is called by a colour of the designer's takes one of hers, and no sentence asks for it.</summary>
    [Fact]
    public void Nothing_asks_for_a_colour_that_she_has_not()
    {
        var foam = Demo.Yarn.Sections[2];
        var pattern = PlanOf(Demo with
        {
            Sizes = Demo.Sizes with { Sizes = ["S", "M"] },
            Companion = Demo.Companion! with { Name = "solid in Foam", Colour = foam.Colour },
        });
        foreach (var own in (OwnMaterials[])[Counted(5, 4, 3, 5, 4), Counted(6, 5, 4, 6, 5, 2)])
        {
            var told = pattern.Adapt("M", own).Plan!.Project;
            Assert.Contains(told.Companion!.Name, own.Yarn.Sections.Select(s => s.Name));
            Assert.Contains(told.Companion.Colour, own.Yarn.Sections.Select(s => s.Colour));
            Assert.DoesNotContain(told.Words.Values, w => w.Contains("deep water", StringComparison.OrdinalIgnoreCase));
            Assert.Contains("half a stitch late", told.Words["notes"], StringComparison.Ordinal);
        }
        var same = Tideline.Adapt("M", Designer(Demo)).Plan!.Project;
        Assert.Equal(Demo.Companion, same.Companion);
        Assert.Equal(Demo.Words, same.Words);
    }

    /// <summary>Small counts are soon those of the example that documents are begun with; what a reader counted is hers all the same.</summary>
    [Fact]
    public void What_she_counted_is_not_taken_for_an_example()
    {
        var own = Tideline.Adapt("M", Counted(4, 3, 5, 3, 4, 3, 4)).Plan!.Project;
        Assert.Empty(ExampleValues.Of(own));
    }

    /// <summary>What no document can say is refused, each where it lies.</summary>
    [Fact]
    public void What_cannot_be_is_refused_with_its_place()
    {
        Assert.Equal(["yarn.counted[0].repeats[0]"], Places(Repeats([0, 0, 0, 0, 0])));
        Assert.Equal(["yarn.ball.length"], Places(Counted(5, 4, 3, 5, 4) with { Ball = Length.FromMetres(1.2) }));
        Assert.Equal(["yarn.name"], Places(new(Counted(5, 4).Yarn with { Name = "" })));
        Assert.All(Places(Counted(5, 4, 3, 5, 4) with { Gauge = new Gauge(390, 0.3, Ten) }), place => Assert.StartsWith("fabric.swatch", place, StringComparison.Ordinal));
        Assert.Throws<ArgumentException>(() => Adapter.Adapt(Tideline, "7X", Counted(5, 4), TestContext.Current.CancellationToken));

        static IEnumerable<string> Places(OwnMaterials own)
        {
            var result = Adapter.Adapt(Tideline, "M", own, TestContext.Current.CancellationToken);
            Assert.Null(result.Adaptation);
            Assert.NotEmpty(result.Faults);
            return result.Faults.Select(f => f.Place).Distinct();
        }
    }

    [Fact]
    public void It_stops_when_it_is_told_to() =>
        Assert.Throws<OperationCanceledException>(() => Adapter.Adapt(Tideline, "M", Counted(6, 5, 4, 6, 5), new CancellationToken(true)));

    private static string Json(Plan plan)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
            PlanJson.Write(json, plan);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
