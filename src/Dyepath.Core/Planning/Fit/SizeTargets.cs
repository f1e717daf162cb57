using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Booklets;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Planning;

/// <summary>Finished targets of a garment's sizes by its rules, as worn, edgings and all, and what the designer fixed.</summary>
internal sealed class SizeTargets
{
    private readonly GarmentShape _shape;

    private SizeTargets(GarmentShape shape, BodySizes sizes, FixedNumbers numbers, Units units) =>
        (_shape, Sizes, Fixed, Units) = (shape, sizes, numbers, units);

    public BodySizes Sizes { get; }

    public FixedNumbers Fixed { get; private init; }

    /// <summary>That findings speak in.</summary>
    public Units Units { get; }

    public int Count => Sizes.Sizes.Length;

    public string Name(int size) => Sizes.Sizes[size].Name;

    public static bool TryFind(
        Project project, Construction construction, [NotNullWhen(true)] out SizeTargets? targets, out ImmutableArray<Finding> faults)
    {
        targets = null;
        var shape = project.Garment.Shape;
        if (!BodySizes.TryRead(project.Sizes, shape.Needs, shape.Wishes, out var sizes, out faults))
            return false;
        var numbers = new FixedNumbers(project.Sizes, sizes.Sizes[sizes.Base].Name);
        faults = [.. numbers.Faults([.. sizes.Sizes.Select(s => s.Name)], Measures(construction), Counts(construction)), .. shape.Faults()];
        if (!faults.IsEmpty)
            return false;
        targets = new SizeTargets(shape, sizes, numbers, project.Edition.Units);
        faults = [.. targets.Nothing(construction)];
        return faults.IsEmpty;
    }

    /// <summary>As seen from another direction than the one that counts were fixed for: there they mean nothing.</summary>
    public SizeTargets MeasuresOnly() => new(_shape, Sizes, Fixed.MeasuresOnly(), Units);

    /// <summary>A measure's targets, one a size, moved to what was made and overridden.</summary>
    /// <param name="finished">Measures of each size's pieces that are planned already.</param>
    /// <param name="made">The base's measure by its locked count.</param>
    public ImmutableArray<Length> Of(
        GarmentMeasure measure, IReadOnlyList<IReadOnlyDictionary<GarmentMeasure, Length>> finished, Length? made = null) =>
        Fixed.Apply(measure, Sizes, [.. Sizes.Sizes.Select((size, i) => ByRule(measure, size, i, finished[i]))], made);

    /// <summary>Measures of what is planned first that come to nothing.</summary>
    private IEnumerable<Finding> Nothing(Construction construction)
    {
        var none = Sizes.Sizes.Select(_ => new Dictionary<GarmentMeasure, Length>()).ToArray();
        foreach (var dimension in new[] { construction.Groups[0].Across, construction.Groups[0].Down })
        {
            foreach (var (target, i) in Of(dimension.Measure, none).Select((t, i) => (t, i)).Where(t => t.t <= Length.Zero))
            {
                yield return new Finding(FindingLevel.Fault, "garment", FormattableString.Invariant(
                    $"Size {Name(i)} would have {GarmentMeasures.One(dimension.Measure)} of {Wording.Fine(target, Units)}: give it more."));
            }
        }
    }

    /// <summary>The least of a measure that is accepted, one a size, never over its target; <c>default</c> where anything is.</summary>
    public ImmutableArray<Length> Floors(
        GarmentMeasure measure, ImmutableArray<Length> targets, IReadOnlyList<IReadOnlyDictionary<GarmentMeasure, Length>> finished)
    {
        var floors = Sizes.Sizes.Select((size, i) => _shape.Floor(measure, Context(size, i, finished[i]))).ToArray();
        return floors.Any(f => f is null) ? default : [.. floors.Zip(targets, (f, t) => Length.Min(f!.Value, t))];
    }

    /// <summary>A size that is the designer's own may give a measure of a garment that is not made to the body.</summary>
    private Length ByRule(GarmentMeasure measure, BodyOfSize size, int at, IReadOnlyDictionary<GarmentMeasure, Length> finished) =>
        !_shape.IsToBody && size.Measures.TryGetValue(GarmentMeasures.Key(measure), out var own)
            ? own
            : _shape.Target(measure, Context(size, at, finished));

    private TargetContext Context(BodyOfSize size, int at, IReadOnlyDictionary<GarmentMeasure, Length> finished) =>
        new(size, at - Sizes.Base, Sizes.Wearer, finished);

    /// <summary>How a size's finished measures are held against its body.</summary>
    public ImmutableArray<WornFit> Worn(int size, IReadOnlyDictionary<GarmentMeasure, Length> finished) =>
        _shape.Worn(Context(Sizes.Sizes[size], size, finished));

    /// <summary>False where what has to pass through an opening does not.</summary>
    public bool Passes(int size, OpeningId opening, IReadOnlyDictionary<GarmentMeasure, Length> finished) =>
        _shape.Passes(opening, Context(Sizes.Sizes[size], size, finished)) is not { Holds: false };

    private static GarmentMeasure[] Measures(Construction construction) =>
        [.. construction.Asked.SelectMany(g => g.OpeningMeasures.Concat([g.Across.Measure, g.Down.Measure])).Distinct().Order()];

    private static string[] Counts(Construction construction) =>
        [.. construction.Asked.SelectMany(g => (string[])[FixedCounts.Stitches(g), FixedCounts.Rows(g)])];
}
