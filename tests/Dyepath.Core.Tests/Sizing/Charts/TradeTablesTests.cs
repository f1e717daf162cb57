using System.Globalization;
using CsCheck;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Data;

namespace Dyepath.Core.Tests.Sizing.Charts;

public sealed class TradeTablesTests
{
    [Fact]
    public void Ease_is_as_both_revisions_print_it()
    {
        // Craft Yarn Council: older text from memory, newer from an excerpt (ease.csv).
        var rows = PublishedTable.Read("ease");
        Assert.Equal(rows.Count, PublishedEase.All.Length);
        foreach (var (row, range) in rows.Zip(PublishedEase.All))
        {
            Assert.Equal(row["revision"], range.Revision.ToString(), ignoreCase: true);
            Assert.StartsWith(row["category"].Replace('_', ' '), range.Name, StringComparison.Ordinal);
            Assert.Equal(row["ease_cm_min"], Text(range.InCentimetres.Least?.Centimetres));
            Assert.Equal(row["ease_cm_max"], Text(range.InCentimetres.Most?.Centimetres));
            Assert.Equal(row["ease_in_min"], Text(range.InInches.Least?.Inches));
            Assert.Equal(row["ease_in_max"], Text(range.InInches.Most?.Inches));
        }
    }

    [Theory]
    [InlineData(EaseRevision.Older, EaseCategory.VeryClose, 0)]
    [InlineData(EaseRevision.Older, EaseCategory.Close, 3.75)]
    [InlineData(EaseRevision.Newer, EaseCategory.Close, 0)]
    [InlineData(EaseRevision.Newer, EaseCategory.VeryClose, -7.5)]
    [InlineData(EaseRevision.Newer, EaseCategory.Classic, 7.5)]
    [InlineData(EaseRevision.Newer, EaseCategory.Oversized, 15)]
    public void A_category_alone_gives_a_typical_ease(EaseRevision revision, EaseCategory category, double centimetres) =>
        Assert.Equal(centimetres, PublishedEase.Find(revision, category).Typical.Centimetres, 1e-9);

    [Theory]
    [InlineData(EaseRevision.Newer, -12, EaseCategory.VeryClose)]
    [InlineData(EaseRevision.Newer, -2.5, EaseCategory.Close)]
    [InlineData(EaseRevision.Newer, -2.6, EaseCategory.VeryClose)]
    [InlineData(EaseRevision.Newer, 2.4, EaseCategory.Close)]
    [InlineData(EaseRevision.Newer, 2.5, EaseCategory.Classic)]
    [InlineData(EaseRevision.Newer, 10, EaseCategory.Loose)]
    [InlineData(EaseRevision.Newer, 40, EaseCategory.Oversized)]
    [InlineData(EaseRevision.Older, -12, EaseCategory.VeryClose)]
    [InlineData(EaseRevision.Older, 2.5, EaseCategory.Close)]
    [InlineData(EaseRevision.Older, 5, EaseCategory.Classic)]
    public void Any_ease_falls_into_one_category(EaseRevision revision, double centimetres, EaseCategory category) =>
        Assert.Equal(category, PublishedEase.Classify(revision, Length.FromCentimetres(centimetres)).Category);

    [Fact]
    public void More_ease_is_never_a_closer_category() =>
        Gen.Select(Gen.Int[-300, 300], Gen.Int[0, 100], Gen.Int[0, 1]).Holds(drawn =>
        {
            var revision = (EaseRevision)drawn.Item3;
            return PublishedEase.Classify(revision, Length.FromMillimetres(drawn.Item1)).Category
                <= PublishedEase.Classify(revision, Length.FromMillimetres(drawn.Item1 + drawn.Item2)).Category;
        }, seed: 41, cases: 1_000);

    [Fact]
    public void Hooks_are_as_the_tables_print_them()
    {
        // hooks.csv and hooks_steel.csv: from memory, partly confirmed.
        foreach (var (row, hook) in PublishedTable.Read("hooks").Zip(HookSizes.All, Pair))
            Assert.Equal((row.Number("mm"), row["us"], row["uk_old_number"]), (hook.Diameter.Millimetres, hook.Us, hook.OldUk));
        foreach (var (row, hook) in PublishedTable.Read("hooks_steel").Zip(HookSizes.Steel, Pair))
            Assert.Equal((row.Number("mm"), row["us_steel"]), (hook.Diameter.Millimetres, hook.Us));
        Assert.Equal((30, 16), (HookSizes.All.Length, HookSizes.Steel.Length));
        Assert.Equal(HookSizes.All.OrderBy(hook => hook.Diameter), HookSizes.All);
        Assert.Equal(HookSizes.Steel.OrderByDescending(hook => hook.Diameter), HookSizes.Steel);

        static (PublishedRow Row, T Hook) Pair<T>(PublishedRow row, T hook) => (row, hook);
    }

    [Theory]
    [InlineData(5.0, 5.0)]
    [InlineData(4.9, 5.0)]
    [InlineData(7.5, 8.0)]
    [InlineData(0.1, 2.0)]
    [InlineData(99, 30)]
    public void The_nearest_hook_is_found_and_of_two_the_thicker(double millimetres, double expected) =>
        Assert.Equal(expected, HookSizes.Nearest(Length.FromMillimetres(millimetres)).Diameter.Millimetres);

