using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>Counts of one size of a boxy top, whichever way it is worked. Along is counted in stitches.</summary>
/// <param name="Rows">Rows of a panel.</param>
/// <param name="Neck">Stitches (rows, sideways) of the slit.</param>
/// <param name="Armhole">Rows (stitches, sideways) of the armhole, what the shoulder seam hides included.</param>
internal sealed record BoxyCounts(GradedCount Panel, int Rows, int Neck, int Armhole, SleeveCounts? Sleeve);

/// <param name="Finding">Missing for a plain sleeve.</param>
internal sealed record SleeveCounts(GradedCount? Finding, int Stitches, int Rows);

/// <summary>A boxy top planned in one direction: every size's counts, and how well they fit.</summary>
internal sealed record BoxyDirection(
    Direction Direction,
    Axis Across,
    Axis Down,
    ImmutableArray<Length> Width,
    ImmutableArray<Length> Length,
    ImmutableArray<BoxyCounts> Sizes,
    DirectionOption Option,
    double Score,
    ImmutableArray<Finding> Reasons)
{
    public bool IsFeasible => Option.Feasible;

    public Length WidthOf(BoxyCounts size) => Direction == Direction.Up ? size.Panel.Measure : 2 * Across.Of(size.Rows, 2);

    /// <param name="hem">Depth of the hem's edging.</param>
    public Length LengthOf(BoxyCounts size, Length hem) => hem + (Direction == Direction.Up ? Down.Of(size.Rows, 1) : size.Panel.Measure);
}

/// <summary>Plans a boxy top in one direction.</summary>
internal sealed class BoxyDirectionPlanner(Fabrication fabrication, BoxyTop shape, BoxyTargets targets, Direction direction)
{
    /// <summary>What one more count must save in worst error to be worth its pages: half a centimetre, as in grading.</summary>
    private const double CentimetresPerCount = 0.5;

    private static readonly Length ShortestSleeve = Length.FromCentimetres(3);

    private readonly Axis _across = direction == Direction.Up ? fabrication.Stitches(direction) : fabrication.Rows(direction);
    private readonly Axis _down = direction == Direction.Up ? fabrication.Rows(direction) : fabrication.Stitches(direction);
    private readonly Length _hem = fabrication.EdgingDepth(EdgingPlace.Hem);

    private ImmutableArray<Length> _sleeveLengths = [];
    private ImmutableArray<Length> _sleeveWidths = [];

    private bool Up => direction == Direction.Up;

    /// <summary>Target of a size's sleeve, edging included; once planned.</summary>
    public Length SleeveLengthOf(int size) => _sleeveLengths[size];

    /// <summary>Target of a size's sleeve round the arm: twice the armhole, unless fixed; once planned.</summary>
    public Length SleeveWidthOf(int size) => _sleeveWidths[size];

    public BoxyDirection Plan()
    {
        var lockedStitches = targets.Fixed.Made(FixedCounts.PanelStitches);
        var lockedRows = targets.Fixed.Made(FixedCounts.PanelRows);
        var (lockedAcross, lockedDown) = Up ? (lockedStitches, lockedRows) : (lockedRows, lockedStitches);
        var widths = targets.WidthAsMade(lockedAcross is { } a ? 2 * _across.Of(a, 2) : null);
        var lengths = targets.LengthAsMade(lockedDown is { } d ? _down.Of(d, 1) + _hem : null);
        var middle = targets.Sizes.Sizes.Length / 2;
        var pins = Pins(FixedCounts.PanelStitches);
        ImmutableArray<Length> along = Up ? widths : [.. lengths.Select(l => l - _hem)];
        var grading = Up
            ? PieceCounts.Choose(
                fabrication, direction, Working.Turned, _across, 2, 2, along, pins, _down.Nearest(lengths[middle], 1))
            : PieceCounts.Choose(
                fabrication, direction, Working.Turned, _down, 1, 1, along, pins, _across.Nearest(widths[middle] / 2, 2));
        var ruler = FitRuler.Of(
            fabrication, direction, Up ? GarmentMeasure.Width : GarmentMeasure.Length, grading,
            [.. targets.Sizes.Sizes.Select((s, i) => (s.Name, along[i], pins[i] is not null))], Up ? Quantities.Length.Zero : _hem);
        if (!grading.HasChoice)
            return Infeasible(widths, lengths, grading.Curve, grading.Reasons, ruler);
        var panels = grading.Chosen.Select((panel, i) => Panel(panel, i, widths[i], lengths[i])).ToImmutableArray();
        var reasons = Openings(panels);
        if (reasons.IsEmpty && shape.Sleeves is { } sleeves)
            (panels, reasons) = WithSleeves(panels, sleeves);
        return reasons.IsEmpty
            ? Feasible(widths, lengths, panels, grading.Curve, ruler)
            : Infeasible(widths, lengths, grading.Curve, reasons, ruler);
    }

