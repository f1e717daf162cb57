using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Tests.Instructions;

public class WordingTests
{
    private static readonly Edition Metric = new(Terms.Us, Units.Centimetres, Hand.Right);

    [Fact]
    public void A_size_list_puts_the_smallest_size_outside_the_parentheses() =>
        Assert.Equal("57 (61, 65) sts", Say(Phrase.Of($"{Counts(57, 61, 65)} sts")));

    [Fact]
    public void A_number_that_is_the_same_for_all_sizes_is_said_once() =>
        Assert.Equal("57 sts", Say(Phrase.Of($"{Counts(57, 57, 57)} sts")));

    [Fact]
    public void Lengths_that_round_alike_are_said_once_too() =>
        Assert.Equal("12 cm", Say(Phrase.Of($"{Lengths(12.01, 11.99, 12.1)}")));

    [Fact]
    public void A_one_size_edition_has_no_parentheses() =>
        Assert.Equal("61 sts", Say(Phrase.Of($"{Counts(57, 61, 65)} sts"), Metric with { Size = "M" }));

    [Fact]
    public void As_many_values_as_sizes_are_needed() =>
        Assert.Throws<ArgumentException>(() => Say(Phrase.Of($"{Counts(57, 61)}")));

    [Fact]
    public void An_unknown_size_is_named() =>
        Assert.Contains(
            "XXL", Assert.Throws<ArgumentException>(() => Say(Phrase.Empty, Metric with { Size = "XXL" })).Message,
            StringComparison.Ordinal);

    /// <summary>Pairs of inches and centimetres printed in published leaflets; each rounds to the nearest half centimetre.</summary>
    [Theory]
    [InlineData(20.5, "52")]
    [InlineData(36, "91.5")]
    [InlineData(40, "101.5")]
    [InlineData(7.5, "19")]
    [InlineData(9, "23")]
    [InlineData(12, "30.5")]
    public void Centimetres_round_as_printed_leaflets_do(double inches, string centimetres) =>
        Assert.Equal(centimetres + " cm", Say(Phrase.Of($"{Length.FromInches(inches)}")));

    [Theory]
    [InlineData(52, "20½ in")]
    [InlineData(30, "11¾ in")]
    [InlineData(10, "4 in")]
    [InlineData(1.9, "¾ in")]
    [InlineData(1.6, "⅝ in")]
    public void Inches_are_said_in_quarters_and_small_ones_in_eighths(double centimetres, string inches) =>
        Assert.Equal(inches, Say(Phrase.Of($"{Length.FromCentimetres(centimetres)}"), Metric with { Units = Units.Inches }));

    [Fact]
    public void Both_units_are_rounded_from_the_exact_length() =>
        Assert.Equal(
            "52 (56, 60.5) cm / 20½ (22, 23¾) in",
            Say(Phrase.Of($"{Lengths(52, 55.9, 60.3)}"), Metric with { Units = Units.CentimetresThenInches }));

    [Fact]
    public void Yarn_is_rounded_up_so_that_nobody_runs_out() =>
        Assert.Equal("101 m", Say(new Phrase([new YarnLength(new([Length.FromMetres(100.01)]))])));

    /// <summary>The whole table at once: carried on term by term, sc → dc → tr would come out wrong.</summary>
    [Fact]
    public void Terms_are_translated_all_at_once()
    {
        var phrase = Phrase.Of(
            $"{new Term("Sc")} in first {new Term("sc")}, {new Term("dc")} in next {new Term("dc")}, {new Term("skip")} 1; "
                + $"{new Term("gauge")}");
        Assert.Equal("Sc in first sc, dc in next dc, skip 1; gauge", Say(phrase));
        Assert.Equal("Dc in first dc, tr in next tr, miss 1; tension", Say(phrase, Metric with { Terms = Terms.Uk }));
    }

    /// <summary>US and UK names of the basic stitches, as several conversion pages give them.</summary>
    [Theory]
    [InlineData("sl st", "ss")]
    [InlineData("sc", "dc")]
    [InlineData("hdc", "htr")]
    [InlineData("dc", "tr")]
    [InlineData("tr", "dtr")]
    [InlineData("dtr", "trtr")]
    [InlineData("single crochet", "double crochet")]
    [InlineData("double crochet", "treble")]
    [InlineData("ch", "ch")]
    public void Uk_usage_follows_the_published_table(string us, string uk)
    {
        Assert.Equal(uk, TradeTerms.Say(us, Terms.Uk));
        Assert.Equal(us, TradeTerms.Say(us, Terms.Us));
    }

    [Fact]
    public void Left_and_right_change_places_for_left_handed_makers()
    {
        var phrase = Phrase.Of($"the {new Side(Right: true)} edge");
        Assert.Equal("the right edge", Say(phrase));
        Assert.Equal("the left edge", Say(phrase, Metric with { Hand = Hand.Left }));
    }

    [Fact]
    public void Strong_words_are_a_span_of_their_own() =>
        Assert.Equal(
            [new TextSpan("a ", false), new TextSpan("b", true), new TextSpan(" c", false)],
            new Wording(Booklet(), Metric).Say(Phrase.Of($"a {new Strong(Phrase.Plain("b"))} c")));

    private static string Say(Phrase phrase, Edition? edition = null) => new Wording(Booklet(), edition ?? Metric).Text(phrase);

    private static Booklet Booklet() => new("T", "D", ["S", "M", "L"], Metric, []);

    private static PerSize<int> Counts(params ImmutableArray<int> values) => new(values);

    private static PerSize<Length> Lengths(params double[] centimetres) => new([.. centimetres.Select(Length.FromCentimetres)]);

    /// <summary>What is hardly off is not said to be off by nothing; 2.54 cm are an inch (international yard and pound, 1959).</summary>
    [Theory]
    [InlineData(3.64, "3.6 cm", "1⅜ in")]
    [InlineData(0.1, "0.1 cm", "0.04 in")]
    [InlineData(0.2, "0.2 cm", "⅛ in")]
    [InlineData(0, "0.0 cm", "0 in")]
    public void How_far_something_is_off_is_said_finely(double centimetres, string metric, string imperial)
    {
        var off = Length.FromCentimetres(centimetres);
        Assert.Equal((metric, imperial), (Wording.Fine(off, Units.Centimetres), Wording.Fine(off, Units.Inches)));
    }
}
