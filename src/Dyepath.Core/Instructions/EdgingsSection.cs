using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;
using Dyepath.Core.Sizing;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions;

/// <summary>Every edging: where it begins, how many stitches are picked up and how they are spread, its rounds and its chart.</summary>
internal static class EdgingsSection
{
    public static Section? Write(PatternContext context)
    {
        var plans = context.Plan.Sizes[0].Edgings;
        if (plans.IsEmpty)
            return null;
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.Add(new Paragraph(Counted(context)));
        var shown = new Dictionary<string, string>();
        for (var i = 0; i < plans.Length; i++)
        {
            var at = i;
            var plan = plans[at];
            var edging = EdgingLibrary.Find(plan.Edging);
            var place = PlaceWords.Of(plan.Where);
            blocks.Add(new Subheading(Phrase.Of($"{place}{(plan.Copies == 1 ? "" : $" (work {plan.Copies})")}: {edging.Name}")));
            blocks.Add(new Steps(Starts(context, at)));
            blocks.AddRange(PickUpRules(context, at));
            if (shown.TryGetValue(plan.Edging, out var before))
            {
                blocks.Add(new Paragraph(Phrase.Plain($"Work the {(edging.InRows ? "rows" : "rounds")} as for the {before}.")));
                continue;
            }
            shown.Add(plan.Edging, place.ToLowerInvariant());
            var steps = InOrder(context, at, [.. edging.StepsOver(Rounds(context, plan.Edging))]);
            blocks.Add(new Steps([.. steps.Concat(Finishing(context, edging)).Select(step => step with { Text = Sentence(step.Text) })]));
            blocks.Add(new Figure(
                edging.Chart,
                Sentence(Phrase.Of($"{edging.Name} in the standard symbols{Drawn(context, edging)}.")),
                Phrase.Plain("The steps above say the same in words.")));
        }
        return new Section("edgings", Phrase.Plain("Edgings"), blocks.ToImmutable());
    }

    /// <summary>How much is drawn, where other numbers of rounds are worked.</summary>
    private static string Drawn(PatternContext context, Edging edging)
    {
        var drawn = edging.Chart.Rows.Length;
        return edging.Across || Rounds(context, edging.Id).All(rounds => rounds == drawn) ? ""
            : FormattableString.Invariant($", drawn over {drawn} {(edging.InRows ? "row" : "round")}{(drawn == 1 ? "" : "s")}{(edging.Folded ? ", its fold halfway" : "")}: work as many as are said");
    }