    private BoxyCounts Panel(GradedCount panel, int i, Length width, Length length)
    {
        var name = targets.Sizes.Sizes[i].Name;
        var rows = targets.Fixed.Count(name, FixedCounts.PanelRows)
            ?? (Up ? _down.Nearest(length - _hem, 1, 2) : _across.Nearest(width / 2, 2, 2));
        var armhole = _down.Nearest(targets.Armhole[i] + fabrication.EdgingDepth(EdgingPlace.Armholes), 1, Up ? 2 : 1);
        return new BoxyCounts(panel, rows, NeckOf(i, Up ? panel.Front.Stitches : rows), armhole, null);
    }

    /// <summary>Centred on a panel of <paramref name="across"/>, so of the same parity; the edging stands inside.</summary>
    public int NeckOf(int size, int across) =>
        _across.NearestLike(targets.Neck[size] + 2 * fabrication.EdgingDepth(EdgingPlace.Neck), 0, across);

    private ImmutableArray<Finding> Openings(ImmutableArray<BoxyCounts> panels)
    {
        var reasons = ImmutableArray.CreateBuilder<Finding>();
        for (var i = 0; i < panels.Length; i++)
        {
            var name = targets.Sizes.Sizes[i].Name;
            var (across, down) = Up ? (panels[i].Panel.Back.Stitches, panels[i].Rows) : (panels[i].Rows, panels[i].Panel.Front.Stitches);
            if (across - panels[i].Neck < 2 * (_across.Hidden + 2))
                reasons.Add(new Finding(
                    FindingLevel.Fault, "garment.neckWidth", $"The neck of size {name} leaves no shoulders: make it narrower."));
            if (PieceSize.Fault(name, "front", panels[i].Panel.Front.Stitches, panels[i].Rows) is { } tooLarge)
                reasons.Add(tooLarge);
            if (down - panels[i].Armhole < 4)
                reasons.Add(new Finding(
                    FindingLevel.Fault, "garment.belowWaist", $"Size {name} is hardly longer than its armholes: make it longer."));
        }
        return reasons.ToImmutable();
    }

    private (ImmutableArray<BoxyCounts> Panels, ImmutableArray<Finding> Reasons) WithSleeves(
        ImmutableArray<BoxyCounts> panels, SleeveSpec sleeves)
    {
        var cuff = fabrication.EdgingDepth(EdgingPlace.Cuffs);
        var round = _sleeveWidths = targets.Fixed.Apply(
            GarmentMeasure.SleeveWidth, targets.Sizes, [.. panels.Select(p => 2 * _down.Of(p.Armhole, 1))]);
        var lengths = _sleeveLengths = SleeveLengths(panels, sleeves);
        var tooShort = lengths.Select((l, i) => (Length: l, i)).Where(l => l.Length - cuff < ShortestSleeve)
            .Select(l => new Finding(FindingLevel.Fault, "garment.sleeves.shorterBy", FormattableString.Invariant(
                $"The sleeve of size {targets.Sizes.Sizes[l.i].Name} would be {l.Length.Centimetres:0.0} cm long: take less off, or leave sleeves out."))).ToImmutableArray();
        if (!tooShort.IsEmpty)
            return (panels, tooShort);
        var pins = Pins(FixedCounts.SleeveStitches);
        Grading? grading = null;
        if (sleeves.Pooled)
        {
            grading = Up
                ? PieceCounts.Choose(
                    fabrication, direction, Working.Turned, _across, 2, 1, round, pins, _down.Nearest(lengths[0], 1))
                : PieceCounts.Choose(
                    fabrication, direction, Working.Turned, _down, 1, 1, [.. lengths.Select(l => l - cuff)], pins,
                    _across.Nearest(round[0], 2));
            if (!grading.HasChoice)
                return (panels, [.. grading.Reasons.Select(r => r with { Text = "Sleeves: " + r.Text })]);
        }
        ImmutableArray<BoxyCounts> sleeved =
            [.. panels.Select((panel, i) => WithSleeve(panel, i, round[i], lengths[i] - cuff, grading?.Chosen[i], pins[i]))];
        return (sleeved, [.. sleeved.Select((s, i) =>
            PieceSize.Fault(targets.Sizes.Sizes[i].Name, "sleeve", s.Sleeve!.Stitches, s.Sleeve.Rows)).OfType<Finding>()]);
    }

