using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Planning;

/// <summary>Makes the size plans of a boxy top from the counts of the chosen direction.</summary>
internal sealed class BoxyAssembly(
    Fabrication fabrication, BoxyTop shape, BoxyTargets targets, BoxyDirection chosen, BoxyDirectionPlanner planner)
{
    private readonly Length _hem = fabrication.EdgingDepth(EdgingPlace.Hem);
    private readonly SeamChoice _seams = fabrication.Project.Garment.Seams;

    private bool Up => chosen.Direction == Direction.Up;

    private Axis Across => chosen.Across;

    private Axis Down => chosen.Down;

    /// <summary>False where edgings or balls cannot be planned.</summary>
    public bool TryAssemble(int size, [NotNullWhen(true)] out SizePlan? plan, [NotNullWhen(false)] out Finding? fault)
    {
        plan = null;
        var body = targets.Sizes.Sizes[size];
        var counts = chosen.Sizes[size];
        var decision = Decide(size, counts);
        var made = counts with { Rows = decision.Rows, Neck = decision.Neck };
        var pieces = ImmutableArray.CreateBuilder<PiecePlan>();
        pieces.Add(Panel(PieceId.Front, made, made.Panel.Front, decision.FrontStart, false));
        pieces.Add(Panel(PieceId.Back, made, made.Panel.Back, decision.Start, decision.BackTurned));
        var seams = BodySeams(made, decision);
        if (made.Sleeve is { } sleeve)
        {
            var (piece, sleeveSeams) = Sleeve(made, sleeve, decision);
            pieces.Add(piece);
            seams = seams.AddRange(sleeveSeams);
        }
        var all = pieces.ToImmutable();
        if (!EdgingPlanner.TryPlan(fabrication, chosen.Direction, body.Name, Edges(made), out var edgings, out fault))
            return false;
        if (YarnTally.Plan(fabrication, all, edgings, seams) is not { } yarn)
        {
            fault = GarmentPlanner.BallFault(fabrication);
            return false;
        }
        plan = new SizePlan(body.Name, body.Measures, Target(size, made), Finished(made), all, edgings, seams, yarn);
        return true;
    }

    private SeamDecision Decide(int size, BoxyCounts counts)
    {
        var (front, back) = (counts.Panel.Front, counts.Panel.Back);
        var start = Asked(PieceId.Front) ?? SeamSearch.FirstStart(fabrication, Path(front, counts.Rows, 0), front.Reading.Lean?.UnitsPerRow ?? 0);
        var fixedRows = targets.Fixed.Count(targets.Sizes.Sizes[size].Name, FixedCounts.PanelRows) is not null;
        var (frontPath, backPath) = (Path(front, counts.Rows, start), Path(back, counts.Rows, start));
        return SeamSearch.Choose(
            fabrication,
            counts.Rows,
            fixedRows,
            rows => Error(size, counts with { Rows = rows }),
            (rows, turned) => new BoxyLayout(
                chosen.Direction, frontPath, backPath, rows, NeckFor(size, counts, rows), counts.Armhole, turned, _seams,
                fabrication.Stitch.StitchesPerUnit),
            Lengths(counts),
            start,
            Asked(PieceId.Back));
    }

    private int? Asked(PieceId piece) => fabrication.Project.Garment.StartOf(piece);

    /// <summary>Sideways, the slit is counted in rows, and must be centred on as many as there are.</summary>
    private int NeckFor(int size, BoxyCounts counts, int rows) => Up ? counts.Neck : planner.NeckOf(size, rows);

    private Length Error(int size, BoxyCounts counts) => Up
        ? chosen.LengthOf(counts, _hem) - chosen.Length[size]
        : chosen.WidthOf(counts) - chosen.Width[size];

    private ImmutableArray<double> Lengths(BoxyCounts counts)
    {
        var (side, shoulder) = (SideLength(counts).Centimetres, ShoulderLength(counts).Centimetres);
        return [side, side, shoulder, shoulder];
    }

    private int AcrossCount(BoxyCounts counts) => Up ? counts.Panel.Front.Stitches : counts.Rows;

    private int DownCount(BoxyCounts counts) => Up ? counts.Rows : counts.Panel.Front.Stitches;

    private Length SideLength(BoxyCounts counts) => Down.Of(DownCount(counts) - counts.Armhole, 0);

    private Length ShoulderLength(BoxyCounts counts) =>
        Across.Of((AcrossCount(counts) - counts.Neck) / 2, 1) + counts.Panel.Bands * fabrication.SingleCrochetHeight;

    private FabricPath Path(CountFinding finding, int rows, int start) =>
        fabrication.Path(Working.Turned, finding.RowStitches, rows, finding.TurnCost, start);

    private PiecePlan Panel(PieceId id, BoxyCounts counts, CountFinding finding, int start, bool turned)
    {
        var across = Up ? finding.Stitches : counts.Rows;
        var down = Up ? counts.Rows : finding.Stitches;
        var before = (across - counts.Neck) / 2;
        ImmutableArray<PieceOpening> openings =
        [
            new(OpeningId.Neck, Up, before + 1, before + counts.Neck),
            new(OpeningId.Armhole, !Up, down - counts.Armhole + 1, down),
        ];
        var bands = counts.Panel.Bands == 0 ? 0 : counts.Panel.Bands + _seams.HiddenRows;
        return PieceWriter.Write(
            fabrication, id, 1, Working.Turned, finding, finding.Stitches, counts.Rows, start, Across, Down, bands, openings, turned);
    }

    private ImmutableArray<SeamPlan> BodySeams(BoxyCounts counts, SeamDecision decision)
    {
        var (side, shoulder) = (SideLength(counts), ShoulderLength(counts));
        return
        [
            Seam(SeamId.LeftSide, 0, side), Seam(SeamId.RightSide, 1, side),
            Seam(SeamId.LeftShoulder, 2, shoulder), Seam(SeamId.RightShoulder, 3, shoulder),
        ];

        SeamPlan Seam(SeamId id, int index, Length length)
        {
            // Between two plain bands no colours adjoin.
            var (jump, match) = counts.Panel.Bands > 0 && index < 2 ? (0, 1) : decision.Seams[index];
            return new SeamPlan(id, [PieceId.Front], PieceId.Back, jump, match, length);
        }
    }

    private (PiecePlan Piece, ImmutableArray<SeamPlan> Seams) Sleeve(BoxyCounts counts, SleeveCounts sleeve, SeamDecision decision)
    {
        var layout = new BoxyLayout(
            chosen.Direction, Path(counts.Panel.Front, decision.Rows, decision.FrontStart),
            Path(counts.Panel.Back, decision.Rows, decision.Start), decision.Rows, decision.Neck, counts.Armhole, decision.BackTurned, _seams, fabrication.Stitch.StitchesPerUnit);
        (double Jump, double Match) left = (0, 1), right = (0, 1), underarm = (0, 1);
        var start = 0;
        if (sleeve.Finding?.Front is { } finding)
        {
            var path = Path(finding, sleeve.Rows, 0);
            var period = fabrication.PeriodMicro;
            var leftArm = layout.ArmholeMeter(period, path, sleeve.Stitches, sleeve.Rows, left: true);
            var rightArm = layout.ArmholeMeter(period, path, sleeve.Stitches, sleeve.Rows, left: false);
            start = Asked(PieceId.Sleeve) ?? SeamSearch.Start(fabrication, [leftArm, rightArm]);
            left = SeamSearch.Figures(leftArm, start);
            right = SeamSearch.Figures(rightArm, start);
            underarm = SeamSearch.Figures(layout.UnderarmMeter(period, path, sleeve.Stitches, sleeve.Rows));
        }
        var piece = PieceWriter.Write(
            fabrication, PieceId.Sleeve, 2, Working.Turned, sleeve.Finding?.Front, sleeve.Stitches, sleeve.Rows, start, Across, Down, 0, []);
        var round = 2 * Down.Of(counts.Armhole, 1);
        var along = Down.Of(Up ? sleeve.Rows : sleeve.Stitches, 1);
        return (piece,
        [
            new(SeamId.LeftArmhole, [PieceId.Front, PieceId.Back], PieceId.Sleeve, left.Jump, left.Match, round),
            new(SeamId.RightArmhole, [PieceId.Front, PieceId.Back], PieceId.Sleeve, right.Jump, right.Match, round),
            new(SeamId.LeftSleeve, [PieceId.Sleeve], PieceId.Sleeve, underarm.Jump, underarm.Match, along),
            new(SeamId.RightSleeve, [PieceId.Sleeve], PieceId.Sleeve, underarm.Jump, underarm.Match, along),
        ]);
    }

    private IEnumerable<EdgeOfGarment> Edges(BoxyCounts counts)
    {
        var (front, back) = (counts.Panel.Front.Stitches, counts.Panel.Back.Stitches);
        var hidden = 2 * Across.Hidden;
        var hem = ImmutableArray.Create(
            new EdgeStretch("front", !Up, (Up ? front : counts.Rows) - hidden),
            new EdgeStretch("back", !Up, (Up ? back : counts.Rows) - hidden));
        if (counts.Panel.Bands > 0)
            hem = hem.Add(new EdgeStretch("side bands", true, 4 * counts.Panel.Bands));
        yield return new EdgeOfGarment(EdgingPlace.Hem, 1, hem);
        yield return new EdgeOfGarment(
            EdgingPlace.Neck, 1, [new EdgeStretch("front neck", !Up, counts.Neck), new EdgeStretch("back neck", !Up, counts.Neck)],
            Corners: 2);
        if (counts.Sleeve is not { } sleeve)
        {
            var visible = counts.Armhole - Down.Hidden;
            yield return new EdgeOfGarment(
                EdgingPlace.Armholes, 2, [new EdgeStretch("front", Up, visible), new EdgeStretch("back", Up, visible)]);
        }
        else
            yield return new EdgeOfGarment(
                EdgingPlace.Cuffs, 2, [new EdgeStretch("cuff", !Up, (Up ? sleeve.Stitches : sleeve.Rows) - hidden)]);
    }

    private ImmutableSortedDictionary<GarmentMeasure, Length> Target(int size, BoxyCounts counts)
    {
        var target = ImmutableSortedDictionary.CreateBuilder<GarmentMeasure, Length>();
        target[GarmentMeasure.Width] = chosen.Width[size];
        target[GarmentMeasure.Length] = chosen.Length[size];
        target[GarmentMeasure.ArmholeDepth] = targets.Armhole[size];
        target[GarmentMeasure.NeckWidth] = targets.Neck[size];
        if (shape.Sleeves is not null && counts.Sleeve is not null)
        {
            target[GarmentMeasure.SleeveWidth] = planner.SleeveWidthOf(size);
            target[GarmentMeasure.SleeveLength] = planner.SleeveLengthOf(size);
        }
        return target.ToImmutable();
    }

    private ImmutableSortedDictionary<GarmentMeasure, Length> Finished(BoxyCounts counts)
    {
        var finished = ImmutableSortedDictionary.CreateBuilder<GarmentMeasure, Length>();
        finished[GarmentMeasure.Width] = chosen.WidthOf(counts);
        finished[GarmentMeasure.Length] = chosen.LengthOf(counts, _hem);
        finished[GarmentMeasure.ArmholeDepth] = Down.Of(counts.Armhole, 1) - fabrication.EdgingDepth(EdgingPlace.Armholes);
        finished[GarmentMeasure.NeckWidth] = Across.Of(counts.Neck, 0) - 2 * fabrication.EdgingDepth(EdgingPlace.Neck);
        if (counts.Sleeve is { } sleeve)
        {
            // Rows that alternate by a stitch are as wide as their mean.
            double stitches = sleeve.Finding?.Front.RowStitches.Average() ?? sleeve.Stitches, rows = sleeve.Rows;
            var (round, along) = Up ? (stitches, rows) : (rows, stitches);
            finished[GarmentMeasure.SleeveWidth] = Across.Of(round, 2);
            finished[GarmentMeasure.SleeveLength] = Down.Of(along, 1) + fabrication.EdgingDepth(EdgingPlace.Cuffs);
        }
        return finished.ToImmutable();
    }
}
