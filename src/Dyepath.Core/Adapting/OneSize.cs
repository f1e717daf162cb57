using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Adapting;

/// <summary>
/// One size of a pattern as a document of its own. Targets that a rule takes from the size's place among the others are written into it,
/// so that the size asks for the same alone.
/// </summary>
internal sealed class OneSize
{
    private const string AsPublished = "as the pattern has it";

    private readonly Plan _plan;
    private readonly SizePlan _size;
    private readonly ImmutableArray<FixedNumber> _own;
    private readonly ImmutableArray<FixedNumber> _targets;
    private readonly CancellationToken _cancel;

    /// <param name="plan">Of the whole pattern.</param>
    /// <param name="size">One of its sizes.</param>
    public OneSize(Plan plan, SizePlan size, CancellationToken cancel)
    {
        (_plan, _size, _cancel) = (plan, size, cancel);
        _own = [.. plan.Project.Sizes.Overrides.Where(o => o.Size == size.Name && o.Length is not null)];
        Project[] ways = [.. Counts().Select(Fixed), Alone([])];
        var alone = ways.Select(way => GarmentPlanner.Plan(way, cancel).Plan?.Sizes[0]).FirstOrDefault(s => s is not null);
        var moved = size.Target.Where(t => alone is null || !alone.Target.TryGetValue(t.Key, out var own) || own != t.Value);
        _targets = [.. moved.Where(t => Asked.Contains(t.Key) && _own.All(o => o.What != GarmentMeasures.Key(t.Key)))
            .Select(t => new FixedNumber(size.Name, GarmentMeasures.Key(t.Key), t.Value, null, AsPublished))];
        Project = Alone(_targets);
    }

    /// <summary>The size's document, whose counts are free.</summary>
    public Project Project { get; }

    /// <summary>
    /// The size worked as it is published, with something of the document changed: its plan, or null where no document of one size gives
    /// the published stitches, rows and beginnings.
    /// </summary>
    /// <param name="changed">Changes yarn and fabric, not the garment.</param>
    public Plan? AsWritten(Func<Project, Project> changed)
    {
        foreach (var way in (Project[])[Project, .. Counts().Select(counts => Fixed([.. _targets, .. counts]))])
        {
            if (GarmentPlanner.Plan(changed(way), _cancel).Plan is { } plan && IsSameWork(plan.Sizes[0]))
                return plan;
        }
        return null;
    }

    private IEnumerable<GarmentMeasure> Asked =>
        _plan.Construction.Asked.SelectMany(g => g.OpeningMeasures.Concat([g.Across.Measure, g.Down.Measure]));

    private Project Alone(ImmutableArray<FixedNumber> more)
    {
        var (project, sizes) = (_plan.Project, _plan.Project.Sizes);
        var named = project.Garment.Shape.IsToBody || !sizes.Sizes.IsEmpty;
        return project with
        {
            Sizes = sizes with
            {
                Sizes = sizes.Own.IsEmpty && named ? [_size.Name] : sizes.Sizes,
                Own = [.. sizes.Own.Where(o => o.Name == _size.Name)],
                Base = sizes.Base is null ? null : _size.Name,
                Locked = [],
                Overrides = [.. _own, .. more],
            },
            Edition = project.Edition with { Size = null },
        };
    }

    /// <summary>Counts that a document may fix: of every group, then of the first alone, which others may have to follow.</summary>
    private IEnumerable<ImmutableArray<FixedNumber>> Counts()
    {
        var groups = _plan.Construction.Asked.ToArray();
        foreach (var (ofStitches, ofRows) in new[] { (groups, groups), (groups[..1], groups), (groups, groups[..1]) })
        {
            yield return
            [
                .. ofStitches.SelectMany(g => Of(g, FixedCounts.Stitches(g))), .. ofRows.SelectMany(g => Of(g, FixedCounts.Rows(g))),
            ];
        }
    }

    private IEnumerable<FixedNumber> Of(PieceGroup group, string what)
    {
        if (FixedCounts.Find(what) is not { } count || _size.Find(group.Pieces[0].Id) is not { } piece)
            yield break;
        yield return new FixedNumber(_size.Name, what, null, count.IsStitches ? Widest(piece) : piece.Rows, AsPublished);
    }

    /// <summary>Stitches of a piece's widest row, which a document fixes.</summary>
    internal static int Widest(PiecePlan piece) => piece.Shape?.WidestRow ?? piece.Taper?.Stitches ?? piece.Stitches;

    private Project Fixed(ImmutableArray<FixedNumber> numbers)
    {
        var project = Alone(numbers);
        var garment = project.Garment;
        return project with
        {
            Garment = garment with
            {
                Direction = garment.Working == Working.Turned ? _plan.Direction : garment.Direction,
                Edgings = [.. garment.Edgings.Select(e => e with
                {
                    Rounds = _size.Edgings.FirstOrDefault(p => p.Where == e.Where)?.Rounds ?? e.Rounds, Fewest = null, Most = null,
                })],
                Starts = _size.Pieces.Where(p => p.Pooled).GroupBy(p => p.Name)
                    .ToImmutableSortedDictionary(p => p.Key, p => (int)Math.Round(p.First().Start)),
            },
        };
    }

    private bool IsSameWork(SizePlan other) =>
        _size.Pieces.Length == other.Pieces.Length && _size.Edgings.Length == other.Edgings.Length
        && _size.Pieces.Zip(other.Pieces).All(p => IsSameWork(p.First, p.Second))
        && _size.Edgings.Zip(other.Edgings).All(e => (e.First.Where, e.First.Rounds) == (e.Second.Where, e.Second.Rounds));

    private static bool IsSameWork(PiecePlan one, PiecePlan other) =>
        (one.Id, one.Stitches, one.Rows, one.WrongSideOut) == (other.Id, other.Stitches, other.Rows, other.WrongSideOut)
        && one.RowStitches.SequenceEqual(other.RowStitches) && Math.Abs(one.Start - other.Start) < 1e-6
        && (one.Shape, other.Shape) switch
        {
            (null, null) => true,
            ({ } a, { } b) => a.Parts.Length == b.Parts.Length
                && a.Parts.Zip(b.Parts).All(p => p.First.Outline.Runs.SequenceEqual(p.Second.Outline.Runs)),
            _ => false,
        };
}
