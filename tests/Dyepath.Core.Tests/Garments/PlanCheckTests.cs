using System.Collections.Immutable;
using System.Text.Json;
using CsCheck;
using Dyepath.Core.Checking;
using Dyepath.Core.Constructions;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

public sealed class PlanCheckTests
{
    private static readonly Plan Demo = Tideline.Planned();

    public static TheoryData<string, Func<SizePlan, SizePlan>> Slips => new()
    {
        { "foundationChains", s => Piece(s, p => p with { FoundationChains = p.FoundationChains + 1 }) },
        { "width", s => Piece(s, p => p with { Rows = p.Rows + 2 }) },
        { "height", s => Piece(s, p => p with { Height = p.Height + Cm(1) }) },
        { "startSection", s => Piece(s, p => p with { StartSection = p.StartSection + 1 }) },
        { "lean", s => Piece(s, p => p with { Lean = -p.Lean }) },
        { "foundation.knotInto", s => Piece(s, p => p with { Foundation = p.Foundation with { KnotInto = p.Foundation.KnotInto + 0.1 } }) },
        { "finished.neckWidth", s =>
            Piece(s, p => p with { Openings = p.Openings.SetItem(0, p.Openings[0] with { Last = p.Openings[0].Last + 2 }) }) },
        { "finished.armholeDepth", s =>
            Piece(s, p => p with { Openings = p.Openings.SetItem(1, p.Openings[1] with { First = p.Openings[1].First - 2 }) }) },
        { "finished.width", s => s with { Finished = s.Finished.SetItem(GarmentMeasure.Width, s.Finished[GarmentMeasure.Width] + Cm(1)) } },
        { "target.length", s => s with { Target = s.Target.SetItem(GarmentMeasure.Length, s.Target[GarmentMeasure.Length] + Cm(1)) } },
        { "body.Bust", s => s with { Body = s.Body.SetItem("bust", s.Body["bust"] + Cm(1)) } },
        { "edgings[0].pickUp", s => s with { Edgings = s.Edgings.SetItem(0, s.Edgings[0] with { Spread = s.Edgings[0].Spread with { Total = s.Edgings[0].PickUp + 1 } }) } },
        { "edgings[0].depth", s => s with { Edgings = s.Edgings.SetItem(0, s.Edgings[0] with { Depth = s.Edgings[0].Depth + Cm(1) }) } },
        { "seams.left side", s => s with { Seams = s.Seams.SetItem(0, s.Seams[0] with { PhaseJump = s.Seams[0].PhaseJump + 0.5 }) } },
        { "seams.right shoulder", s => s with { Seams = s.Seams.SetItem(3, s.Seams[3] with { PhaseJump = 0.123 }) } },
        { "seams.left side, extension", s => s with { Seams = s.Seams.SetItem(0, s.Seams[0] with { Extension = null }) } },
        { "seams.left side, chance", s => s with { Seams = s.Seams.SetItem(0, s.Seams[0] with { Chance = s.Seams[0].Chance + 0.25 }) } },
        { "yarn.length", s => s with { Yarn = s.Yarn with { Length = s.Yarn.Length + Cm(50) } } },
        { "yarn.balls", s => s with { Yarn = s.Yarn with { BallsTypical = s.Yarn.BallsTypical + 1 } } },
        { "yarn.ballsSafe", s => s with { Yarn = s.Yarn with { BallsSafe = 1 } } },
        { "yarn.mass", s => s with { Yarn = s.Yarn with { Mass = s.Yarn.Mass + s.Yarn.Mass } } },
        { "yarn.uses.front", s => s with { Yarn = s.Yarn with { Uses = [.. s.Yarn.Uses.Where(u => u.Piece != PieceId.Front || u.Purpose != YarnPurpose.Stitches)] } } },
    };

    [Theory]
    [MemberData(nameof(Slips))]
    public void Every_slip_is_named_with_its_place(string place, Func<SizePlan, SizePlan> slip)
    {
        var spoilt = Demo with { Sizes = Demo.Sizes.SetItem(3, slip(Demo.Sizes[3])) };
        var found = PlanCheck.Verify(spoilt);
        Assert.Contains(found, f =>
            f.Place.StartsWith("sizes.L.", StringComparison.Ordinal) && f.Place.EndsWith(place, StringComparison.Ordinal));
        Assert.All(found, f => Assert.StartsWith("sizes.L.", f.Place, StringComparison.Ordinal));
    }

