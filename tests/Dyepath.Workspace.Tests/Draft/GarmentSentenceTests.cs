using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Tests.Fabric;

namespace Dyepath.Workspace.Tests.Draft;

/// <summary>The picture in words: what it is, how large, in which size, its colours, its motif and its first pooled piece.</summary>
public sealed class GarmentSentenceTests
{
    [Fact]
    public void A_garment_says_what_a_sighted_person_sees()
    {
        var plan = Demo.Plan();
        var size = plan.Sizes[2];
        var words = GarmentSentence.Of(plan, size);
        var front = size[PieceId.Front];
        Assert.StartsWith($"A boxy tunic, {GarmentSentence.Measures(plan, size)}, size M. Deep water, shallows, foam, wet sand, kelp make ", words, StringComparison.Ordinal);
        Assert.EndsWith($"; {front.Stitches} stitches by {front.Rows} rows in the front.", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Measures_are_joined_as_they_are_spoken()
    {
        var plan = Demo.Plan(d => d.Set("edition.units", "cm"));
        var words = GarmentSentence.Measures(plan, plan.Sizes[0]);
        var parts = words.Split(" and ");
        Assert.Equal(2, parts.Length);
        Assert.Matches("^[0-9.]+ cm round$", parts[0]);
        Assert.Matches("^[0-9.]+ cm long", parts[1]);
    }

    /// <summary>What covers most of a piece is told as the piece's own; what shows beside it, as of parts of it.</summary>
    [Fact]
    public void A_motif_is_told_of_the_piece_and_a_second_one_of_parts_of_it()
    {
        var plan = Demo.Plan(d =>
        {
            d.Set("garment.direction", "sideways");
            d.Set("garment.neck", "round");
            d.Set("garment.neckWidth", null);
            d.Set("garment.neckStep", null);
        });
        foreach (var size in plan.Sizes)
        {
            var words = GarmentSentence.Of(plan, size);
            var kinds = size.Pieces.Where(p => p.Pooled).SelectMany(p => PieceMotif.Seen(plan, p).Where(s => s.Share >= 0.1)
                .Select((s, i) => (s.Kind, First: i == 0, p.Name))).ToArray();
            Assert.All(kinds, k => Assert.Contains(MotifWords.Of(k.Kind), words, StringComparison.Ordinal));
            var several = kinds.Select(k => k.Kind).Distinct().Count() > 1;
            if (several)
            {
                Assert.All(kinds, k => Assert.Matches(
                    $@"\([^)]*{(k.First ? $@"(?<!of the ){k.Name}" : $"parts of the {k.Name}")}[^)]*\)", words));
            }
            Assert.Equal(several && kinds.Any(k => !k.First), words.Contains("parts of the", StringComparison.Ordinal));
        }
    }
}
