using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;

namespace Dyepath.Drawing.Tests;

public sealed class SvgSnapshotTests
{
    private static readonly Edition LeftHanded = SampleBooklet.Everyone with { Hand = Hand.Left };

    [Fact]
    public void Turned_chart_for_right_handed_makers() => Same("turned-right", SampleBooklet.Turned(12, 5), SampleBooklet.Everyone);

    [Fact]
    public void Turned_chart_for_left_handed_makers() => Same("turned-left", SampleBooklet.Turned(12, 5), LeftHanded);

    [Fact]
    public void Rounds() => Same("rounds", SampleBooklet.Turned(11, 4, Working.Rounds), SampleBooklet.Everyone);

    [Fact]
    public void Linen_rows_stand_half_a_unit_over() => Same("linen", Linen(), SampleBooklet.Everyone);

    [Fact]
    public void Schematic() => Same("schematic", SampleBooklet.Schematic, SampleBooklet.Everyone);

    [Fact]
    public void Crowded_schematic() => Same("crowded", SchematicTests.Crowded(), SampleBooklet.Everyone);

    [Fact]
    public void Yarn_ruler() => Same("ruler", new YarnRuler(SampleBooklet.Key, [5, 4.2, 6, 0.6]), SampleBooklet.Everyone);

    [Fact]
    public void Symbol_chart() => Same("symbols", SampleBooklet.Edging, SampleBooklet.Everyone);

    internal static ColourChart Linen() => SampleBooklet.Turned(6, 4) with
    {
        Cells = SampleBooklet.Turned(6, 4).Cells[..22],
        RowUnits = [6, 5, 6, 5],
        RowOffsets = [0, 1, 0, 1],
        UnitWidth = Length.FromCentimetres(1.4),
    };

    private static void Same(string name, Picture picture, Edition edition)
    {
        var svg = SvgDrawing.Write(
            picture, name, "A small picture for comparison.", edition, SampleBooklet.Saying(SampleBooklet.Booklet, edition));
        var received = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "received")).FullName;
        File.WriteAllText(Path.Combine(received, name + ".svg"), svg + "\n");
        var approved = Path.Combine(AppContext.BaseDirectory, "Snapshots", name + ".svg");
        Assert.True(File.Exists(approved), $"No snapshot {name}.svg; see Snapshots/README.md.");
        Assert.Equal(File.ReadAllText(approved).TrimEnd(), svg);
    }
}
