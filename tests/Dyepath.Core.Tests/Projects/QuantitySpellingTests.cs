using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Constructions;
using Dyepath.Core.Documents;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Projects;

public sealed class QuantitySpellingTests
{
    [Theory]
    [InlineData("41 cm", 41)]
    [InlineData("41cm", 41)]
    [InlineData("41.25 cm", 41.25)]
    [InlineData("410 mm", 41)]
    [InlineData("0.41 m", 41)]
    [InlineData("16.5 in", 41.91)]
    [InlineData("16½ in", 41.91)]
    [InlineData("16 ½ in", 41.91)]
    [InlineData("½ in", 1.27)]
    [InlineData("1⅛ in", 2.8575)]
    [InlineData("2⅞in", 7.3025)]
    [InlineData("1 yd", 91.44)]
    public void Lengths_may_be_spelt_in_these_ways(string text, double centimetres) =>
        Assert.Equal(centimetres, NeckWidth(text)!.Value);

    [Theory]
    [InlineData("41")]
    [InlineData("41 CM")]
    [InlineData("41,5 cm")]
    [InlineData(".5 cm")]
    [InlineData("5. cm")]
    [InlineData("1/2 in")]
    [InlineData("½ cm")]
    [InlineData("16.5½ in")]
    [InlineData("1e2 cm")]
    [InlineData("+41 cm")]
    [InlineData(" 41 cm")]
    [InlineData("41 cm ")]
    [InlineData("41 cm\n")]
    [InlineData("41  cm")]
    [InlineData("٤١ cm")]
    [InlineData("41 g")]
    [InlineData("NaN cm")]
    [InlineData("9999999 cm")]
    public void Other_spellings_are_faults_of_form(string text)
    {
        var json = Tunic(text);
        Assert.Equal(FaultKind.Form, Assert.Single(Read(json).Faults).Kind);
        // In the schema's own grammar (ECMA-262) $ is the very end; the library's engine lets one line break follow.
        Assert.Equal(text.EndsWith('\n'), DocumentSchema.Allows(json));
    }

    [Theory]
    [InlineData("-41 cm")]
    [InlineData("0 cm")]
    [InlineData("0.49999999 cm")]
    [InlineData("1000.0000001 cm")]
    [InlineData("999999 m")]
    public void Lengths_out_of_range_are_faults_of_meaning(string text)
    {
        Assert.Equal(FaultKind.Meaning, Assert.Single(Read(Tunic(text)).Faults).Kind);
        Assert.True(DocumentSchema.Allows(Tunic(text)));
    }

    [Theory]
    [InlineData("41 cm", "41 cm")]
    [InlineData("16½ in", "16.5 in")]
    [InlineData("25.4 cm", "25.4 cm")]
    [InlineData("⅛ in", null)]
    [InlineData("410.5 mm", "41.05 cm")]
    [InlineData("8.7654321 cm", "8.7654321 cm")]
    [InlineData("1 yd", "36 in")]
    [InlineData("1000 cm", "1000 cm")]
    public void Lengths_are_written_short_and_exact(string text, string? written)
    {
        var json = Tunic(text);
        if (written is null)
            Assert.False(Read(json).IsGood);
        else
            Assert.Equal(written, (string?)JsonNode.Parse(ProjectWriter.Write(Read(json).Project!))!["garment"]!["neckWidth"]);
    }

    [Theory]
    [InlineData("4 cm²", 4)]
    [InlineData("4 cm2", 4)]
    [InlineData("12.5cm2", 12.5)]
    [InlineData("10 cm2", 10)]
    public void The_digit_of_an_area_is_its_units(string text, double squareCentimetres)
    {
        var json = JsonNode.Parse(DemoProject.Utf8)!;
        json["garment"]!["grading"] = new JsonObject { ["clarity"] = text };
        Assert.Equal(squareCentimetres, Read(json.ToJsonString()).Project!.Garment.Grading.ClarityWeight);
    }

    [Theory]
    [InlineData("−5 cm", -5)]
    [InlineData("-2 in", -5.08)]
    [InlineData("-½ in", -1.27)]
    [InlineData("0 cm", 0)]
    public void Ease_may_be_negative(string text, double centimetres)
    {
        var json = JsonNode.Parse(DemoProject.Utf8)!;
        json["garment"]!["ease"] = text;
        var top = (BoxyTop)Read(json.ToJsonString()).Project!.Garment.Shape;
        Assert.Equal(centimetres, top.BustEase.Own!.Value.Centimetres);
    }

    [Theory]
    [InlineData("3.5 oz", "3.5 oz")]
    [InlineData("100 g", "100 g")]
    [InlineData("0.1 kg", "100 g")]
    public void Masses_keep_their_ounces(string text, string written)
    {
        var json = JsonNode.Parse(DemoProject.Utf8)!;
        json["yarn"]!["ball"]!["mass"] = text;
        Assert.Equal(written, (string?)Written(json)["yarn"]!["ball"]!["mass"]);
    }

    [Theory]
    [InlineData("230 yd", "230 yd")]
    [InlineData("210 m", "210 m")]
    [InlineData("210.5 m", "210.5 m")]
    public void Balls_keep_their_yards(string text, string written)
    {
        var json = JsonNode.Parse(DemoProject.Utf8)!;
        json["yarn"]!["ball"]!["length"] = text;
        Assert.Equal(written, (string?)Written(json)["yarn"]!["ball"]!["length"]);
    }

    private static JsonNode Written(JsonNode document) => JsonNode.Parse(ProjectWriter.Write(Read(document.ToJsonString()).Project!))!;

    private static string Tunic(string neckWidth)
    {
        var json = JsonNode.Parse(DemoProject.Utf8)!;
        json["garment"]!["neckWidth"] = neckWidth;
        return json.ToJsonString();
    }

    private static double? NeckWidth(string text) =>
        (Read(Tunic(text)).Project?.Garment.Shape as BoxyTop)?.Neck.Width!.Value.Centimetres;

    private static ProjectReading Read(string json) => ProjectReader.Read(Encoding.UTF8.GetBytes(json));
}
