using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Projects;

namespace Dyepath.EndToEnd.Tests;

/// <summary>A valid document that asks for about as much as one may: sixty-four colours, eight balls counted over and over, fine work, forty sizes.</summary>
internal static class Extreme
{
    public static string Document()
    {
        var document = JsonNode.Parse(Encoding.UTF8.GetString(DemoProject.Utf8))!.AsObject();
        document["title"] = "Sixty-four colours";
        var yarn = document["yarn"]!.AsObject();
        yarn["ball"] = new JsonObject { ["length"] = "2000 m", ["mass"] = "500 g" };
        yarn["sections"] = List(64, i => new JsonObject { ["name"] = $"colour {i + 1}", ["colour"] = $"#{0x10203 * i * 37 % 0xffffff:x6}" });
        yarn["counted"] = List(8, ball => new JsonObject
        {
            ["name"] = $"ball {ball + 1}",
            ["repeats"] = List(50, repeat => List(64, section => JsonValue.Create(59 + (section * 7 + repeat * 5 + ball) % 3))),
        });
        var fabric = document["fabric"]!.AsObject();
        fabric.Remove("sectionStitches");
        fabric["swatch"] = new JsonObject
        {
            ["hook"] = "2 mm",
            ["worked"] = new JsonObject { ["stitches"] = 60, ["rows"] = 60, ["over"] = "10 cm" },
            ["yarnUsed"] = List(1, _ => new JsonObject { ["stitches"] = 100, ["length"] = "60 cm" }),
        };
        var garment = document["garment"]!.AsObject();
        garment["motif"] = "shallow";
        garment["grading"] = new JsonObject { ["alternatingRows"] = true, ["halfStitchTurn"] = true };
        garment["sleeves"] = new JsonObject { ["yarn"] = "variegated", ["shorterBy"] = "26 cm" };
        document["sizes"] = new JsonObject
        {
            ["own"] = List(40, i => new JsonObject
            {
                ["name"] = $"size {i + 1}",
                ["measures"] = new JsonObject
                {
                    ["bust"] = $"{70 + 3 * i} cm",
                    ["upperArm"] = $"{24 + i} cm",
                    ["hip"] = $"{80 + 3 * i} cm",
                    ["waist"] = $"{60 + 3 * i} cm",
                    ["backWaistLength"] = $"{38 + i / 4} cm",
                    ["armholeDepth"] = $"{16 + i / 4} cm",
                    ["centreBackNeckToCuff"] = $"{70 + i / 2} cm",
                    ["crossBack"] = $"{30 + i / 2} cm",
                },
            }),
        };
        return document.ToJsonString();
    }

    private static JsonArray List(int count, Func<int, JsonNode> item) => [.. Enumerable.Range(0, count).Select(item)];
}
