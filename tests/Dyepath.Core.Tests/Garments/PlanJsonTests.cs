using System.Text.Json;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Tests.Instructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>The plan as other programs read it: every number of it, under its own name and in its own unit.</summary>
public sealed class PlanJsonTests
{
    [Theory]
    [InlineData("tunic in three sizes")]
    [InlineData("side bands")]
    [InlineData("plain sleeves")]
    [InlineData("cowl in rounds")]
    public void Every_number_of_the_plan_is_there(string name)
    {
        var plan = Patterns.Named(name).Planned();
        using var json = JsonDocument.Parse(PlanJson.Write(plan));
        var root = json.RootElement;
        Holds(root, ("title", plan.Project.Title), ("direction", plan.Direction == Direction.Up ? "up" : "sideways"), ("why", DirectionWords.Why(plan)));
        var fabric = root.GetProperty("fabric");
        Holds(fabric,
            ("sequenceStitches", plan.Sequence.Ring.SequenceUnits), ("yarnPerUnitCm", plan.Sequence.YarnPerUnit.Centimetres),
            ("stitchWidthCm", plan.StitchWidth.Centimetres), ("rowHeightCm", plan.RowHeight.Centimetres));
        Assert.Equal([5.0, 4, 3, 5, 4], fabric.GetProperty("sections").EnumerateArray().Select(s => s.GetDouble()));
        All(root, "sizes", plan.Sizes, Size);
        All(root, "options", plan.Options, (option, o) =>
        {
            Holds(option,
                ("direction", o.Direction == Direction.Up ? "up" : "sideways"), ("feasible", o.Feasible), ("reason", DirectionWords.Reason(o)),
                ("worstErrorCm", o.WorstError.Centimetres), ("typicalErrorCm", o.TypicalError.Centimetres));
            Assert.Equal(o.Counts, option.GetProperty("counts").EnumerateArray().Select(c => c.GetInt32()));
            All(option, "curve", o.Curve, (point, c) =>
            {
                Holds(point, ("counts", c.Counts), ("worstErrorCm", c.WorstError.Centimetres));
                Assert.Equal(c.Stitches, point.GetProperty("stitches").EnumerateArray().Select(s => s.GetInt32()));
            });
        });
        All(root, "rules", plan.Rules, (rule, r) => Holds(
            rule, ("id", JsonNamingPolicy.CamelCase.ConvertName(r.ToString())), ("text", RuleWords.Of(r, plan.Project.Garment.Shape))));
        All(root, "findings", plan.Findings, (finding, f) =>
            Holds(finding, ("level", f.Level.ToString().ToLowerInvariant()), ("place", f.Place), ("text", f.Text)));
    }

    [Fact]
    public void Why_there_is_no_plan_is_there_too()
    {
        var result = Tideline.Directed(Direction.Up).WithTop(t => t with { Neck = t.Neck with { Width = Cm(60) } }).Tried();
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
            PlanJson.WriteReasons(writer, result);
        using var json = JsonDocument.Parse(stream.ToArray());
        Holds(json.RootElement, ("outcome", "infeasible"));
        Assert.NotEmpty(result.Reasons);
        All(json.RootElement, "reasons", result.Reasons, (reason, r) =>
            Holds(reason, ("level", r.Level.ToString().ToLowerInvariant()), ("place", r.Place), ("text", r.Text)));
    }

    private static void Size(JsonElement size, SizePlan plan)
    {
        Holds(size, ("name", plan.Name), ("madeWell", plan.MadeWell!.Value));
        Holds(size.GetProperty("body"), [.. plan.Body.Select(m => ($"{m.Key}Cm", (object)m.Value.Centimetres))]);
        Holds(size.GetProperty("target"), [.. plan.Target.Select(m => ($"{GarmentMeasures.Key(m.Key)}Cm", (object)m.Value.Centimetres))]);
        Holds(size.GetProperty("finished"), [.. plan.Finished.Select(m => ($"{GarmentMeasures.Key(m.Key)}Cm", (object)m.Value.Centimetres))]);
        All(size, "pieces", plan.Pieces, Piece);
        All(size, "edgings", plan.Edgings, (edging, e) => Holds(edging,
            ("where", e.Where.ToString().ToLowerInvariant()), ("edging", e.Edging), ("copies", e.Copies), ("pickUp", e.PickUp),
            ("rounds", e.Rounds), ("depthCm", e.Depth.Centimetres), ("rule", PickUpWords.Text(e.Spread))));
        All(size, "seams", plan.Seams, (seam, s) => Holds(seam,
            ("where", s.Where), ("first", s.First.Length == 2 ? "front and back" : Word(s.First[0])), ("second", Word(s.Second[0])), ("phaseJump", s.PhaseJump), ("match", s.Match),
            ("lengthCm", s.Length.Centimetres), ("chance", s.Chance)));
        Assert.Equal(
            plan.Seams.Select(s => s.Extension is null ? (null, null) : (s.Extension.ToString()!.ToLowerInvariant(), s.Quality == SeamQuality.ByChance ? "byChance" : s.Quality.ToString().ToLowerInvariant())),
            size.GetProperty("seams").EnumerateArray().Select(s => (s.GetProperty("extension").GetString(), s.GetProperty("quality").GetString())));
        var yarn = size.GetProperty("yarn");
        Holds(yarn,
            ("metres", plan.Yarn.Length.Metres), ("grams", plan.Yarn.Mass.Grams), ("ballsTypical", plan.Yarn.BallsTypical),
            ("ballsSafe", plan.Yarn.BallsSafe), ("leftoverMetres", plan.Yarn.Leftover.Metres));
        var companion = plan.Yarn.Companion!;
        Holds(yarn.GetProperty("companion"), ("metres", companion.Length.Metres), ("grams", companion.Mass.Grams), ("balls", companion.Balls));
        Odds(yarn, plan.Yarn.Odds);
        Odds(yarn.GetProperty("companion"), companion.Odds);
        All(yarn, "uses", plan.Yarn.Uses, (use, u) => Holds(use, ("what", YarnUseNames.Of(u)), ("companion", u.Companion), ("metres", u.Length.Metres)));
        All(yarn, "joins", plan.Yarn.Joins, (join, j) => Holds(join,
            ("ball", j.Ball), ("piece", j.Run.Name), ("row", j.Row), ("stitch", j.Stitch), ("stitchesIntoColour", j.Place / 1e6 - Before(join.GetProperty("colour").GetString()!)), ("wastedMetres", j.Wasted.Metres)));
    }

