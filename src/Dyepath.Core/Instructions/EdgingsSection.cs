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
        var shown = new Dictionary<string, string>();
        for (var i = 0; i < plans.Length; i++)
        {
            var at = i;
            var plan = plans[at];
            var edging = EdgingLibrary.Find(plan.Edging);
            var place = PlaceWords.Of(plan.Where);
            blocks.Add(new Subheading(plan.Copies == 1
                ? Phrase.Of($"{place}: {edging.Name}") : Phrase.Of($"{Phrase.Of($"{place} (work {plan.Copies})")}: {edging.Name}")));
            blocks.AddRange(Begun(context, at));
            blocks.AddRange(PickUpRules(context, at));
            if (shown.TryGetValue(plan.Edging, out var before))
            {
                blocks.Add(new Paragraph(edging.InRows ? Phrase.Of($"Work the rows as for the {before}.") : Phrase.Of($"Work the rounds as for the {before}.")));
                continue;
            }
            shown.Add(plan.Edging, place.ToLowerInvariant());
            var steps = InOrder(context, at, [.. edging.StepsOver(Rounds(context, plan.Edging))]);
            blocks.Add(new Steps([.. steps.Concat(Finishing(context, edging)).Select(step => step with { Text = Sentence(step.Text) })]));
            blocks.Add(new Figure(
                edging.Chart,
                Drawn(context, edging),
                Phrase.Plain("The steps above say the same in words.")));
        }
        var counted = blocks.Any(HasDash)
            ? Phrase.Of($"{Counted(context)}{new InAllSizes(Phrase.Plain(" A dash (–) stands where a size has none."))}") : Counted(context);
        return new Section("edgings", Phrase.Plain("Edgings"), [new Paragraph(counted), .. blocks]);
    }

    private static bool HasDash(Block block) => block switch
    {
        Bullets bullets => bullets.Items.Any(HasDash),
        Steps steps => steps.Items.Any(step => HasDash(step.Text)),
        ForSizes some => some.Blocks.Any(HasDash),
        _ => false,
    };

    private static bool HasDash(Phrase phrase) => phrase.Leaves.Any(part => part switch
    {
        Count { NoneIsDash: true } count => count.Values.Values.Contains(0),
        InAllSizes many => HasDash(many.Content),
        _ => false,
    });

    /// <summary>As they are done, what not every size has to those that have it.</summary>
    private static IEnumerable<Block> Begun(PatternContext context, int at)
    {
        var corners = Corners(context, at).Where(c => c.In.Values.Contains(0)).ToDictionary(c => c.Said, c => c.In);
        var together = new List<Instruction>();
        foreach (var said in Starts(context, at))
        {
            if (!corners.TryGetValue(said, out var some))
            {
                together.Add(said);
                continue;
            }
            yield return new Steps([.. together]);
            together.Clear();
            yield return new ForSizes(
                [.. context.Plan.Sizes.Zip(some.Values).Where(s => s.Second > 0).Select(s => s.First.Name)], [new Steps([said])]);
        }
        if (together.Count > 0)
            yield return new Steps([.. together]);
    }

    /// <summary>And how much is drawn, where other numbers of rounds are worked.</summary>
    private static Phrase Drawn(PatternContext context, Edging edging)
    {
        var (name, drawn) = (Sentence(edging.Name), edging.Chart.Rows.Length);
        if (edging.Across || Rounds(context, edging.Id).All(rounds => rounds == drawn))
            return Phrase.Of($"{name} in the standard symbols.");
        var over = Many(edging, new PerSize<int>([drawn]));
        return edging.Folded
            ? Phrase.Of($"{name} in the standard symbols, drawn over {over}, its fold halfway: work as many as are said.")
            : Phrase.Of($"{name} in the standard symbols, drawn over {over}: work as many as are said.");
    }

    /// <summary>The gauge that stitches are picked up by, and what to do where a maker's is another.</summary>
    private static Phrase Counted(PatternContext context)
    {
        var over = context.Project.Fabric.Swatch.Worked.Over;
        var (width, isMeasured) = (context.Plan.EdgingGauge.StitchWidth, context.Plan.EdgingGauge.IsMeasured);
        var stitches = Math.Round(over / width, 1);
        var has = isMeasured
            ? Phrase.Of($"The edgings' swatch has {stitches} {new Term("sc")} over {over}.")
            : Phrase.Of($"No swatch was made of the edgings: they are taken to come out a little closer than the fabric, with {stitches} {new Term("sc")} over {over}.");
        var left = new LeftHanded(Phrase.Plain(
            " Left-handed, you go along every edge the other way: begin each at its other end, and take what is named along it in the reverse order."));
        return Phrase.Of(
            $"{has} {Phrase.Plain("They are picked up by the simple rule that comes nearest, such as 1 in each row end. Where yours pulls the edge in, pick up more stitches, where it ripples, fewer, and keep to the edging's multiple.")}{left}");
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
                yield return further with { Label = from == to ? Phrase.Of($"Row {from}") : Phrase.Of($"Rows {from} to {to}") };
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
        var (pickUp, others) = (context.Each(s => s.Edgings[at].PickUp), Others(context, at));
        var inAll = others is null
            ? Phrase.Of($"{pickUp} stitches in all, as said below.") : Phrase.Of($"{pickUp} stitches in all, {others} on the other, as said below.");
        var inside = context.Construction.Joins.Any(j => j.Sewn) ? " What lies inside a seam is not counted." : "";
        return
        [
            new Instruction(Phrase.Plain("Yarn"), Joined(context, context.Plan.Sizes[0].Edgings[at].Where)),
            new Instruction(Phrase.Plain("Pick up"), Phrase.Of($"{inAll}{inside}")),
            new Instruction(Phrase.Plain("Work"), Depth(context, at, edging)),
            .. Corners(context, at).Select(c => c.Said),
            .. Count(context, at, edging),
            .. Widths(context, at, edging),
            .. Order(context, at),
            .. new ButtonWords(context, at).Said(),
        ];
    }

    /// <summary>How many rounds, and how deep they are.</summary>
    private static Phrase Depth(PatternContext context, int at, Edging edging)
    {
        var many = Many(edging, context.Each(s => s.Edgings[at].Rounds));
        var depth = context.Each(s => s.Edgings[at].Depth);
        return edging.Folded
            ? Phrase.Of($"{many}, about {depth} deep once folded; the fold runs along the top of round {context.Each(s => Edging.FoldRound(s.Edgings[at].Rounds))}. Then fasten off.")
            : Phrase.Of($"{many}, about {depth} deep. Then fasten off.");
    }

    /// <summary>Such as <c>5 rounds</c>, or of what is worked back and forth <c>5 rows</c>.</summary>
    private static Phrase Many(Edging edging, PerSize<int> rounds) => (edging.InRows, rounds.IsSame && rounds.Values[0] == 1) switch
    {
        (true, true) => Phrase.Of($"{rounds} row"),
        (true, false) => Phrase.Of($"{rounds} rows"),
        (false, true) => Phrase.Of($"{rounds} round"),
        (false, false) => Phrase.Of($"{rounds} rounds"),
    };

    /// <summary>How many the other one of a pair takes, where it is another number.</summary>
    private static PerSize<int>? Others(PatternContext context, int at) =>
        context.Plan.Sizes.All(s => (s.Edgings[at].Unlike ?? s.Edgings[at].Spread).Total == s.Edgings[at].PickUp) ? null
            : context.Each(s => (s.Edgings[at].Unlike ?? s.Edgings[at].Spread).Total);

    /// <summary>
    /// What keeps it flat where the edge turns, and at how many corners of each size: said where rounds can widen and narrow.
    /// </summary>
    private static IEnumerable<(Instruction Said, PerSize<int> In)> Corners(PatternContext context, int at)
    {
        var edgings = context.Plan.Sizes.Select(s => s.Edgings[at]).ToArray();
        var edging = EdgingLibrary.Find(edgings[0].Edging);
        var when = (edging.InRows, edging.Multiple == 1) switch
        {
            (true, true) => Phrase.Of($"In every row of {new Term("sc")} after the first"),
            (true, false) => Phrase.Of($"In every row of {new Term("sc")} between the first and the last"),
            (false, true) => Phrase.Of($"In every round of {new Term("sc")} after the first"),
            (false, false) => Phrase.Of($"In every round of {new Term("sc")} between the first and the last"),
        };
        var outer = context.Each(s => s.Edgings[at].Corners.Outer);
        var named = context.EdgesAt(edgings[0].Where).PerCorner == 0;
        if (outer.Values.Any(n => n > 0))
            yield return (new Instruction(Phrase.Plain(named ? "Outer corners" : "Corners"), Phrase.Of($"{Marked()} {Phrase.Of(
                $"{when} work 3 {new Term("sc")} in it, so that the corner lies flat, and mark the middle one of them: {Each(outer)} stitches more each time.")}")), outer);
        var inner = context.Each(s => s.Edgings[at].Corners.Inner);
        if (inner.Values.Any(n => n > 0))
            yield return (new Instruction(Phrase.Plain("Inner corners"), Phrase.Of($"{Before(inner, false)} {Phrase.Of(
                $"{when} work {new Term("sc3tog")} over it and the stitches beside it, so that the corner lies flat, and mark that: {Each(inner)} stitches fewer each time.")}")), inner);

        // Two at each corner.
        static Count Each(PerSize<int> corners) => new(new([.. corners.Values.Select(n => 2 * n)])) { NoneIsDash = true };

        Phrase Marked() => named
            ? Before(outer, true)
            : Phrase.Of($"Work what is extra at each of the {outer} corners into the last place before it, and mark the middle one of the stitches there.");

        static Phrase Before(PerSize<int> corners, bool outer) => corners.IsSame ? One(corners.Values[0], outer) : Phrase.Of(
            $"{new InAllSizes(Many(new(corners) { NoneIsDash = true }, outer))}{new InOneSize(new([new PhraseChoice(new([.. corners.Values.Select(n => One(n, outer))]))]))}");

        static Phrase One(int corners, bool outer) => (corners, outer) switch
        {
            (1, true) => Phrase.Plain("Mark the stitch picked up last before the outer corner."),
            (1, false) => Phrase.Plain("Mark the stitch picked up last before the inner corner."),
            _ => Many(new(new([corners])), outer),
        };

        static Phrase Many(Count corners, bool outer) => outer
            ? Phrase.Of($"Mark the stitch picked up last before each of the {corners} outer corners.")
            : Phrase.Of($"Mark the stitch picked up last before each of the {corners} inner corners.");
    }

    /// <summary>What its rounds come to, where they are not all alike.</summary>
    private static IEnumerable<Instruction> Count(PatternContext context, int at, Edging edging)
    {
        var last = context.Each(s => s.Edgings[at].LastCount);
        if (context.Plan.Sizes.Any(s => s.Edgings[at].PerRound != 0))
            yield return new Instruction(
                Phrase.Plain("Count"), edging.InRows ? Phrase.Of($"{last} stitches in the last row.") : Phrase.Of($"{last} stitches in the last round."));
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
            yield return new Instruction(Phrase.Plain("When"), under.Length > 1
                ? Phrase.Of($"After the {under[0]} and the {under[1]}: the bands go over their ends too, so that the fronts close from end to end.")
                : Phrase.Of($"After the {under[0]}: the bands go over its ends too, so that the fronts close from end to end."));
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
            : Phrase.Of($"About {(int)Math.Round(100 * (context.Construction.ShareAt(context.Plan.Sizes[0].Edgings[at].Where) ?? usual))} % of the body's girth at this edge, and {Edging.ElasticOverlap} more for the overlap."));
    }

    /// <summary>A piece that was turned over has the wrong side of its rows outside.</summary>
    private static Phrase Joined(PatternContext context, EdgingPlace place)
    {
        var (yarn, beginning) = (Phrase.Named(context.YarnFor(CompanionUse.Edgings)), Beginning(context, place));
        return context.HasTurnedOver
            ? Phrase.Of($"{yarn}, joined with the outside facing {beginning}.") : Phrase.Of($"{yarn}, joined with the right side facing {beginning}.");
    }

    private static Phrase Beginning(PatternContext context, EdgingPlace place)
    {
        var edge = context.EdgesAt(place);
        // Seen from outside and worked from right to left, the one front's edge runs up and the other's down.
        if (edge is { Closes: not null, Copies: 1 })
            return Phrase.Of($"at the armhole end of the wearer's {EdgeWords.Of(edge.Edges[0].Id)}, {Along(context, edge)}");
        if (edge.Closes is not null)
            return Phrase.Plain("at the lower end of the right front's front edge and, for the other band, at the neck end of the left front's");
        if (edge.OpensAt is { } opens)
            return Phrase.Plain(PlaceWords.At(opens));
        if (edge.Begins is not { } seam)
            return Phrase.Of($"at the {new Side(false)}-hand end of the {EdgeWords.Of(edge.Edges[0].Id)}");
        if (edge.Copies == 1 && seam is SeamId.LeftSide or SeamId.LeftShoulder)
            return Phrase.Of($"at the wearer's left {SeamWords.One(seam)}");
        if (edge.Copies == 1 && seam is SeamId.RightSide or SeamId.RightShoulder)
            return Phrase.Of($"at the wearer's right {SeamWords.One(seam)}");
        if (edge.Copies == 1 && seam == SeamId.LeftSleeveFront)
            return Phrase.Plain("at the seam of the wearer's left sleeve and the front");
        // A pair of edges has a seam each.
        return context.Construction.Joins.Count(j => SeamWords.One(j.Id) == SeamWords.One(seam)) > 1 && edge.Copies == 1
            ? Phrase.Of($"at a {SeamWords.One(seam)}") : Phrase.Of($"at the {SeamWords.One(seam)}");
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
    /// One list with size lists where the sizes differ in its numbers alone, a remainder of none among them said as a dash; otherwise a
    /// list for each group of sizes.
    /// </summary>
    private static IEnumerable<Block> PickUpRules(PatternContext context, int at)
    {
        var edgings = context.Plan.Sizes.Select(s => s.Edgings[at]).ToArray();
        IEnumerable<Block> said = Rules(context, Phrase.Empty, [.. edgings.Select(e => e.Spread)]);
        return edgings.All(e => e.Unlike is null) ? said
            : said.Concat(Rules(context, OtherOf(context.EdgesAt(edgings[0].Where)), [.. edgings.Select(e => e.Other ?? e.Spread)]));
    }

    /// <summary>Before the rule of the other one of a pair.</summary>
    private static Phrase OtherOf(EdgingEdge edge) =>
        edge.Closes is { } closes ? Phrase.Of($"{PlaceNames.Of(closes.Buttons)}, ") : Phrase.Plain("at the wearer's right, ");

    private static IEnumerable<Block> Rules(PatternContext context, Phrase lead, ImmutableArray<PickUp> sizes)
    {
        if (PickUpWords.Shared(sizes, withRests: false) is { } shared)
        {
            yield return Listed(lead, shared);
            yield break;
        }
        if (PickUpWords.Shared(sizes, withRests: true) is { } withRests)
        {
            ImmutableArray<Phrase>[] each = [.. sizes.Select(PickUpWords.Lines)];
            yield return Listed(lead, [.. withRests.Select((line, i) => Phrase.Of(
                $"{new InAllSizes(line)}{new InOneSize(new Phrase([new PhraseChoice(new([.. each.Select(lines => lines[i])]))]))}"))]);
            yield break;
        }
        foreach (var group in context.Plan.Sizes.Zip(sizes, (s, own) => (s.Name, Lines: PickUpWords.Lines(own)))
            .GroupBy(s => Phrase.Join("; ", s.Lines)))
        {
            var names = group.Select(s => s.Name).ToImmutableArray();
            yield return new ForSizes(names, [Listed(Phrase.Of($"{PatternContext.Lead(names)}{lead}"), group.First().Lines)]);
        }
    }

    /// <summary>A line for each thing to do; before the first of them, whom they are for.</summary>
    private static Bullets Listed(Phrase lead, ImmutableArray<Phrase> lines) => new(lines.SetItem(0, Phrase.Of($"{lead}{lines[0]}")));

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
