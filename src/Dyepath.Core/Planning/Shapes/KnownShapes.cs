using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Limits;
using Dyepath.Core.Shaping;

namespace Dyepath.Core.Planning;

/// <summary>
/// Shapes planned so far with one yarn and stitch: widths, let-offs, leans and remedies are tried by turns, and most of them ask again for
/// a shape that another asked for.
/// </summary>
internal sealed class KnownShapes
{
    private readonly Dictionary<Asked, ShapePlan?> _plans = new(new SameShape());
    private readonly Dictionary<ShapePlan, CutOutline> _outlines = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<CutOutline, CutOutline> _mirrored = new(ReferenceEqualityComparer.Instance);

    /// <inheritdoc cref="ShapePlanner.Plan"/>
    public ShapePlan? Plan(SteadyPanel panel, ImmutableArray<SilhouettePart> silhouette, ShapeOptions options, Effort effort)
    {
        var asked = new Asked(panel, silhouette, options);
        if (!_plans.TryGetValue(asked, out var plan))
            _plans[asked] = plan = ShapePlanner.Plan(panel, silhouette, options, effort);
        return plan;
    }

    /// <summary>The outline of the nearest shape within tolerance; null where none is worked.</summary>
    public CutOutline? Outline(SteadyPanel panel, ImmutableArray<SilhouettePart> silhouette, ShapeOptions options, Effort effort)
    {
        if (Plan(panel, silhouette, options, effort) is not { } plan)
            return null;
        if (!_outlines.TryGetValue(plan, out var outline))
            _outlines[plan] = outline = new CutOutline(panel.Units, []).Of((plan.Nearer ?? plan).Piece);
        return outline;
    }

    /// <inheritdoc cref="MirroredSides.Of"/>
    /// <param name="outline">As <see cref="Outline"/> gave it.</param>
    public CutOutline Mirrored(SteadyPanel panel, CutOutline outline)
    {
        if (!_mirrored.TryGetValue(outline, out var mirrored))
            _mirrored[outline] = mirrored = MirroredSides.Of(panel, outline);
        return mirrored;
    }

    private readonly record struct Asked(SteadyPanel Panel, ImmutableArray<SilhouettePart> Silhouette, ShapeOptions Options);

    private sealed class SameShape : IEqualityComparer<Asked>
    {
        public bool Equals(Asked x, Asked y) =>
            x.Panel.Units == y.Panel.Units && x.Panel.Options == y.Panel.Options && x.Options == y.Options
            && x.Silhouette.AsSpan().SequenceEqual(y.Silhouette.AsSpan(), Parts.Instance);

        public int GetHashCode([DisallowNull] Asked asked)
        {
            var hash = new HashCode();
            hash.Add(asked.Panel.Units);
            hash.Add(asked.Panel.Options);
            hash.Add(asked.Options);
            foreach (var part in asked.Silhouette)
                hash.Add(part, Parts.Instance);
            return hash.ToHashCode();
        }
    }

    private sealed class Parts : IEqualityComparer<SilhouettePart>
    {
        public static Parts Instance { get; } = new();

        public bool Equals(SilhouettePart? x, SilhouettePart? y) =>
            x is not null && y is not null && (x.FirstRow, x.Rows, x.Below) == (y.FirstRow, y.Rows, y.Below)
            && x.Held.AsSpan().SequenceEqual(y.Held.AsSpan())
            && x.Right.Points.AsSpan().SequenceEqual(y.Right.Points.AsSpan())
            && x.Left.Points.AsSpan().SequenceEqual(y.Left.Points.AsSpan());

        public int GetHashCode([DisallowNull] SilhouettePart part)
        {
            var hash = new HashCode();
            hash.Add((part.FirstRow, part.Rows, part.Below));
            foreach (var point in part.Right.Points.AsSpan())
                hash.Add(point);
            foreach (var point in part.Left.Points.AsSpan())
                hash.Add(point);
            return hash.ToHashCode();
        }
    }
}