    /// <summary>Stitches of the sequence before a colour.</summary>
    private static int Before(string colour) => colour switch
    {
        "deep water" => 0,
        "shallows" => 5,
        "foam" => 9,
        "wet sand" => 12,
        "kelp" => 17,
        _ => throw new ArgumentOutOfRangeException(nameof(colour), colour, "No such colour."),
    };

    private static void Odds(JsonElement yarn, IEnumerable<BallShare> odds) =>
        All(yarn, "ballsProbability", [.. odds], (share, o) => Holds(share, ("balls", o.Balls), ("share", o.Share)));

    private static void Piece(JsonElement piece, PiecePlan plan)
    {
        Holds(piece,
            ("name", plan.Name), ("copies", plan.Copies), ("pooled", plan.Pooled),
            ("worked", plan.Working == Core.Fabrics.Working.Turned ? "turned" : "rounds"), ("stitches", plan.Stitches), ("rows", plan.Rows),
            ("foundationChains", plan.FoundationChains), ("start", plan.Start), ("startSection", plan.StartSection),
            ("turnCost", plan.TurnCost), ("lean", plan.Lean), ("widthCm", plan.Width.Centimetres), ("heightCm", plan.Height.Centimetres),
            ("sideBandRows", plan.SideBandRows), ("wrongSideOut", plan.WrongSideOut));
        Assert.Equal(plan.Forgives.Tighter, piece.GetProperty("forgivesTighter").GetDouble(), 1e-6);
        Assert.Equal(plan.Forgives.Looser, piece.GetProperty("forgivesLooser").GetDouble(), 1e-6);
        Assert.Equal(plan.RowStitches, piece.GetProperty("rowStitches").EnumerateArray().Select(s => s.GetInt32()));
        Assert.Equal(Core.Motifs.MotifNames.Of(plan.Motif), piece.GetProperty("motif").GetString());
        var foundation = plan.Foundation;
        Holds(piece.GetProperty("foundation"),
            ("firstStitchInChain", foundation.FirstStitchInChain), ("companion", foundation.Companion), ("knotSection", foundation.KnotSection),
            ("knotInto", foundation.KnotInto), ("colourSection", foundation.ColourSection), ("moreChains", foundation.MoreChains),
            ("yarn", foundation.Yarn));
        All(piece, "marks", plan.Marks, (mark, m) => Holds(mark, ("what", WhatOf(m)), (m.AlongStitches ? "stitch" : "row", m.Position)));
    }

    private static string WhatOf(PieceMark mark) =>
        mark.Opening.Id == OpeningId.Neck ? $"neck opening {(mark.Begins ? "begins" : "ends")}" : "armholes begin, from the hem";

    private static void All<T>(JsonElement at, string name, IReadOnlyCollection<T> plan, Action<JsonElement, T> holds)
    {
        var items = at.GetProperty(name).EnumerateArray().ToArray();
        Assert.Equal(plan.Count, items.Length);
        foreach (var (item, planned) in items.Zip(plan))
            holds(item, planned);
    }

    /// <summary>Lengths and yarn to three places.</summary>
    private static void Holds(JsonElement at, params (string Name, object Value)[] members)
    {
        foreach (var (name, value) in members)
        {
            var written = at.GetProperty(name);
            switch (value)
            {
                case string text:
                    Assert.Equal(text, written.GetString());
                    break;
                case bool truth:
                    Assert.Equal(truth, written.GetBoolean());
                    break;
                case int count:
                    Assert.Equal(count, written.GetInt32());
                    break;
                default:
                    Assert.Equal((double)value, written.GetDouble(), 0.0005001);
                    Assert.Matches(@"^-?[0-9]+(\.[0-9]{1,3})?$", written.GetRawText());
                    break;
            }
        }
    }

    private static string Word(EdgeRun run) => run.Piece.ToString().ToLowerInvariant();
}
