using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;

namespace Dyepath.Core.Instructions;

/// <summary>
/// A step of the making up in words, from its joins alone: which edges lie on each other, and from where to where they are sewn.
/// </summary>
internal sealed class SewingWords(PatternContext context, SewingStep step)
{
    private readonly ImmutableArray<Join> _joins = [.. step.Seams.Select(id => context.Construction.Joins.First(j => j.Id == id))];

    private bool Up => context.Plan.Direction == Direction.Up;

    /// <summary>Read only where the step has a seam.</summary>
    private Join First => _joins[0];

    /// <summary>What hangs from an edge is sewn on once the edge is edged.</summary>
    public bool IsAfterEdgings => step.Manner == SewingManner.HangFrom && !context.Plan.Sizes[0].Edgings.IsEmpty;

    public Phrase Say() => step.Manner switch
    {
        SewingManner.AroundOpening when _joins.Length == 1 =>
            Phrase.Of($"{Title()}: lay {Laid()}, outsides in. Sew the {PlaceNames.Of(First.Id)} from its outer edge to the mark of the {Opening()} opening, where it takes strain: sew there twice."),
        SewingManner.AroundOpening when IsCut() =>
            Phrase.Of($"{Title()}: lay {Laid()}, outsides in. Sew each from its outer edge to the {Opening()}. Both ends take strain: sew there twice."),
        SewingManner.AroundOpening =>
            Phrase.Of($"{Title()}: lay {Laid()}, outsides in. Sew from each outer edge to the marks of the {Opening()} opening. Both ends of the opening take strain: sew there twice.{Corners()}"),
        SewingManner.SetIn =>
            Phrase.Of($"{Title()}: lay {WorkedEdges.OfEach(Piece(First.Second[0]), First.Second[0].Side, Up)}, outsides in, between the two {Opening()} marks, its middle at the {Crossed()}{AtLap()}, and sew."),
        SewingManner.FromBottom => GoesOn() is { } further
            ? Phrase.Of($"{Title()}: sew {Meeting(First)} from {From()}{UpTo()}, and on along the underside of the {further} to the cuff.")
            : Phrase.Of($"{Title()}: sew {Meeting(First)} from {From()}{UpTo()}."),
        SewingManner.FromSeamsUp =>
            Phrase.Of($"{Title()}: sew the top of each {Piece(First.Second[0])}'s sides, above its own seam, to {Pieces(First, PieceId.Sleeve)} and {Pieces(_joins[1], PieceId.Sleeve)} above the side seams, {Meeting(First)}."),
        SewingManner.IntoCorners =>
            Phrase.Of($"{Title()}: lay the lower edge of the {Piece(_joins[0].Second[0])} along the {Opening()}'s lower edge, from its middle to its corner at the wearer's left, and its upright edge along the {Opening()}'s upright edge there up to the shoulder, its tip at the {SeamWords.One(SeamId.LeftShoulder)}, outsides in; sew both, eased evenly. Sew the {Piece(_joins[1].Second[0])} into the corner at the wearer's right in the same way. They meet in the middle of the lower edge: the slanted edges are the {Opening()}'s edge."),
        SewingManner.IntoCover => Phrase.Of($"Sides and lower edge: lay {Pieces(First)} together, outsides in. Sew these three sides, and leave the upper edge open."),
        SewingManner.AlongThreeSides =>
            Phrase.Of($"{Title()}: lay one long edge of the {Piece(First.Second[0])} down one side of the {Piece(First.First[0])}, along its lower edge and up its other side, outsides in, and sew, eased evenly. Sew the other long edge to the {Piece(_joins[1].First[0])} in the same way."),
        SewingManner.Between =>
            Phrase.Of($"{Title()}: sew one side of a {Piece(First.Second[0])} to the {Piece(First.First[0])}, between the marks of its side, and the other to the {Piece(_joins[1].First[0])} in the same way, outsides in, {Meeting(First)}. Sew the other {Piece(First.Second[0])} on at the other side."),
        SewingManner.HangFrom when IsAfterEdgings =>
            Phrase.Of($"Strap: lay each end of the strap inside what is sewn, as deep as the strap is wide, {Hanging()}, and sew all round the end."),
        SewingManner.HangFrom =>
            Phrase.Of($"Strap: turn what is sewn outside out. Lay each end of the strap inside it, as deep as the strap is wide, {Hanging()}, and sew all round the end."),
        SewingManner.CloseOver => Phrase.Plain("Turn the cover outside out, put the insert in, and sew the upper edge."),
        SewingManner.DrawTogether =>
            Phrase.Plain("Crown: run a doubled length of yarn along the upper edge, draw it tight, sew over the hole, and fasten off inside."),
        SewingManner.IntoTube => Phrase.Of($"{Title()}: lay {Both(First)} together, outsides in, and sew {Meeting(First)} into a tube."),
        _ => throw new InvalidOperationException($"No words for {step.Manner}."),
    };

