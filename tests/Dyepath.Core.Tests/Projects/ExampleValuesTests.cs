using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Instructions;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Projects;

/// <summary>What a document still has of the example that it was begun with is said to be unmeasured, whatever its yarn is called by now.</summary>
public sealed class ExampleValuesTests
{
    private static readonly Project Renamed = StarterDocument.Project with
    {
        Yarn = StarterDocument.Project.Yarn with
        {
            Name = "Own yarn",
            Sections = [.. StarterDocument.Project.Yarn.Sections.Select(s => s with { Name = "own " + s.Name })],
        },
    };

    [Fact]
    public void Another_name_and_other_colours_are_not_a_measurement() =>
        Assert.Equal(["yarn.sections", "yarn.counted", "fabric.swatch.yarnUsed", "fabric.swatch.worked"], ExampleValues.Of(Renamed).Select(v => v.Place));

    [Fact]
    public void What_is_measured_is_no_longer_named()
    {
        var measured = Renamed with
        {
            Yarn = Renamed.Yarn with
            {
                Sections = Renamed.Yarn.Sections.SetItem(0, Renamed.Yarn.Sections[0] with { Length = Length.FromCentimetres(30) }),
                Counted = [new CountedBall("one", [[5, 4, 6, 4], [5, 4, 6, 5]])],
            },
        };
        Assert.Equal(["fabric.swatch.yarnUsed", "fabric.swatch.worked"], ExampleValues.Of(measured).Select(v => v.Place));
        var all = measured with
        {
            Fabric = measured.Fabric with { Swatch = measured.Fabric.Swatch with { YarnUsed = [new YarnUsed(30, Length.FromCentimetres(190))] } },
        };
        Assert.Equal(["fabric.swatch.worked"], ExampleValues.Of(all).Select(v => v.Place));
        var swatch = all.Fabric.Swatch;
        Swatch[] hers = [swatch with { HookMillimetres = 5 }, swatch with { Worked = swatch.Worked with { Rows = 17 } }, swatch with { Blocked = swatch.Worked }];
        Assert.All(hers, s => Assert.Empty(ExampleValues.Of(all with { Fabric = all.Fabric with { Swatch = s } })));
        all = all with { Fabric = all.Fabric with { Swatch = hers[0] } };
        Assert.Empty(ExampleValues.Of(all));
        Assert.Empty(ExampleValues.Findings(all));
        Assert.Empty(ExampleValues.Of(TestProjects.Tideline));
    }

    /// <summary>
    /// Counts of her own with the same small numbers among them, whether of more colours or of as many, beside measures of her own.
    /// </summary>
    [Fact]
    public void Counts_that_are_only_alike_are_hers()
    {
        var swatch = new Swatch(5, new Gauge(13.5, 15, Length.FromInches(4)), null, null, []);
        YarnSection[] seven = [.. Enumerable.Range(0, 7).Select(i => new YarnSection($"colour {i}", new Core.Colours.Srgb((byte)(30 * i), 90, 120), null))];
        var hers = StarterDocument.Project with
        {
            Fabric = StarterDocument.Project.Fabric with { Swatch = swatch },
            Yarn = StarterDocument.Project.Yarn with
            {
                Sections = [.. seven],
                Counted = [new CountedBall("first ball", [[6, 4, 3, 4, 5, 3, 4], [6, 4, 3, 5, 5, 3, 4], [5, 4, 3, 4, 5, 3, 4]])],
            },
        };
        Assert.Empty(ExampleValues.Of(hers));
        // Seven colours that four of the example's are among by chance are hers also beside the example's swatch.
        Assert.DoesNotContain(ExampleValues.Of(hers with { Fabric = StarterDocument.Project.Fabric }), v => v.Place == "yarn.counted");
        var four = hers with { Yarn = hers.Yarn with { Sections = [.. seven[..4]], Counted = StarterDocument.Project.Yarn.Counted } };
        Assert.Empty(ExampleValues.Of(four));
        Assert.Contains(ExampleValues.Of(four with { Fabric = StarterDocument.Project.Fabric }), v => v.Place == "yarn.counted");
    }

    /// <summary>A yarn of five colours, or of three, that was begun from the example of four is not measured by that.</summary>
    [Fact]
    public void Sections_that_are_added_moved_or_taken_out_measure_nothing()
    {
        var (sections, repeats) = (Renamed.Yarn.Sections, Renamed.Yarn.Counted[0].Repeats);
        Yarn With(IEnumerable<YarnSection> changed, Func<ImmutableArray<int>, IEnumerable<int>> counts, int more = 0) => Renamed.Yarn with
        {
            Sections = [.. changed],
            Counted = [new CountedBall("one", [.. repeats.Select(r => counts(r).ToImmutableArray()), .. Enumerable.Repeat(counts([4, 4, 5, 3]).ToImmutableArray(), more)])],
        };
        var fifth = new YarnSection("fifth", sections[0].Colour, Length.FromCentimetres(20));
        Yarn[] unmeasured =
        [
            With(sections.Add(fifth), r => r.Add(0)), With(sections.Add(fifth with { Length = null }), r => r.Add(3)),
            With(sections.Insert(1, fifth), r => r.Insert(1, 7)), With(sections.Reverse(), r => r.Reverse()),
            With(sections.RemoveAt(1), r => r.RemoveAt(1)), With(sections, r => r, more: 2),
        ];
        Assert.All(unmeasured, yarn => Assert.Equal(["yarn.sections", "yarn.counted"], ExampleValues.Of(Renamed with { Yarn = yarn }).Take(2).Select(v => v.Place)));
        var one = With(sections, r => r.SetItem(2, 5));
        Assert.DoesNotContain("yarn.counted", ExampleValues.Of(Renamed with { Yarn = one }).Select(v => v.Place));
    }

    [Fact]
    public void Every_garment_begins_with_it_and_its_booklet_says_so()
    {
        Assert.All(Repertoire.All, kind => Assert.Equal(4, ExampleValues.Of(StarterDocument.Of(kind)).Length));
        var plan = Renamed.Planned();
        Assert.Contains(plan.Findings, f => f.Place == "yarn.sections" && f.Text.StartsWith("Not measured yet, but taken from the example that the document was begun with: the lengths of the colours, the counted stitches, the yarn that the swatch's stitches took and the swatch's gauge and hook. Put", StringComparison.Ordinal));
        Assert.Contains(
            "This yarn is not measured yet: the lengths of the colours, the counted stitches, the yarn that the swatch's stitches took and the swatch's gauge and hook are those of an example",
            TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition).Replace("\n    ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }
}
