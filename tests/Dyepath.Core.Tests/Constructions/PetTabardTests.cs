using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Garments;
using static Dyepath.Core.Tests.Constructions.GarmentTrials;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

public sealed class PetTabardTests
{
    [Theory]
    [InlineData(Direction.Up, "sc")]
    [InlineData(Direction.Sideways, "sc")]
    [InlineData(Direction.Up, "hdc")]
    [InlineData(Direction.Sideways, "hdc")]
    public void Edged_it_is_checked_by_other_routes(Direction direction, string stitch)
    {
        var plan = Check(Edged(Of("pet-tabard", stitch), direction, EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.LegOpenings));
        var size = Assert.Single(plan.Sizes);
        Assert.True(Assert.Single(size.Worn).Holds);
        Assert.Equal(48 + 4, size.Target[GarmentMeasure.Width].Centimetres, 1e-6);
        Assert.Equal(14, size.Finished[GarmentMeasure.LegOpening].Centimetres, 1.0);
    }

    [Theory]
    [InlineData(Direction.Up, "row")]
    [InlineData(Direction.Sideways, "stitch")]
    public void Its_words_speak_of_legs(Direction direction, string one)
    {
        var text = Text(Edged(Of("pet-tabard"), direction, EdgingPlace.LegOpenings).Planned());
        Assert.Contains("leg openings begin here.", text, StringComparison.Ordinal);
        Assert.Contains($"Sides: sew {one} to {one} from the hem up to the leg opening marks.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("armhole", text, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Sizes of the designer's own may have heads of their own: half of it, less a tenth that the slit stretches, is the least.</summary>
    [Fact]
    public void Every_size_has_its_own_measures()
    {
        static OwnSize Size(string name, double width, double head) => new(
            name, new Dictionary<string, Length> { ["width"] = Cm(width), ["head"] = Cm(head) }.ToImmutableSortedDictionary());
        var plan = (Of("pet-tabard") with { Sizes = new SizeSelection(null, [], [Size("small", 44, 30), Size("large", 66, 42)], null, [], []) })
            .With(g => g with { Direction = Direction.Sideways }).Planned();
        Assert.Equal([44.0, 66.0], plan.Sizes.Select(s => s.Target[GarmentMeasure.Width].Centimetres));
        Assert.Equal([30 / 2.2, 42 / 2.2], plan.Sizes.Select(s => s.Target[GarmentMeasure.NeckWidth].Centimetres).Select(n => Math.Round(n, 9)).ToArray(), (a, b) => Math.Abs(a - b) < 1e-6);
        Assert.All(plan.Sizes, s => Assert.All(s.Worn, f => Assert.True(f.Holds)));
    }

    [Fact]
    public void Leg_openings_longer_than_the_sides_are_refused() =>
        Assert.Contains(
            Of("pet-tabard").With(g => g with { Shape = (PetTabard)g.Shape with { LegOpening = Cm(34) } }).Tried().Reasons, r => r.Place == "garment.legOpening");
}
