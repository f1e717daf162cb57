using System.Collections.Immutable;
using Dyepath.Core.Findings;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Garments;

/// <summary>
/// A garment that can be made: its construction, and the rules that lead from the body to its measures. Each is one file in
/// <c>Constructions</c>, where a part that is missing does not compile.
/// </summary>
public abstract record GarmentShape
{
    /// <summary>As the document and the pattern call it, such as <c>tunic</c>.</summary>
    public abstract string Name { get; }

    /// <summary>Body measures that its targets need; none where it is not made to the body.</summary>
    public abstract ImmutableArray<BodyMeasure> Needs { get; }

    /// <summary>
    /// Body measures that it is held against where they are known: those that a chart lacks are derived, own sizes may lack them.
    /// </summary>
    public virtual ImmutableArray<BodyMeasure> Wishes => [];

    /// <summary>Made to the body's measures, so that it needs a size chart.</summary>
    public bool IsToBody => !Needs.IsEmpty;

    /// <summary>Whom it is for where no sizes say so.</summary>
    public virtual Wearers Unsized => Wearers.Adult;

    /// <summary>What its targets and counts follow a rule for.</summary>
    public abstract ImmutableArray<PlanRule> Rules { get; }

    /// <summary>The pieces, joins and edges that the garment's fields ask for.</summary>
    public abstract Construction Construct(GarmentSpec garment);

    /// <summary>What a size's finished measure should be, by rule.</summary>
    /// <param name="measure">One that the construction names.</param>
    public abstract Length Target(GarmentMeasure measure, TargetContext size);

    /// <summary>The least finished measure that its wearers accept; null where any will do.</summary>
    public virtual Length? Floor(GarmentMeasure measure, TargetContext size) => null;

    /// <summary>Where the document asks for pieces of companion yarn, such as <c>sleeves.yarn</c>; null where it asks for none.</summary>
    public virtual string? PlainPiecesField => null;

    /// <summary>How a size's finished measures are held against the body that has to get in.</summary>
    public virtual ImmutableArray<WornFit> Worn(TargetContext size) => [];

    /// <summary>What has to pass through an opening, held against it as it is finished; null where nothing has to.</summary>
    public virtual WornFit? Passes(OpeningId opening, TargetContext size) => null;

    /// <summary>What is wrong with the garment whatever its sizes.</summary>
    public virtual ImmutableArray<Finding> Faults() => [];
}

/// <summary>What the rules of a size's targets can read.</summary>
/// <param name="Body">The size's body; of a garment that is not made to one, without measures.</param>
/// <param name="Step">Sizes above the base; below it, less than 0.</param>
/// <param name="Wearer">Whom the sizes are for.</param>
/// <param name="Finished">Measures of the pieces that are planned already.</param>
public sealed record TargetContext(BodyOfSize Body, int Step, Wearers Wearer, IReadOnlyDictionary<GarmentMeasure, Length> Finished);
