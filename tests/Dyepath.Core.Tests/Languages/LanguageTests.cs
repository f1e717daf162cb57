using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Tests.Languages;

/// <summary>What holds the catalogues (docs/languages.md).</summary>
public sealed partial class LanguageTests
{
    private static readonly Lazy<Plan[]> Plans = new(() => [.. SaidPhrases.Plans(Extent.Of(20, 200)).Where((_, i) => Extent.IsWhole || i % 5 == 0)]);

    public static TheoryData<Language> Languages => [.. Enum.GetValues<Language>().Where(l => l != Language.English)];

    /// <summary>Of booklets, and of the work beside the hook.</summary>
    [Theory]
    [MemberData(nameof(Languages))]
    public void Every_sentence_has_an_entry(Language language)
    {
        var missing = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var plan in Plans.Value)
        {
            SaidPhrases.Say(
                plan, (say, phrase) => say.Text(phrase),
                (sizes, edition) => new Wording(sizes, edition with { Language = language }, key => missing.Add(key)));
        }
        Assert.True(missing.Count == 0, $"{missing.Count} have none:\n{string.Join('\n', missing)}");
    }

    /// <summary>
    /// What the code can say, whether or not one of the patterns does: every phrase that is written out in it, and every name of a piece,
    /// edge, opening, seam, motif and edging, every rule of safety.
    /// </summary>
    [Theory]
    [MemberData(nameof(Languages))]
    public void What_only_rare_designs_say_has_an_entry_too(Language language)
    {
        var keys = Catalogue.Of(language)!.Keys.Select(key => Kind().Replace(key, Hole)).ToHashSet(StringComparer.Ordinal);
        var missing = SourcePhrases.WrittenOut().Concat(SourcePhrases.Names())
            .Select(said => Figure().Replace(said, Hole).Trim())
            .Where(said => said.Replace(Hole, "", StringComparison.Ordinal).Any(char.IsLetter))
            .Where(said => !keys.Contains(said) && !keys.Contains(char.ToLowerInvariant(said[0]) + said[1..]));
        string[] all = [.. missing.Distinct().Order(StringComparer.Ordinal).Select(said => said.Replace(Hole, "{}", StringComparison.Ordinal))];
        Assert.True(all.Length == 0, $"{all.Length} have none:\n{string.Join('\n', all)}");
    }

    /// <summary>A number, colour or name that a sentence has is in what is said of it, once; a form asks for nothing that is not there.</summary>
    [Theory]
    [MemberData(nameof(Languages))]
    public void What_is_said_has_every_number_colour_and_name(Language language)
    {
        var wrong = new List<string>();
        foreach (var (key, said) in Catalogue.Of(language)!.Entries)
        {
            var kinds = Kind().Matches(key).Select(m => m.Groups["kind"].Value).ToArray();
            var used = Slot().Matches(said).Select(m => int.Parse(m.Groups["n"].Value, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
            for (var slot = 1; slot <= kinds.Length; slot++)
            {
                var times = used.Count(n => n == slot);
                if (times > 1 || (times == 0 && kinds[slot - 1] != "term"))
                    wrong.Add($"slot {slot} of “{key}” stands {times} times in “{said}”");
            }
        }
        Assert.Empty(wrong);
    }

    /// <summary>Both catalogues have the same entries: what one says, the other does.</summary>
    [Theory]
    [MemberData(nameof(Languages))]
    public void No_catalogue_has_an_entry_that_another_lacks(Language language)
    {
        var keys = Small(Catalogue.Of(language)!);
        foreach (var other in Enum.GetValues<Language>().Where(l => l != Language.English && l != language))
            Assert.Empty(keys.Except(Small(Catalogue.Of(other)!)).Order(StringComparer.Ordinal));

        static HashSet<string> Small(Catalogue catalogue) => [.. catalogue.Keys.Select(k => char.ToLowerInvariant(k[0]) + k[1..])];
    }

    /// <summary>Numbers are English's, but for the sign before the fraction, and for one before a single stitch.</summary>
    [Theory]
    [MemberData(nameof(Languages))]
    public void Numbers_are_those_of_the_English_text(Language language)
    {
        foreach (var plan in Plans.Value.Where((_, i) => i % 7 == 0))
        {
            var booklet = PatternWriter.Write(plan);
            foreach (var size in new[] { null, plan.Sizes[0].Name })
            {
                var edition = plan.Project.Edition with { Size = size };
                var (english, other) = (TextBooklet.Write(booklet, edition), TextBooklet.Write(booklet, edition with { Language = language }));
                Assert.True(Apart(english, other).Length == 0, $"{plan.Project.Title} lacks {string.Join(' ', Apart(english, other))}");
                Assert.True(Apart(other, english).All(n => n == "1"), $"{plan.Project.Title} has {string.Join(' ', Apart(other, english))} besides");
            }
        }

        static string[] Apart(string one, string other)
        {
            var left = Numbers(other).ToList();
            return [.. Numbers(one).Where(n => !left.Remove(n))];
        }

        // A sentence may name them in another order, and says "1 fM" where English says "sc".
        static string[] Numbers(string text) => [.. Number().Matches(text.Replace(',', '.')).Select(m => m.Value.TrimEnd('.')).Order(StringComparer.Ordinal)];
    }

    [Fact]
    public void A_form_that_is_asked_for_is_said_and_one_that_is_lacking_is_the_main_one()
    {
        var catalogue = Catalogue.Read(
            Language.German, "hem\n= Saum\n@dem = dem Saum\n\nneck\n= Hals\n\nSew {text} to row {n}.\n= An {1@dem}, Reihe {2}, nähen.\n\nright\n= rechts\n\nleft\n= links\n\nto the {side}\n= nach {1}");
        Assert.Equal("An dem Saum, Reihe 3, nähen.", Said(Phrase.Of($"Sew {"hem"} to row {3}.")));
        Assert.Equal("An Hals, Reihe 3, nähen.", Said(Phrase.Of($"Sew {"neck"} to row {3}.")));
        Assert.Equal("An Saumlinie, Reihe 3, nähen.", Said(Phrase.Of($"Sew {Phrase.Named("Saumlinie")} to row {3}.")));
        Assert.Equal("nach links", new Wording([], new Edition(Terms.Us, Units.Centimetres, Hand.Left), null, catalogue).Text(Phrase.Of($"to the {new Side(true)}")));

        string Said(Phrase phrase) => new Wording([], new Edition(Terms.Us, Units.Centimetres, Hand.Right), null, catalogue).Text(phrase);
    }

    [Theory]
    [InlineData("hem", "Saum", "neither")]
    [InlineData("hem", "= Saum\n= Rand", "second time")]
    [InlineData("hem", "@dem = dem Saum", "before")]
    [InlineData("row {n}", "= Reihe {2}", "slot")]
    public void A_catalogue_that_cannot_be_read_says_where(string key, string said, string why)
    {
        var fault = Assert.Throws<FormatException>(() => Catalogue.Read(Language.German, $"# German\n\n{key}\n{said}\n"));
        Assert.Contains(why, fault.Message, StringComparison.Ordinal);
        Assert.Contains(key, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Fractions_and_lists_are_parted_as_the_language_does()
    {
        var catalogue = Catalogue.Read(Language.German, "about {amount}\n= etwa {1}");
        var wording = new Wording(["S", "M"], new Edition(Terms.Us, Units.Centimetres, Hand.Right), null, catalogue);
        var lengths = new PerSize<Quantities.Length>([Quantities.Length.FromCentimetres(12.5), Quantities.Length.FromCentimetres(14)]);
        Assert.Equal("etwa 12,5 (14) cm", wording.Text(Phrase.Of($"about {lengths}")));
        Assert.Equal("3,5", wording.Text(Phrase.Plain("3.5")));
    }

    [GeneratedRegex(@"\{(?<kind>n|amount|unit|term|side|colour|name|text)\}")]
    private static partial Regex Kind();

    [GeneratedRegex(@"\{(?<n>[0-9]+)(?:@[a-z]+)?\}")]
    private static partial Regex Slot();

    /// <summary>Where a slot is, of whatever kind.</summary>
    internal const string Hole = "\u0000";

    [GeneratedRegex("[0-9]+(?:[.][0-9]+)?")]
    private static partial Regex Figure();

    [GeneratedRegex("[0-9][0-9.]*")]
    private static partial Regex Number();
}
