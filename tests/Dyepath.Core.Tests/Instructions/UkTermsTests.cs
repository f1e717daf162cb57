using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Instructions;
using Dyepath.Core.Tests.Garments;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>One usage at a time: UK text holds no US word, US text no UK one.</summary>
public partial class UkTermsTests
{
    public static TheoryData<string> Names() => Patterns.Data();

    [Theory]
    [MemberData(nameof(Names))]
    public void Uk_text_has_no_us_word_left(string name)
    {
        var plan = Patterns.Named(name).Planned();
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Terms = Terms.Uk });
        Assert.DoesNotMatch(UsOnly(), text);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Us_text_has_no_uk_word_and_says_hand_tension_by_other_words(string name)
    {
        var plan = Patterns.Named(name).Planned();
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Terms = Terms.Us });
        Assert.DoesNotMatch(UkOnly(), text);
    }

    [Fact]
    public void Every_edging_is_said_in_uk_terms()
    {
        foreach (var edging in EdgingLibrary.All)
        {
            Phrase[] phrases = [edging.Name, .. edging.Steps.Concat(edging.Finishing).Select(s => s.Text), .. edging.Special];
            var said = new Booklet("T", "D", ["M"], Patterns.Named("blanket").Edition, [new Section("edgings", Phrase.Plain("Edgings"), [new Bullets([.. phrases])])]);
            Assert.DoesNotMatch(UsOnly(), TextBooklet.Write(said, Patterns.Named("blanket").Edition with { Terms = Terms.Uk }));
            Assert.DoesNotMatch(UkOnly(), TextBooklet.Write(said, Patterns.Named("blanket").Edition with { Terms = Terms.Us }));
            if (!edging.AllowedAt(EdgingPlace.Border, children: true))
                continue;
            var plan = Patterns.Named("blanket").With(g => g with { Edgings = [new(EdgingPlace.Border, edging.Id, null)] }).Planned();
            var booklet = PatternWriter.Write(plan);
            Assert.DoesNotMatch(UsOnly(), TextBooklet.Write(booklet, plan.Project.Edition with { Terms = Terms.Uk }));
            Assert.DoesNotMatch(UkOnly(), TextBooklet.Write(booklet, plan.Project.Edition with { Terms = Terms.Us }));
        }
    }

    [GeneratedRegex(@"\b([Ss]c|[Hh]dc|[Ss]l st|[Ss]kip(ped)?|[Gg]auge|[Ss]ingle crochet|[Hh]alf double|US terms|[Yy]o|[Yy]arn over)\b")]
    private static partial Regex UsOnly();

    [GeneratedRegex(@"\b([Hh]?tr|[Ss]s|[Mm]iss(ed)?|[Tt]ension|[Tt]reble|UK terms|[Yy]rh)\b")]
    private static partial Regex UkOnly();
}