    /// <summary>The gauge that stitches are picked up by, and what to do where a maker's is another.</summary>
    private static Phrase Counted(PatternContext context)
    {
        var over = context.Project.Fabric.Swatch.Worked.Over;
        var (width, isMeasured) = (context.Plan.EdgingGauge.StitchWidth, context.Plan.EdgingGauge.IsMeasured);
        var stitches = MaterialsSection.Number(Math.Round(over / width, 1));
        return Phrase.Of(
            $"{(isMeasured ? "The edgings' swatch has" : "No swatch was made of the edgings: they are taken to come out a little closer than the fabric, with")} {stitches} {new Term("sc")} over {over}. They are picked up by the simple rule that comes nearest, such as 1 in each row end. Where yours pulls the edge in, pick up more stitches, where it ripples, fewer, and keep to the edging's multiple.{new LeftHanded(Phrase.Plain(" Left-handed, you go along every edge the other way: begin each at its other end, and take what is named along it in the reverse order."))}");
    }

    /// <summary>
    /// The rounds or rows as they are worked; where one of them has buttonholes, those before and after it beside their numbers.
    /// </summary>
    private static ImmutableArray<Instruction> InOrder(PatternContext context, int at, ImmutableArray<Instruction> steps)
    {
        var buttons = new ButtonWords(context, at);
        if (buttons.HoleRow() is not { } holes)
            return steps;
        var rows = context.Each(s => s.Edgings[at].Rounds);
        if (!rows.IsSame || steps is not [var first, var further])
            return steps.Add(holes);
        var (hole, last) = (buttons.Row.Values[0], rows.Values[0]);
        return [first, .. Between(2, hole - 1), holes, .. Between(hole + 1, last)];

        IEnumerable<Instruction> Between(int from, int to)
        {
            if (from <= to)
                yield return further with { Label = Phrase.Plain(FormattableString.Invariant($"{(from == to ? $"Row {from}" : $"Rows {from} to {to}")}")) };
        }
    }

    /// <summary>Wherever it goes, since its steps are said once.</summary>
    private static int[] Rounds(PatternContext context, string edging) =>
        [.. context.Plan.Sizes.SelectMany(s => s.Edgings).Where(e => e.Edging == edging).Select(e => e.Rounds).Distinct()];

    /// <summary>What is done once, after the rounds.</summary>
    public static IEnumerable<Instruction> Finishing(PatternContext context, Edging edging) =>
        edging.ForChildren is { } besides && (context.Wearers & ~Wearers.Adult) != 0 ? [.. edging.Finishing, besides] : edging.Finishing;

    /// <summary>Yarn, stitches picked up and rounds of one edging.</summary>
    /// <param name="at">Its index in every size.</param>
    public static ImmutableArray<Instruction> Starts(PatternContext context, int at)
    {
        var rounds = context.Each(s => s.Edgings[at].Rounds);
        var edging = EdgingLibrary.Find(context.Plan.Sizes[0].Edgings[at].Edging);
        var one = edging.InRows ? "row" : "round";
        return
        [
            new Instruction(Phrase.Plain("Yarn"), Phrase.Of($"{context.YarnFor(CompanionUse.Edgings)}, joined with the {Facing(context)} facing {Beginning(context, context.Plan.Sizes[0].Edgings[at].Where)}.")),
            new Instruction(Phrase.Plain("Pick up"), Phrase.Of($"{context.Each(s => s.Edgings[at].PickUp)} stitches in all{Others(context, at)}, as said below.{(context.Construction.Joins.Any(j => j.Sewn) ? " What lies inside a seam is not counted." : "")}")),
            new Instruction(Phrase.Plain("Work"), Phrase.Of($"{rounds} {(rounds.IsSame && rounds.Values[0] == 1 ? one : one + "s")}, about {context.Each(s => s.Edgings[at].Depth)} deep{(edging.Folded ? Phrase.Of($" once folded; the fold runs along the top of round {context.Each(s => Edging.FoldRound(s.Edgings[at].Rounds))}") : Phrase.Empty)}. Then fasten off.")),
            .. Corners(context, at),
            .. Widths(context, at, edging),
            .. Order(context, at),
            .. new ButtonWords(context, at).Said(),
        ];
    }

    /// <summary>How many the other one of a pair takes, where it is another number.</summary>
    private static Phrase Others(PatternContext context, int at) =>
        context.Plan.Sizes.All(s => (s.Edgings[at].Unlike ?? s.Edgings[at].Spread).Total == s.Edgings[at].PickUp) ? Phrase.Empty
            : Phrase.Of($", {context.Each(s => (s.Edgings[at].Unlike ?? s.Edgings[at].Spread).Total)} on the other");

    /// <summary>What keeps it flat where the edge turns: said where rounds can widen and narrow.</summary>
    private static IEnumerable<Instruction> Corners(PatternContext context, int at)
    {
        var edgings = context.Plan.Sizes.Select(s => s.Edgings[at]).ToArray();
        var one = EdgingLibrary.Find(edgings[0].Edging).InRows ? "row" : "round";
        var when = Phrase.Of($"In every {one} of {new Term("sc")} {(EdgingLibrary.Find(edgings[0].Edging).Multiple == 1 ? "after the first" : "between the first and the last")}");
        var outer = context.Each(s => s.Edgings[at].Corners.Outer);
        var named = context.EdgesAt(edgings[0].Where).PerCorner == 0;
        if (outer.Values.Any(n => n > 0))
            yield return new Instruction(Phrase.Plain(named ? "Outer corners" : "Corners"), Phrase.Of(
                $"{Marked()} {when} work 3 {new Term("sc")} in it, so that the corner lies flat, and mark the middle one of them: {context.Each(s => 2 * s.Edgings[at].Corners.Outer)} stitches more each time."));
        var inner = context.Each(s => s.Edgings[at].Corners.Inner);
        if (inner.Values.Any(n => n > 0))
            yield return new Instruction(Phrase.Plain("Inner corners"), Phrase.Of(
                $"Mark the stitch picked up last before {Each(inner, "inner")}. {when} work {new Term("sc3tog")} over it and the stitches beside it, so that the corner lies flat, and mark that: {context.Each(s => 2 * s.Edgings[at].Corners.Inner)} stitches fewer each time."));
        if (edgings.Any(e => e.PerRound != 0))
            yield return new Instruction(Phrase.Plain("Count"), Phrase.Of($"{context.Each(s => s.Edgings[at].LastCount)} stitches in the last {one}."));

        Phrase Marked() => named
            ? Phrase.Of($"Mark the stitch picked up last before {Each(outer, "outer")}.")
            : Phrase.Of($"Work what is extra at each of the {outer} corners into the last place before it, and mark the middle one of the stitches there.");

        static Phrase Each(PerSize<int> corners, string kind) => corners.IsSame && corners.Values[0] == 1
            ? Phrase.Plain($"the {kind} corner") : Phrase.Of($"each of the {corners} {kind} corners");
    }

    /// <summary>Why a band comes after the edgings whose ends it goes over.</summary>
    private static IEnumerable<Instruction> Order(PatternContext context, int at)
    {
        var (before, after) = context.EdgesAt(context.Plan.Sizes[0].Edgings[at].Where).Over;
        string[] under =
        [
            .. context.Plan.Sizes[0].Edgings.Select(e => e.Where).Where(p => p == before || p == after).Select(PlaceWords.Within),
        ];
        if (under.Length > 0)
            yield return new Instruction(Phrase.Plain("When"), Phrase.Plain(
                $"After the {string.Join(" and the ", under)}: the bands go over {(under.Length > 1 ? "their" : "its")} ends too, so that the fronts close from end to end."));
    }

    /// <summary>What an edging that draws in makes of the edge.</summary>
    private static IEnumerable<Instruction> Widths(PatternContext context, int at, Edging edging)
    {
        if (edging.Relaxed >= 1)
            yield break;
        yield return new Instruction(Phrase.Plain("Width"), Phrase.Of(
            $"The edge is {context.Each(s => s.Edgings[at].Edge)} long; edged it is about {context.Each(s => s.Edgings[at].RelaxedWidth)} at rest and stretches to {context.Each(s => s.Edgings[at].StretchedWidth)}."));
        if (edging.ElasticShare is not { } usual)
            yield break;
        yield return new Instruction(Phrase.Plain("Elastic to cut"), Notions.Elastic(context.Plan, at) is { } elastic
            ? Phrase.Of($"About {elastic}, its overlap included.")
            : Phrase.Of($"About {MaterialsSection.Number(Math.Round(100 * (context.Construction.ShareAt(context.Plan.Sizes[0].Edgings[at].Where) ?? usual)))} % of the body's girth at this edge, and {Edging.ElasticOverlap} more for the overlap."));
    }

    /// <summary>A piece that was turned over has the wrong side of its rows outside.</summary>
    private static string Facing(PatternContext context) => context.HasTurnedOver ? "outside" : "right side";

    private static Phrase Beginning(PatternContext context, EdgingPlace place)
    {
        var edge = context.EdgesAt(place);
        // Seen from outside and worked from right to left, the one front's edge runs up and the other's down.
        if (edge is { Closes: not null, Copies: 1 })
            return Phrase.Of($"at the armhole end of the wearer's {EdgeWords.Of(edge.Edges[0].Id)}, {Along(context, edge)}");
        if (edge.Closes is not null)
            return Phrase.Plain($"at the lower end of the {PlaceNames.Of(PieceId.RightFront)}'s front edge and, for the other band, at the neck end of the {PlaceNames.Of(PieceId.LeftFront)}'s");
        if (edge.OpensAt is { } opens)
            return Phrase.Plain(PlaceWords.At(opens));
        if (edge.Begins is not { } seam)
            return Phrase.Of($"at the {new Side(false)}-hand end of the {EdgeWords.Of(edge.Edges[0].Id)}");
        if (edge.Copies == 1 && seam is SeamId.LeftSide or SeamId.LeftShoulder or SeamId.RightSide or SeamId.RightShoulder)
            return Phrase.Plain($"at the wearer's {(seam is SeamId.LeftSide or SeamId.LeftShoulder ? "left" : "right")} {SeamWords.One(seam)}");
        if (edge.Copies == 1 && seam == SeamId.LeftSleeveFront)
            return Phrase.Plain("at the seam of the wearer's left sleeve and the front");
        // A pair of edges has a seam each.
        return Phrase.Plain($"at {(context.Construction.Joins.Count(j => SeamWords.One(j.Id) == SeamWords.One(seam)) > 1 && edge.Copies == 1 ? "a" : "the")} {SeamWords.One(seam)}");
    }

    /// <summary>The rows or the stitches of a piece that an open edge runs along, as its maker counted them.</summary>
    private static Phrase Along(PatternContext context, EdgingEdge edge)
    {
        var opened = context.Construction.Joins
            .First(j => j.Kind == JoinKind.Opening && j.First.Any(e => e.Piece == edge.Edges[0].Edge.Piece));
        return Run(context.Plan.Sizes[0]).AlongStitches
            ? Phrase.Of($"over {context.Each(s => Run(s).Count)} stitches of its last row")
            : Phrase.Of($"along its rows {context.Each(s => Ends(s).First)} to {context.Each(s => Ends(s).Last)}");

        EdgeRun Run(SizePlan size) => size.Seams.First(seam => seam.Id == opened.Id).First[0];

        (int First, int Last) Ends(SizePlan size)
        {
            var (run, piece) = (Run(size), size[Run(size).Piece]);
            return piece.WrongSideOut
                ? (piece.Rows - run.From - run.Count + 1, piece.Rows - run.From)
                : (run.From + 1, run.From + run.Count);
        }
    }

    /// <summary>
    /// One rule with size lists where the sizes differ in its numbers alone, a remainder of none among them said as 0; otherwise a rule
    /// for each group of sizes.
    /// </summary>
    private static IEnumerable<Block> PickUpRules(PatternContext context, int at)
    {
        var edgings = context.Plan.Sizes.Select(s => s.Edgings[at]).ToArray();
        IEnumerable<Block> said = Rules(context, "", [.. edgings.Select(e => e.Spread)]);
        return edgings.All(e => e.Unlike is null) ? said
            : said.Concat(Rules(context, OtherOf(context.EdgesAt(edgings[0].Where)), [.. edgings.Select(e => e.Other ?? e.Spread)]));
    }

    /// <summary>Before the rule of the other one of a pair.</summary>
    internal static string OtherOf(EdgingEdge edge) => edge.Closes is { } closes ? $"{PlaceNames.Of(closes.Buttons)}, " : "at the wearer's right, ";

    private static IEnumerable<Block> Rules(PatternContext context, string lead, ImmutableArray<PickUp> sizes)
    {
        if (PickUpWords.Shared(sizes, withRests: false) is { } shared)
        {
            yield return new Bullets([Phrase.Of($"{lead}{shared}")]);
            yield break;
        }
        if (PickUpWords.Shared(sizes, withRests: true) is { } withRests)
        {
            var own = new InOneSize(new Phrase([new WordChoice(new([.. sizes.Select(PickUpWords.Text)]))]));
            yield return new Bullets([Phrase.Of($"{lead}{new InAllSizes(withRests)}{own}")]);
            yield break;
        }
        foreach (var group in context.Plan.Sizes.Zip(sizes, (s, own) => (s.Name, Text: PickUpWords.Text(own))).GroupBy(s => s.Text))
        {
            var names = group.Select(s => s.Name).ToImmutableArray();
            yield return new ForSizes(names,
            [
                new Bullets([Phrase.Of($"{PatternContext.Lead(names)}{lead}{group.Key}")]),
            ]);
        }
    }

    /// <summary>Begins with a capital.</summary>
    public static Phrase Sentence(Phrase phrase) => phrase.Parts[0] switch
    {
        Term term => phrase with { Parts = phrase.Parts.SetItem(0, new Term(Wording.Capital(term.Us))) },
        Words words when words.Text.Length > 0 =>
            phrase with { Parts = phrase.Parts.SetItem(0, new Words(Wording.Capital(words.Text))) },
        Nested nested => phrase with { Parts = phrase.Parts.SetItem(0, new Nested(Sentence(nested.Content))) },
        _ => phrase,
    };
}