    [Fact]
    public void Both_routes_agree_on_other_stitches_gauges_motifs_and_seams()
    {
        var motifs = new[] { MotifKind.Argyle, MotifKind.Columns, MotifKind.Steep };
        var planned = 0;
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 2], Gen.Int[10, 22], Gen.Bool, Gen.Int[0, 2], Gen.Int[0, 2]).Holds(
            (stitch, motif, perTen, mirrored, hidden, direction) =>
            {
                var made = FabricStitch.All[stitch];
                var gauge = new Gauge(perTen, Math.Round(perTen / made.HeightOverWidth), Cm(10));
                var project = Tideline.With(g => g with
                {
                    Motif = motifs[motif],
                    Direction = direction == 2 ? null : (Direction)direction,
                    Seams = new SeamChoice(mirrored ? SeamExtension.Mirrored : SeamExtension.Continued, hidden, hidden),
                }) with
                {
                    Fabric = Tideline.Fabric with
                    {
                        Stitch = made,
                        Swatch = Tideline.Fabric.Swatch with { Worked = gauge, Blocked = null, Hung = null },
                    },
                };
                var result = project.Tried();
                if (result.Plan is not { } plan)
                {
                    Assert.NotEmpty(result.Reasons);
                    return;
                }
                planned++;
                var found = PlanCheck.Verify(plan);
                Assert.True(found.IsEmpty, string.Join('\n', found.Take(5)));
            },
            seed: 501, cases: 25);
        Assert.True(planned >= 12, $"Only {planned} of the projects could be planned.");
    }

    /// <summary>No seam is left out: of sleeves, in linen stitch, and where rounds join.</summary>
    [Theory]
    [InlineData("sleeves, up")]
    [InlineData("sleeves, sideways")]
    [InlineData("linen")]
    [InlineData("cowl in rounds")]
    public void A_false_jump_is_named_at_every_seam(string garment)
    {
        var plan = (garment switch
        {
            "sleeves, up" => Tideline.Directed(Direction.Up).Sleeved(pooled: true),
            "sleeves, sideways" => Tideline.Directed(Direction.Sideways).Sleeved(pooled: true),
            "linen" => Tideline with { Fabric = Tideline.Fabric with { Stitch = FabricStitch.All.Single(f => f.Id == "linen") } },
            _ => Tideline.With(g => g with { Shape = new Cowl(Cm(66), Cm(28)), Working = Working.Rounds, Motif = MotifKind.EvenSlant, Edgings = [] })
                with
            { Sizes = new SizeSelection(null, [], [], null, [], []) },
        }).Planned();
        Assert.Empty(PlanCheck.Verify(plan));
        var size = plan.Sizes[0];
        Assert.NotEmpty(size.Seams);
        for (var i = 0; i < size.Seams.Length; i++)
        {
            var spoilt = size with { Seams = size.Seams.SetItem(i, size.Seams[i] with { PhaseJump = size.Seams[i].PhaseJump + 0.01 }) };
            Assert.Contains(
                PlanCheck.Verify(plan with { Sizes = plan.Sizes.SetItem(0, spoilt) }),
                f => f.Place == $"sizes.{size.Name}.seams.{size.Seams[i].Where}");
        }
    }

    [Fact]
    public void The_json_holds_what_the_command_promises()
    {
        using var json = JsonDocument.Parse(PlanJson.Write(Demo));
        var root = json.RootElement;
        Assert.Equal("sideways", root.GetProperty("direction").GetString());
        Assert.Equal(DirectionWords.Why(Demo), root.GetProperty("why").GetString());
        var sizes = root.GetProperty("sizes").EnumerateArray().ToArray();
        Assert.Equal(9, sizes.Length);
        foreach (var (size, plan) in sizes.Zip(Demo.Sizes))
        {
            Assert.Equal(plan.Name, size.GetProperty("name").GetString());
            Assert.Equal(plan.Target[GarmentMeasure.Width].Centimetres, size.GetProperty("target").GetProperty("widthCm").GetDouble(),
                0.001);
            Assert.Equal(plan.Finished[GarmentMeasure.SleeveLength].Centimetres,
                size.GetProperty("finished").GetProperty("sleeveLengthCm").GetDouble(), 0.001);
            foreach (var (piece, at) in size.GetProperty("pieces").EnumerateArray().Zip(plan.Pieces))
            {
                Assert.Equal(
                    (at.Name, at.Stitches, at.Rows, at.FoundationChains, at.Start, at.Lean),
                    (piece.GetProperty("name").GetString(), piece.GetProperty("stitches").GetInt32(), piece.GetProperty("rows").GetInt32(),
                        piece.GetProperty("foundationChains").GetInt32(), piece.GetProperty("start").GetDouble(),
                        piece.GetProperty("lean").GetDouble()));
            }
            Assert.All(size.GetProperty("edgings").EnumerateArray(), e => Assert.True(
                e.GetProperty("pickUp").GetInt32() > 0 && e.GetProperty("rounds").GetInt32() > 0
                    && e.GetProperty("where").GetString() is not null));
            Assert.All(size.GetProperty("seams").EnumerateArray(), e => Assert.True(e.GetProperty("phaseJump").GetDouble() >= 0));
            var yarn = size.GetProperty("yarn");
            Assert.Equal(plan.Yarn.BallsSafe, yarn.GetProperty("ballsSafe").GetInt32());
            Assert.Equal(plan.Yarn.BallsTypical, yarn.GetProperty("ballsTypical").GetInt32());
            Assert.Equal(plan.Yarn.Length.Metres, yarn.GetProperty("metres").GetDouble(), 0.001);
            Assert.Equal(plan.Yarn.Mass.Grams, yarn.GetProperty("grams").GetDouble(), 0.001);
        }
        Assert.Equal(2, root.GetProperty("options").GetArrayLength());
    }

    [Fact]
    public void The_curve_never_rises()
    {
        foreach (var option in Demo.Options)
            Assert.All(option.Curve.Zip(option.Curve.Skip(1)), p => Assert.True(p.Second.WorstError <= p.First.WorstError));
    }

    private static SizePlan Piece(SizePlan size, Func<PiecePlan, PiecePlan> slip) =>
        size with { Pieces = size.Pieces.SetItem(0, slip(size.Pieces[0])) };
}
