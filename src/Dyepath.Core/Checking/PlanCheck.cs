using System.Collections.Immutable;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Checking;

/// <summary>
/// The technical editor: recomputes a plan's numbers from the document by a second, plain route (loops over rows and stitches,
/// the trade's rules written out again) that shares no formula with the planner, and names every number that disagrees.
/// </summary>
public static class PlanCheck
{
    /// <summary>What it takes to go over a row, its seams and its yarn.</summary>
    private const int StepsOfRow = 500;

    /// <summary>Empty when everything agrees.</summary>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static ImmutableArray<Finding> Verify(Plan plan, CancellationToken cancel = default) => Verify(plan, Effort.OfPlan(cancel));

    internal static ImmutableArray<Finding> Verify(Plan plan, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return SafetyNet.Run(effort, () => VerifyAll(plan, effort), reason => [reason]);
    }

    private static ImmutableArray<Finding> VerifyAll(Plan plan, Effort effort)
    {
        var notes = new Disagreements();
        var fabric = new PlainFabric(plan);
        effort.Begin(EffortPart.Seams);
        var unit = PlainYarn.Unit(plan);
        notes.Same("yarnPerUnit", plan.Sequence.YarnPerUnit, unit, PlainYarn.Slack * unit);
        notes.Same("stitchWidth", plan.StitchWidth, fabric.StitchWidth, Length.FromMillimetres(0.001));
        notes.Same("rowHeight", plan.RowHeight, fabric.RowHeight, Length.FromMillimetres(0.001));
        foreach (var size in plan.Sizes)
        {
            var within = notes.At($"sizes.{size.Name}");
            MeasureCheck.Measures(plan, size, fabric, within);
            foreach (var piece in size.Pieces)
            {
                effort.Spend((long)StepsOfRow * piece.Rows);
                PieceCheck.Piece(plan, piece, fabric, within.At($"pieces.{piece.Name}"));
            }
            for (var i = 0; i < size.Edgings.Length; i++)
                EdgingCheck.Edging(plan, size, size.Edgings[i], fabric, within.At($"edgings[{i}]"));
            SeamCheck.Seams(plan, size, fabric, within);
            YarnCheck.Yarn(plan, size, fabric, within.At("yarn"));
        }
        return notes.All;
    }
}

/// <summary>Collects numbers that disagree, with their place.</summary>
internal sealed class Disagreements
{
    private readonly ImmutableArray<Finding>.Builder _all;
    private readonly string _place;

    public Disagreements()
        : this(ImmutableArray.CreateBuilder<Finding>(), "") { }

    private Disagreements(ImmutableArray<Finding>.Builder all, string place) => (_all, _place) = (all, place);

    public ImmutableArray<Finding> All => _all.ToImmutable();

    public Disagreements At(string place) => new(_all, Join(place));

    public void Same(string what, int planned, int again)
    {
        if (planned != again)
            Say(what, FormattableString.Invariant($"The plan says {planned}, counted again it is {again}."));
    }

    public void Same(string what, double planned, double again, double tolerance)
    {
        if (!(Math.Abs(planned - again) <= tolerance))
            Say(what, FormattableString.Invariant($"The plan says {planned:0.####}, reckoned again it is {again:0.####}."));
    }

    public void Same(string what, Length planned, Length again, Length tolerance)
    {
        if (planned - again > tolerance || again - planned > tolerance)
            Say(what, FormattableString.Invariant($"The plan says {planned}, reckoned again it is {again}."));
    }

    public void Say(string what, string text) => _all.Add(new Finding(FindingLevel.Fault, Join(what), text));

    private string Join(string what) => _place.Length == 0 ? what : $"{_place}.{what}";
}