    /// <summary>A plain sleeve is worked in whole units, so that one text serves all sizes.</summary>
    private int WholeUnit => fabrication.Stitch.StitchesPerUnit;

    private BoxyCounts WithSleeve(BoxyCounts panel, int i, Length round, Length length, GradedCount? pooled, int? pin)
    {
        var rows = targets.Fixed.Count(targets.Sizes.Sizes[i].Name, FixedCounts.SleeveRows);
        if (!Up)
        {
            var along = pooled?.Front.Stitches ?? pin ?? _down.Nearest(length, 1, WholeUnit);
            return panel with
            {
                Sleeve = new SleeveCounts(pooled, along, rows ?? _across.Nearest(round, 2, 2)),
                Armhole = Math.Min(_down.Nearest(round / 2, 1), panel.Panel.Front.Stitches - 2),
            };
        }
        var stitches = pooled?.Front.Stitches ?? pin ?? _across.Nearest(round, 2, WholeUnit);
        var sleeve = new SleeveCounts(pooled, stitches, rows ?? _down.Nearest(length, 1, 2));
        // The sleeve's count is limited by the motif, the armhole's rows are not: the armhole follows the sleeve.
        return panel with { Sleeve = sleeve, Armhole = Math.Min(_down.Nearest(_across.Of(stitches, 2) / 2, 1, 2), panel.Rows - 2) };
    }

    /// <summary>By rule from the finished width; where the base's sleeve is locked, all move by as much as it did.</summary>
    private ImmutableArray<Length> SleeveLengths(ImmutableArray<BoxyCounts> panels, SleeveSpec sleeves)
    {
        ImmutableArray<Length> byRule = [.. panels.Select((p, i) => targets.SleeveLengthByRule(sleeves, i, WidthOf(p)))];
        return targets.Fixed.Apply(GarmentMeasure.SleeveLength, targets.Sizes, byRule);
    }

    private Length WidthOf(BoxyCounts size) => Up ? size.Panel.Measure : 2 * _across.Of(size.Rows, 2);

    private ImmutableArray<int?> Pins(string what) => [.. targets.Sizes.Sizes.Select(s => targets.Fixed.Count(s.Name, what))];

    private BoxyDirection Feasible(
        ImmutableArray<Length> widths, ImmutableArray<Length> lengths, ImmutableArray<BoxyCounts> sizes, ImmutableArray<CurvePoint> curve,
        FitRuler ruler)
    {
        var planned = Make(widths, lengths, sizes, null!, 0, []);
        var errors = sizes.SelectMany((s, i) => new[]
        {
            Math.Abs((planned.WidthOf(s) - widths[i]).Centimetres), Math.Abs((planned.LengthOf(s, _hem) - lengths[i]).Centimetres),
        }).ToArray();
        var counts = sizes.SelectMany(s => new[] { s.Panel.Front.Stitches, s.Panel.Back.Stitches }).Distinct().Order().ToImmutableArray();
        var worst = errors.Max();
        var forgives = sizes.Min(s => Math.Min(s.Panel.Front.Forgiveness?.Least ?? 1, s.Panel.Back.Forgiveness?.Least ?? 1));
        var score = worst + CentimetresPerCount * counts.Length + Math.Sqrt(sizes.Average(s => s.Panel.Penalty));
        var option = new DirectionOption(
            direction, true,
            FormattableString.Invariant(
                $"{counts.Length} {(counts.Length == 1 ? "count" : "counts")} ({string.Join(", ", counts)}), worst error {worst:0.0} cm, forgives {forgives:0.0 %} of yarn per stitch."),
            counts, Quantities.Length.FromCentimetres(worst),
            Quantities.Length.FromCentimetres(Math.Sqrt(errors.Average(e => e * e))), curve)
        {
            Ruler = ruler,
        };
        return planned with { Option = option, Score = score };
    }

    private BoxyDirection Infeasible(
        ImmutableArray<Length> widths, ImmutableArray<Length> lengths, ImmutableArray<CurvePoint> curve, ImmutableArray<Finding> reasons,
        FitRuler ruler) => Make(
        widths, lengths, [],
        new DirectionOption(
            direction, false, string.Join(" ", reasons.Select(r => r.Text)), [], Quantities.Length.Zero, Quantities.Length.Zero, curve)
        {
            Ruler = ruler,
        },
        double.PositiveInfinity, reasons);

    private BoxyDirection Make(
        ImmutableArray<Length> widths, ImmutableArray<Length> lengths, ImmutableArray<BoxyCounts> sizes, DirectionOption option,
        double score, ImmutableArray<Finding> reasons) =>
        new(direction, _across, _down, widths, lengths, sizes, option, score, reasons);
}
