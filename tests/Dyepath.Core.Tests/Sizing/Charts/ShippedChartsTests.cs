using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Data;

namespace Dyepath.Core.Tests.Sizing.Charts;

public sealed class ShippedChartsTests
{
    private static readonly Dictionary<string, BodyMeasure> MeasureOf = new()
    {
        ["bust"] = BodyMeasure.Bust,
        ["chest"] = BodyMeasure.Bust,
        ["chest_bust_girth"] = BodyMeasure.Bust,
        ["waist"] = BodyMeasure.Waist,
        ["hip"] = BodyMeasure.Hip,
        ["cross_back"] = BodyMeasure.CrossBack,
        ["back_waist_length"] = BodyMeasure.BackWaistLength,
        ["back_hip_length"] = BodyMeasure.BackHipLength,
        ["arm_length_to_underarm"] = BodyMeasure.ArmLengthToUnderarm,
        ["upper_arm"] = BodyMeasure.UpperArm,
        ["armhole_depth"] = BodyMeasure.ArmholeDepth,
        ["center_back_neck_to_cuff"] = BodyMeasure.CentreBackNeckToCuff,
        ["head_girth"] = BodyMeasure.Head,
        ["neck_base_girth"] = BodyMeasure.NeckBase,
        ["mid_neck_girth"] = BodyMeasure.MidNeck,
        ["shoulder_girth"] = BodyMeasure.Shoulders,
        ["under_bust_girth"] = BodyMeasure.UnderBust,
        ["upper_chest_girth"] = BodyMeasure.UpperChest,
    };

    [Fact]
    public void Every_row_of_the_craft_yarn_council_tables_is_there_as_printed()
    {
        // Craft Yarn Council standards: from memory, women's bust confirmed by published patterns (body_cyc.csv).
        var rows = PublishedTable.Read("body_cyc");
        Assert.Equal(242, rows.Count);
        foreach (var row in rows)
        {
            var found = Find(row["chart"], row["size"].Replace("mo", " months", StringComparison.Ordinal), MeasureOf[row["measurement"]]);
            Assert.Equal(row.Number("cm_min"), found.InCentimetres.Minimum.Centimetres, 1e-9);
            Assert.Equal(row.Number("cm_max"), found.InCentimetres.Maximum.Centimetres, 1e-9);
            Assert.Equal(row.Number("in_min"), found.InInches.Minimum.Inches, 1e-9);
            Assert.Equal(row.Number("in_max"), found.InInches.Maximum.Inches, 1e-9);
            Assert.Equal(found.InCentimetres, found.Range);
            var confirmed = row["source_label"].Contains("bust rows corroborated", StringComparison.Ordinal);
            Assert.Equal(confirmed ? Provenance.Published : Provenance.FromMemory, found.Source.Provenance);
        }
        string[] ids = ["women", "men", "youth", "child", "baby"];
        Assert.Equal(242, ids.Sum(id => Chart(id).Sizes.Sum(size => size.Measurements.Length)));
    }

    [Fact]
    public void Printed_inches_and_centimetres_agree_within_0_6_cm()
    {
        foreach (var measurement in SizeCharts.All.SelectMany(chart => chart.Sizes).SelectMany(size => size.Measurements))
        {
            var (metric, imperial) = (measurement.InCentimetres, measurement.InInches);
            Assert.InRange((metric.Minimum - imperial.Minimum).Centimetres, -0.6, 0.6);
            Assert.InRange((metric.Maximum - imperial.Maximum).Centimetres, -0.6, 0.6);
        }
    }

    [Fact]
    public void Every_series_rises_or_stands_still() => Assert.All(SizeCharts.All, chart => Assert.Empty(chart.Decreases()));

    [Fact]
    public void Bust_bands_share_no_more_than_an_edge()
    {
        foreach (var chart in SizeCharts.All)
        {
            var bands = chart.Sizes.Select(size => Find(chart.Id, size.Name, BodyMeasure.Bust).Range).ToArray();
            for (var i = 1; i < bands.Length; i++)
                Assert.True(bands[i].Minimum >= bands[i - 1].Maximum, $"{chart.Id}, size {i}");
        }
    }