    /// <summary>Such as <c>Shoulders</c>, or <c>Sides and sleeves</c>.</summary>
    private Phrase Title() => Phrase.Together(_joins.Select(j => SeamWords.Together(j.Id)).Distinct()
        .Select((title, i) => Phrase.Plain(i == 0 ? title : $"{char.ToLowerInvariant(title[0])}{title[1..]}")));

    private static Phrase Pieces(Join join, PieceId? without = null) =>
        Pieces(join.First.Concat(join.Second).Select(e => e.Piece).Where(p => p != without).Distinct().Order());

    private static Phrase Pieces(IEnumerable<PieceId> pieces) =>
        Phrase.Together(pieces.Select(p => Phrase.Plain(PlaceNames.Of(p))));

    /// <summary>Such as <c>front and back together</c>, or what has several pieces to the other side of it.</summary>
    private Phrase Laid()
    {
        var pieces = _joins.Select(j => j.First.Concat(j.Second).Select(e => e.Piece).Distinct().ToArray()).ToArray();
        var all = pieces.SelectMany(p => p).Distinct().Order().ToArray();
        if (all.Length == 2)
            return Phrase.Of($"{Pieces(First)} together");
        var common = all.Where(p => pieces.All(own => own.Contains(p))).ToArray();
        return Phrase.Of($"{Pieces(all.Except(common))} on the {Pieces(common)}");
    }

    /// <summary>Where an opening runs on to a front edge, a corner of the front is left over.</summary>
    private string Corners() => _joins.SelectMany(j => j.First.Concat(j.Second)).Any(e => e.Opening is { } id
        && context.Construction.GroupOf(e.Piece).Opening(id, e.Piece).At != OpeningAt.Middle)
        ? " The fronts' inner corners, from the marks to the front edges, stay free and fold outwards when the garment is worn."
        : "";

    private static string Piece(PieceEdge edge) => PlaceNames.Of(edge.Piece);

    /// <summary>Where the ends of a strap go.</summary>
    private string Hanging() => context.Pieces.Any(p => p.First.Id == PieceId.Gusset)
        ? "one in the middle of each end of the gusset"
        : "one over the top of each side seam";

    private string Opening() => PlaceNames.Of(First.First.Concat(First.Second).Select(e => e.Opening).OfType<OpeningId>().First());

    /// <summary>
    /// The seam at which a piece that is set in has its middle: the one that joins the pieces it is set into at the opening's end.
    /// </summary>
    private string Crossed()
    {
        var into = First.First.Select(e => e.Piece).ToArray();
        var crossed = context.Construction.Joins.First(j =>
            j.Sewn && j.First.Concat(j.Second).All(e => into.Contains(e.Piece) && e.Side == PieceSide.Top));
        return SeamWords.One(crossed.Id);
    }

    /// <summary>Where one of the two shoulders is buttoned, no seam marks the middle of its sleeve.</summary>
    private string AtLap() => Lap?.Id switch
    {
        SeamId.LeftShoulder => ", on the left at the edge of the band that is lapped there",
        SeamId.RightShoulder => ", on the right at the edge of the band that is lapped there",
        _ => "",
    };

    private Join? Lap => context.Construction.Joins.FirstOrDefault(j => j.Kind == JoinKind.Opening);

    /// <summary>
    /// What is worked and lapped once this step is done, so that the next one has an edge to go on over; null where nothing is.
    /// </summary>
    public Phrase? Then()
    {
        if (step.Manner != SewingManner.AroundOpening || Lap is null)
            return null;
        var band = context.Plan.Sizes[0].Edgings.FirstOrDefault(e => context.EdgesAt(e.Where) is { Closes: not null, Copies: 1 });
        if (band is null)
            return null;
        var closes = context.EdgesAt(band.Where).Closes!.Value;
        return Phrase.Of($"Wearer's {PlaceNames.Of(Lap.Id)}: work the {PlaceWords.Within(band.Where)}'s band now, as under Edgings. Lay it on the outside of the {PlaceNames.Of(closes.Buttons)}, and at the armhole sew its end down through both layers for 1 cm.");
    }

    private Phrase From() => First.First[0].Above is { } vent ? Phrase.Of($"the {PlaceNames.Of(vent)} marks") : Phrase.Plain(
        !First.First[0].Side.IsUpright() ? "one end"
        : First.First[0].Piece == PieceId.Sleeve ? "the cuff edge"
        : context.Construction.Edgings.Any(e => e.Place == Edgings.EdgingPlace.Hem) ? "the hem" : "the lower edge");

    private Phrase UpTo() => First.First[0].Opening is not { } opening ? Phrase.Plain(" to the other end")
        : IsCut() ? Phrase.Plain(opening == OpeningId.LegOpening ? " up to the leg openings" : " up to the armholes")
        : Phrase.Of($" up to the {PlaceNames.Of(opening)} marks");

