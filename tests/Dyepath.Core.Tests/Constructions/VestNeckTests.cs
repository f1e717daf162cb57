using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Sizing;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>A vest has every neck but the one whose shoulder is buttoned.</summary>
public sealed class VestNeckTests
{
    public static TheoryData<NeckForm, string, bool, Direction> Ways => new()
    {
        { NeckForm.Slit, "sc", true, Direction.Up },
        { NeckForm.Boat, "hdc", true, Direction.Sideways },
        { NeckForm.Square, "dc", true, Direction.Sideways },
        { NeckForm.Round, "sc", true, Direction.Up },
        { NeckForm.Round, "sc", false, Direction.Sideways },
        { NeckForm.V, "sc", true, Direction.Up },
        { NeckForm.V, "hdc", true, Direction.Sideways },
    };

    [Theory]
    [MemberData(nameof(Ways))]
    public void Plan_and_words_agree_and_it_can_be_worn(NeckForm form, string stitch, bool even, Direction direction)
    {
        var project = Begun("vest", stitch, even, direction).With(g => g with
        {
            Shape = ((Vest)g.Shape) with { Neck = new Neck(form, null) },
            Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true },
        });
        var plan = GarmentTrials.Check(GarmentTrials.Edged(project, direction, EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Armholes));
        Assert.All(plan.Sizes, s => Assert.All(s.Worn, fit => Assert.True(fit.Holds, $"{s.Name}: {fit}")));
    }

    /// <summary>The page offers what the document takes, form by form.</summary>
    [Theory]
    [InlineData("vest", "square")]
    [InlineData("pullover", "slit")]
    [InlineData("cardigan", "slit")]
    public void Every_form_that_is_offered_is_read(string garment, string usual)
    {
        var kind = Repertoire.All.First(k => k.Name == garment);
        var form = kind.Fields.Single(f => f.Name == "neck");
        Assert.Equal(usual, form.Usual);
        Assert.All(form.Choices, c => Assert.Empty(GarmentTrials.Faults($"\"shape\": \"{garment}\", \"neck\": \"{c.Name}\"")));
        Assert.Equal(garment == "pullover", form.Choices.Any(c => c.Name == "buttoned"));
    }

    /// <summary>A depth is asked for where something is cut, and what holds otherwise is said in centimetres.</summary>
    [Theory]
    [InlineData("neckDepth", "slit", null)]
    [InlineData("neckDepth", "square", "12 cm")]
    [InlineData("neckDepth", "round", "10 cm")]
    [InlineData("neckDepth", "v", "20 cm")]
    [InlineData("backNeckDepth", "boat", null)]
    [InlineData("backNeckDepth", "v", null)]
    [InlineData("backNeckDepth", "round", "2.5 cm")]
    [InlineData("letOff", "slit", null)]
    [InlineData("letOff", "v", "3 cm")]
    [InlineData("neckWidth", "slit", "26 cm, or by the head")]
    [InlineData("neckWidth", "round", "20 cm")]
    public void Only_what_the_form_has_is_asked_for(string field, string form, string? usual)
    {
        var by = Repertoire.All.First(k => k.Name == "pullover").Fields.Single(f => f.Name == field).By!;
        Assert.Equal("neck", by.Field);
        Assert.Equal(usual, by.Usual.GetValueOrDefault(form));
    }
}