    [Fact]
    public void Letter_code_bands_are_those_of_the_standard_and_touch()
    {
        // EN 13402-3:2004: letters and men's edges from memory; women's edges 74 to 102 and 107 to 131 confirmed.
        foreach (var population in PublishedTable.Read("body_en13402_3").GroupBy(row => row["population"]))
        {
            var chart = Chart("en13402-3-" + population.Key);
            Assert.Equal(population.Count(), chart.Sizes.Length);
            foreach (var (row, size) in population.Zip(chart.Sizes))
            {
                var band = Find(chart.Id, row["letter"], BodyMeasure.Bust).Range;
                Assert.Equal(row["letter"], size.Name);
                Assert.Equal(row.Number("bust_or_chest_min_cm"), band.Minimum.Centimetres, 1e-9);
                Assert.Equal(row.Number("bust_or_chest_max_cm"), band.Maximum.Centimetres, 1e-9);
            }
            foreach (var (smaller, larger) in chart.Sizes.Zip(chart.Sizes.Skip(1)))
                Assert.Equal(smaller.Measurements[0].Range.Maximum, larger.Measurements[0].Range.Minimum);
        }
    }

    [Fact]
    public void Girths_are_those_of_the_standards_preview()
    {
        // ASTM D5585-11e1, the part its publisher shows (body_astm_d5585_11e1_partial.csv).
        string[] sizes = ["00", "0", "2", "4", "6", "8", "10", "12", "14", "16", "18", "20"];
        foreach (var row in PublishedTable.Read("body_astm_d5585_11e1_partial"))
        {
            var name = row["measurement"];
            string[] figures = name.StartsWith("waist_girth_", StringComparison.Ordinal) ? [name[12..]] : ["straight", "curvy"];
            var measure = figures.Length == 1 ? BodyMeasure.Waist : MeasureOf[name];
            foreach (var figure in figures)
            {
                foreach (var size in sizes)
                    Assert.Equal(row.Number("size_" + size), Find("astm-d5585-" + figure, size, measure).InInches.Minimum.Inches, 1e-9);
            }
        }
        Assert.DoesNotContain(BodyMeasure.UpperArm, Chart("astm-d5585-straight").Measures);
    }

    [Fact]
    public void A_curvy_waist_is_1_5_inches_narrower_in_every_size()
    {
        foreach (var (straight, curvy) in Chart("astm-d5585-straight").Sizes.Zip(Chart("astm-d5585-curvy").Sizes))
        {
            var difference = Find("astm-d5585-straight", straight.Name, BodyMeasure.Waist).InInches.Minimum
                - Find("astm-d5585-curvy", curvy.Name, BodyMeasure.Waist).InInches.Minimum;
            Assert.Equal(1.5, difference.Inches, 1e-9);
        }
    }

    [Fact]
    public void What_a_chart_lacks_is_said_and_never_filled_in()
    {
        Assert.False(Chart("men").HasInEverySize(BodyMeasure.Hip));
        Assert.True(Chart("women").HasInEverySize(BodyMeasure.Hip));
        var size = Chart("men").Sizes[^1];
        Assert.False(size.TryGet(BodyMeasure.Hip, out _, out var reason));
        Assert.StartsWith("Size 2X has no hip in this chart", reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Charts_have_different_ids_and_unknown_ones_are_not_found()
    {
        Assert.Equal(SizeCharts.All.Length, SizeCharts.All.Select(chart => chart.Id).Distinct().Count());
        Assert.False(SizeCharts.TryFind("giants", out _));
        Assert.True(Chart("women").TryFind("3X", out _));
        Assert.False(Chart("women").TryFind("XXXL", out _));
    }

    internal static SizeChart Chart(string id)
    {
        Assert.True(SizeCharts.TryFind(id, out var chart));
        return chart;
    }

    internal static BodyMeasurement Find(string chartId, string sizeName, BodyMeasure measure)
    {
        Assert.True(Chart(chartId).TryFind(sizeName, out var size), $"{chartId} {sizeName}");
        Assert.True(size.TryGet(measure, out var found, out _), $"{chartId} {sizeName} {measure}");
        return found;
    }
}
