using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Workspace.Fit;

/// <summary>A count of a plan that can be fixed by hand, such as the rows of a sleeve.</summary>
/// <param name="Group">Whose count it is.</param>
/// <param name="IsStitches">Stitches, or else rows.</param>
public sealed record HandCount(PieceGroup Group, bool IsStitches)
{
    private static readonly bool[] StitchesThenRows = [true, false];

    /// <summary>Its name in the document.</summary>
    public string What => IsStitches ? FixedCounts.Stitches(Group) : FixedCounts.Rows(Group);

    /// <summary>All of a plan's sizes; a count that follows another, because the pieces are sewn together, is not among them.</summary>
    public static ImmutableArray<HandCount> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var groups = plan.Construction.Asked.ToArray();
        return
        [
            .. from at in Enumerable.Range(0, groups.Length)
               from stitches in StitchesThenRows
               let measure = groups[at].Along(plan.Direction, stitches).Measure
               where !groups.Take(at).Any(earlier => earlier.Along(plan.Direction, stitches).Measure == measure)
               let count = new HandCount(groups[at], stitches)
               where (stitches ? FixedCounts.OfStitches : FixedCounts.OfRows).Contains(count.What)
               select count,
        ];
    }

    /// <summary>More than this no piece may have.</summary>
    public int Most => IsStitches ? FabricPath.MostStitches : FabricPath.MostRows;

    /// <summary>As the plan has it; of a piece whose rows differ the longest, which is counted for its motif.</summary>
    public int In(SizePlan size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var piece = size[Group.Pieces[0].Id];
        return !IsStitches ? piece.Rows : Group.Bias == 0 && piece.Shape is { } shape ? shape.WidestRow : piece.Stitches;
    }

    /// <summary>Another count for a size, and the measure that it comes to with the edgings that the size has now.</summary>
    public PinProposal Propose(Plan plan, SizePlan size, int count)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(size);
        var dimension = Group.Along(plan.Direction, IsStitches);
        var step = IsStitches ? plan.StitchWidth : plan.RowHeight;
        return new PinProposal(
            size.Name, What, count, dimension.Measure,
            size.Finished[dimension.Measure] + dimension.Pieces * (count - In(size)) * step, size.Target[dimension.Measure]);
    }
}

/// <summary>A count that the designer is about to fix.</summary>
/// <param name="Size">Name of the size.</param>
/// <param name="What">Such as <c>panelStitches</c>.</param>
/// <param name="Count">What is to be fixed.</param>
/// <param name="Measure">What it decides.</param>
/// <param name="Finished">What that comes to.</param>
/// <param name="Target">What the measure should come to.</param>
public sealed record PinProposal(string Size, string What, int Count, GarmentMeasure Measure, Length Finished, Length Target)
{
    /// <summary>Asked on the ruler, or else in the table.</summary>
    public bool FromRuler { get; init; }

    /// <summary>More than 0: too much.</summary>
    public Length Error => Finished - Target;

    /// <summary>A size on another count of the ruler.</summary>
    public static PinProposal On(FitRuler ruler, RulerSize size, RulerCount count)
    {
        ArgumentNullException.ThrowIfNull(ruler);
        ArgumentNullException.ThrowIfNull(size);
        ArgumentNullException.ThrowIfNull(count);
        return new PinProposal(size.Name, "panelStitches", count.Stitches, ruler.Measure, ruler.Finished(size, count), size.Target);
    }

    /// <summary>Half of what is asked or less, or twice as much: another number may be meant.</summary>
    public bool IsFarOff => Finished <= Target / 2 || Finished >= Target * 2;
}