    /// <summary>What it ends at is cut out of a piece, and needs no mark.</summary>
    private bool IsCut()
    {
        var edge = First.First.Concat(First.Second).First(e => e.Opening is not null);
        return context.Plan.Sizes[0][edge.Piece].Opening(edge.Opening!.Value).Into > 0;
    }

    /// <summary>The further piece along which the step goes on; null where there is none.</summary>
    private string? GoesOn() => _joins.Select(j => j.First[0].Piece == j.Second[0].Piece ? j.First[0] : null)
        .FirstOrDefault(edge => edge is not null && edge.Piece != First.First[0].Piece) is { } further ? Piece(further) : null;

    private bool AlongStitches(PieceEdge edge) => !edge.Side.IsUpright() == Up;

    /// <summary>Bands may be in some sizes only.</summary>
    private Phrase Meeting(Join join)
    {
        var edges = join.First.Concat(join.Second).ToArray();
        if (!edges.All(e => e.Side.IsUpright()))
            return Phrase.Plain(Edges(join));
        var banded = context.Plan.Sizes.Count(s => edges.All(e => s[e.Piece].SideBand is not null));
        return banded == 0 ? Phrase.Plain(Edges(join))
            : banded == context.Plan.Sizes.Length ? Phrase.Plain("band to band, stitch to stitch")
            : Phrase.Of($"{Edges(join)} (where there are side bands, band to band, stitch to stitch)");
    }

    private string Edges(Join join) => (AlongStitches(join.First[0]), AlongStitches(join.Second[0])) switch
    {
        (true, true) => "stitch to stitch",
        (false, false) => "row to row",
        _ => "row ends to stitches, eased evenly,",
    };

    private string Both(Join join) => AlongStitches(join.First[0]) ? "the first row and the last row" : "the two side edges";
}

/// <summary>What a side of a piece is called while it is worked.</summary>
internal static class WorkedEdges
{
    /// <param name="piece">Such as <c>sleeve</c>.</param>
    public static Phrase OfEach(string piece, PieceSide side, bool up) => (side, up) switch
    {
        (PieceSide.Top, true) or (PieceSide.Right, false) => Phrase.Of($"the last row of each {piece}"),
        (PieceSide.Bottom, true) or (PieceSide.Left, false) => Phrase.Of($"the first row of each {piece}"),
        (PieceSide.Left, true) or (PieceSide.Top, false) => Phrase.Of($"the edge of each {piece} where odd-numbered rows end"),
        _ => Phrase.Of($"the edge of each {piece} where odd-numbered rows begin"),
    };
}

/// <summary>Names of seams in running text.</summary>
internal static class SeamWords
{
    /// <summary>Seams that are sewn alike, under one heading.</summary>
    public static string Together(SeamId seam) => seam switch
    {
        SeamId.LeftSide or SeamId.RightSide => "Sides",
        SeamId.LeftShoulder or SeamId.RightShoulder => "Shoulders",
        SeamId.LeftArmhole or SeamId.RightArmhole or SeamId.LeftSleeve or SeamId.RightSleeve => "Sleeves",
        SeamId.BackSeam => "Back seam",
        SeamId.RoundJoin => "Join",
        SeamId.LeftSleeveFront or SeamId.LeftSleeveBack or SeamId.RightSleeveFront or SeamId.RightSleeveBack => "Sleeves to body",
        SeamId.LowerSeam or SeamId.UpperSeam => "Ends",
        SeamId.GussetToFront or SeamId.GussetToBack => "Gusset",
        SeamId.LeftTabFront or SeamId.LeftTabBack or SeamId.RightTabFront or SeamId.RightTabBack => "Tabs",
        SeamId.FrontOpening => "Front",
        SeamId.LeftInsert or SeamId.RightInsert => "Inserts",
    };

    /// <summary>One of them, whichever side it is on.</summary>
    public static string One(SeamId seam) => seam switch
    {
        SeamId.LeftSide or SeamId.RightSide => "side seam",
        SeamId.LeftShoulder or SeamId.RightShoulder => "shoulder seam",
        SeamId.LeftArmhole or SeamId.RightArmhole => "armhole",
        SeamId.LeftSleeve or SeamId.RightSleeve => "seam under the sleeve",
        SeamId.BackSeam => "back seam",
        SeamId.RoundJoin => "place where the rounds begin",
        SeamId.LeftSleeveFront or SeamId.LeftSleeveBack or SeamId.RightSleeveFront or SeamId.RightSleeveBack => "seam of a sleeve",
        SeamId.LowerSeam => "lower seam",
        SeamId.UpperSeam => "upper seam",
        SeamId.GussetToFront => "seam of gusset and front",
        SeamId.GussetToBack => "seam of gusset and back",
        SeamId.LeftTabFront or SeamId.RightTabFront => "seam of tab and front",
        SeamId.LeftTabBack or SeamId.RightTabBack => "seam of tab and back",
        SeamId.FrontOpening => "front opening",
        SeamId.LeftInsert or SeamId.RightInsert => "seam of an insert",
    };
}