    [Fact]
    public void Yarn_weights_are_as_the_table_prints_them()
    {
        // Craft Yarn Council yarn weight system as pages quote it (yarn_weights.csv), grist from yarn_grist.csv.
        var rows = PublishedTable.Read("yarn_weights");
        var grist = PublishedTable.Read("yarn_grist").ToDictionary(row => row["category"]);
        foreach (var revision in Enum.GetValues<YarnWeightRevision>())
        {
            foreach (var (row, weight) in rows.Zip(YarnWeights.All(revision)))
            {
                var stitches = Text(weight.CrochetStitches.Least, weight.CrochetStitches.Most);
                var hook = Text(weight.Hook.Least?.Millimetres, weight.Hook.Most?.Millimetres);
                Assert.Equal((row["category"], row["name"]), (Text(weight.Category), weight.Name));
                Assert.Equal(row["knit_sts_per_4in"], Text(weight.KnitStitches.Least, weight.KnitStitches.Most));
                Assert.Equal(row["needle_mm"], Text(weight.Needle.Least?.Millimetres, weight.Needle.Most?.Millimetres));
                switch (weight.Category)
                {
                    case 0:
                        Assert.Equal((row["crochet_sc_per_4in"], row["hook_mm"]), (stitches + " dc", "1.4-1.6 steel or 2.25"));
                        Assert.Equal("1.4-2.25", hook);
                        break;
                    case <= 5:
                        Assert.Equal((row["crochet_sc_per_4in"], row["hook_mm"]), (stitches, hook));
                        break;
                    default:
                        Assert.Contains($"rev {revision} {stitches}", row["crochet_sc_per_4in"], StringComparison.Ordinal);
                        Assert.Contains($"rev {revision} {hook}", row["hook_mm"], StringComparison.Ordinal);
                        break;
                }
                if (weight.MetresPer100Grams is { } metres)
                {
                    var printed = grist[row["category"]];
                    Assert.Equal((printed["m_per_100g_min"], printed["m_per_100g_max"]), (Text(metres.Least), Text(metres.Most)));
                }
            }
        }
        Assert.Equal("double crochet", YarnWeights.All(YarnWeightRevision.A)[0].CrochetStitch);
        Assert.Null(YarnWeights.All(YarnWeightRevision.A)[7].MetresPer100Grams);
    }

    [Theory]
    [InlineData(1000, "0")]
    [InlineData(383, "1 2")]
    [InlineData(200, "3")]
    [InlineData(181.5, "4")]
    [InlineData(20, "6")]
    public void Grist_finds_its_categories(double metres, string categories) => Assert.Equal(
        categories, string.Join(' ', YarnWeights.ByGrist(metres, YarnWeightRevision.B).Select(weight => weight.Category)));

    [Theory]
    [InlineData(13, "3 4")]
    [InlineData(10, "5")]
    [InlineData(6, "7")]
    public void Gauge_finds_every_category_that_allows_it(int stitches, string categories) => Assert.Equal(
        categories, string.Join(' ', YarnWeights.ByGauge(stitches, YarnWeightRevision.B).Select(weight => weight.Category)));

    [Fact]
    public void Grist_outside_any_yarn_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => YarnWeights.ByGrist(0, YarnWeightRevision.A));
        Assert.Throws<ArgumentOutOfRangeException>(() => YarnWeights.ByGrist(double.NaN, YarnWeightRevision.A));
    }

    [Fact]
    public void Care_words_cover_the_standards_list_and_are_found_by_key()
    {
        Assert.Equal(PublishedTable.Read("care_symbols").Count, CareSymbols.All.Length);
        Assert.Equal(CareSymbols.All.Length, CareSymbols.All.DistinctBy(symbol => symbol.Key).Count());
        Assert.True(CareSymbols.TryFind("flatDry", out var flat));
        Assert.Equal("dry flat", flat.Meaning);
        Assert.False(CareSymbols.TryFind("boil", out _));
    }

    [Fact]
    public void Safety_rules_cover_the_regulations_and_reach_the_charts_they_concern()
    {
        Assert.Equal(PublishedTable.Read("safety_rules").Count, SafetyRules.All.Count(rule => rule.Rule is not null));
        Assert.Contains(SafetyRules.Touching(Wearers.Baby, SafetyParts.Top), rule => rule.Limit.Contains("none allowed", StringComparison.Ordinal));
        Assert.Contains(SafetyRules.Touching(Wearers.Child, SafetyParts.Top), rule => rule.Rule == "US 16 CFR 1615");
        Assert.All(SafetyRules.Touching(Wearers.Adult, SafetyParts.Top | SafetyParts.Buttons), rule => Assert.Equal(Wearers.Everyone, rule.For));
        // A child's hat is no sleepwear and has no waist; a rule about buttons is for what has some.
        Assert.DoesNotContain(SafetyRules.Touching(Wearers.Child, SafetyParts.Head), rule => rule.Feature.Contains("sleepwear", StringComparison.Ordinal) || rule.Feature.Contains("waist", StringComparison.Ordinal));
        Assert.Contains(SafetyRules.Touching(Wearers.Child, SafetyParts.Head), rule => rule.Feature.Contains("hood, head and neck", StringComparison.Ordinal));
        Assert.DoesNotContain(SafetyRules.Touching(Wearers.Baby, SafetyParts.Top), rule => rule.Feature.Contains("buttons", StringComparison.Ordinal));
        Assert.Contains(SafetyRules.Touching(Wearers.Baby, SafetyParts.Buttons), rule => rule.Feature.Contains("buttons", StringComparison.Ordinal));
        Assert.All(SizeCharts.All, chart => Assert.NotEmpty(SafetyRules.Touching(chart.Wearer, SafetyParts.None)));
    }

    private static string Text(double? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";

    private static string Text(double? least, double? most) => (least, most) switch
    {
        (null, _) => Text(most) + " and fewer",
        (_, null) => Text(least) + "+",
        _ => $"{Text(least)}-{Text(most)}",
    };
}
