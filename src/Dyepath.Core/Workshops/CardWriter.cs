using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Workshops;

/// <summary>Writes the cards of a workshop and the list of what to bring.</summary>
public static class CardWriter
{
    /// <summary>Cells drawn: enough to see a diamond's side, large enough for letters.</summary>
    private const int MostColumns = 26;
    private const int MostRows = 14;

    /// <summary>Colours of a drawing where a person's are not known.</summary>
    private static readonly ImmutableArray<CardColour> StandIns =
    [
        new("first colour", new Srgb(0x3b, 0x5b, 0x6d)), new("second colour", new Srgb(0xe9, 0xdf, 0xc8)),
        new("third colour", new Srgb(0xb0, 0x71, 0x4a)), new("fourth colour", new Srgb(0x9b, 0xb3, 0xa2)),
    ];

    private static readonly string[] Small = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>One card a person, and the kit.</summary>
    public static WorkshopCards Write(Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(workshop);
        return new(
            workshop.Title,
            [.. workshop.People.Select((person, i) => Card(person, person.Name ?? Said($"Number {i + 1}"), workshop.Minutes))],
            WorkshopKit.Of(workshop));
    }

    /// <summary>The numbers of a person's card.</summary>
    public static CardMeasures Measures(WorkshopPerson person)
    {
        ArgumentNullException.ThrowIfNull(person);
        return CardMeasures.For(person, stitch => person.Way == WorkshopWay.Rows && Told(person.Yarn, stitch).Half is not null);
    }

    /// <summary>Hook for a yarn, mm (common practice, no source).</summary>
    internal static double Hook(YarnThickness thickness) => thickness switch
    {
        YarnThickness.Thin => 3.5,
        YarnThickness.Medium => 5,
        _ =>
        8
    };

    private static WorkshopCard Card(WorkshopPerson person, string who, int minutes)
    {
        var title = $"{who}: {Noun(person.Piece)}";
        if (person.Yarn.Change == ColourChange.Speckled)
            return Speckled(title);
        var measures = Measures(person);
        var told = Told(person.Yarn, measures.Stitch);
        return new(title, Facts(person, measures, minutes), Steps(person, measures, told), Cautions(person), FabricOf(person, measures,
            told), Caption(person, measures));
    }

    private static WorkshopCard Speckled(string title) => new(
        title, [],
        [
            new("Another ball", "This yarn changes colour in specks. No colour lasts for a whole stitch, so the colours cannot be made to line up. Take another ball from the table for this card."),
            new("Or as it is", "Keep it for a piece in which the specks may fall where they like."),
        ], [], null, "");

    private static ImmutableArray<string> Facts(WorkshopPerson person, CardMeasures measures, int minutes)
    {
        var (low, high) = measures.RowsIn(minutes);
        var time = measures.Minutes;
        var across = person.Way == WorkshopWay.Rounds ? "round" : person.Piece is WorkshopPiece.Hat or WorkshopPiece.Cowl ? "high (it is worked sideways)" : "wide";
        var row = person.Way == WorkshopWay.Rounds ? "rounds" : "rows";
        return
        [
            Said($"About {measures.Width.Likely:0} cm {across}; with this yarn it may be {measures.Width.Low:0} to {measures.Width.High:0} cm."),
            Said($"{Capital(measures.Stitch.Name)} (US), hook {Hook(person.Yarn.Thickness):0.#} mm."),
            $"{Hours(time)} for all of it. {(low == measures.Rows ? Said($"There are {minutes} minutes today: time enough.") : Said($"Today, in {minutes} minutes: {low} to {high} {row}."))}",
        ];
    }

    private static ImmutableArray<CardStep> Steps(WorkshopPerson person, CardMeasures measures, RoundByColour told)
    {
        var names = Names(person.Yarn);
        var start = person.Yarn.Colours.IsEmpty ? "your first colour" : names[told.Start];
        var stitch = measures.Stitch.Name;
        var isKnown = !person.Yarn.Colours.IsEmpty;
        var rounds = measures.HalfRounds / 2;
        var isHalf = measures.HalfRounds % 2 == 1;
        var until = $"Each time {start} begins again, the colours have come round once.";
        var stop = !isHalf
            ? $"{until} When they have come round {Times(rounds)}, {start} begins once more: work ONE stitch of it and stop."
            : told.InMiddle
                ? $"{until} When they have come round {Times(rounds)}, go on to the middle of {names[told.Half!.Value]}: when half of it is used, work ONE more stitch and stop."
                : $"{until} When they have come round {Times(rounds)}, go on until {names[told.Half!.Value]} begins: work ONE stitch of it and stop.";
        var steps = new List<CardStep>
        {
            new("Chain", Said($"With the plain yarn make a loose chain about {Math.Ceiling(measures.Width.High * 1.15 / 5) * 5:0} cm long. It is too long on purpose: do not count it.")),
            new("The coloured end", isKnown
                ? $"Take the end from the outside of the ball. Pull yarn off until {start} begins ({string.Join(", ", Turned(names, told.Start))}, then {start} again). Cut there."
                : $"Take the end from the outside of the ball. Pull yarn off until a colour begins that is easy to know again: this is {start}. Cut there."),
            new(person.Way == WorkshopWay.Rounds ? "First round" : "First row",
                $"With that end work one {stitch} into the {Ordinal(measures.Stitch.FirstStitchInChain)} chain from the hook, then one into each chain. {stop}"),
        };
        if (person.Way == WorkshopWay.Rounds)
        {
            steps.Add(new("Join", $"Bring the last stitch round to the first, without a twist, and join with a slip stitch. {Rise(measures.Stitch)} Do not turn. From now on work one {stitch} into every stitch and join at the end of each round, pulled tight."));
            steps.Add(new("After four rounds", "The colours make steps that all climb the same way, one stitch a round. At the join they jump by a stitch: that is so in joined rounds."));
            steps.Add(new("If not", "Moved by less than a stitch, or back: your stitches use too little yarn, so work the next round a little looser. Moved by more: a little tighter. More than three stitches off: pull that round out and work it again. In rounds a miss shows sooner than in rows; if it will not hold, ask for the card in rows."));
        }
        else
        {
            steps.Add(new("Turn", $"{Rise(measures.Stitch)} Pull it tight and turn. From now on work one {stitch} into every stitch, to the very end of the row, and turn in the same way."));
            steps.Add(new("Check each row", !isHalf
                ? "A row ends in the colour that it began with. Look at the row two below: the same colours, moved by two stitches."
                : $"Row 1 begins in {start} and ends in {names[told.Half!.Value]}; row 2 begins in {names[told.Half!.Value]} and ends in {start}. Look at the row two below: the same colours, moved by two stitches."));
            steps.Add(new("After four rows", "Hold it with the first row's front to you. In rows 1 and 3 each colour has moved two stitches to the right, in rows 2 and 4 two to the left: slanting steps. "
                + Said($"A whole diamond takes about {measures.DiamondRows} rows.")));
            steps.Add(new("If not", "Moved by less than two, or back: your stitches use too little yarn, so work the next row a little looser. Moved by more: a little tighter. More than three stitches off: pull the row out and work it again. Straight columns and no steps: the one stitch more is missing; begin again."));
        }
        steps.Add(new("Ball or knot", "At a knot, or a new ball, pull yarn off until the colour you stopped in is as far used as before, and join there."));
        steps.Add(Finish(person));
        return [.. steps];
    }

    private static CardStep Finish(WorkshopPerson person) => new("Finish", "Undo the chain that is left over. " + ((person.Piece, person.Way) switch
    {
        (WorkshopPiece.Hat, WorkshopWay.Rounds) => "When it is as high as from brow to crown, draw plain yarn through the last round and pull it together.",
        (WorkshopPiece.Hat, _) => "When the strip goes round the head, a little stretched, sew the last row to the chain with plain yarn. Draw plain yarn through one long edge and pull it together for the top.",
        (WorkshopPiece.Cowl, WorkshopWay.Rounds) => "When it is as high as you like, cut and weave in the ends.",
        (WorkshopPiece.Cowl, _) => "When the strip goes round the neck and over the head, sew the last row to the chain with plain yarn.",
        (WorkshopPiece.Bag, _) => "When it is twice as long as wide, fold it and sew both sides with plain yarn." + (person.ForChild ? "" : " Make the handles of plain yarn."),
        (WorkshopPiece.Square, _) => "When a corner folded over lies edge on edge, it is square. Cut and weave in the ends.",
        _ => "When it is as long as you like, cut and weave in the ends.",
    }));

    private static ImmutableArray<string> Cautions(WorkshopPerson person)
    {
        var cautions = new List<string>();
        if (person.Way == WorkshopWay.Rounds)
            cautions.Add("Joined rounds miss by more than rows, and draw one slant instead of diamonds. For a first piece take rows, sewn together.");
        if (person.ForChild)
            cautions.Add("For a child: no cords, ties or loose ends at the neck or head, and nothing that can be pulled off and swallowed.");
        if (person.Yarn.Change == ColourChange.Blended)
            cautions.Add("Your colours blend. A colour begins with the first stitch that shows more of it than of the one before.");
        return [.. cautions];
    }

    private static CardFabric FabricOf(WorkshopPerson person, CardMeasures measures, RoundByColour told)
    {
        ImmutableArray<CardColour> own = person.Yarn.Colours.IsEmpty ? StandIns : person.Yarn.Colours;
        var sections = Sections(person.Yarn, measures.Sequence);
        ImmutableArray<CardColour> colours = [.. Turned([.. own], told.Start)];
        double[] units = [.. Turned([.. sections], told.Start)];
        var ring = ColourRing.FromUnits(units, [.. colours.Select(c => c.Colour)]);
        var working = person.Way == WorkshopWay.Rounds ? Working.Rounds : Working.Turned;
        var rows = Math.Min(MostRows, measures.Rows);
        var fabric = Fabric.Work(ring, FabricPath.Constant(working, measures.RowStitches, rows));
        var columns = Math.Min(MostColumns, measures.RowStitches);
        var names = colours.Select(c => c.Name).Distinct().ToImmutableArray();
        ImmutableArray<string> letters = person.Yarn.Colours.IsEmpty ? ["1", "2", "3", "4"] : ColourSymbols.For(names, []);
        var all = Fabric.Work(ring, FabricPath.Constant(working, measures.RowStitches, Math.Clamp(3 * measures.DiamondRows / 2, 4,
            measures.Rows)));
        return new(
            [.. colours.Select(c => new NamedColour(c.Name, c.Colour))], [.. colours.Select(c => letters[names.IndexOf(c.Name)])],
            [.. fabric.ToRows().Select(row => row[..columns])], all.ToRows(), measures.Stitch.HeightOverWidth, person.Way ==
                WorkshopWay.Rows);
    }

    private static string Caption(WorkshopPerson person, CardMeasures measures)
    {
        var what = person.Way == WorkshopWay.Rounds ? "rounds" : "rows";
        var part = measures.RowStitches > MostColumns ? "Above: the right-hand end" : "Above: the piece";
        var known = person.Yarn.Colours.IsEmpty ? " Your colours stand in the place of these." : person.Yarn.Sequence is null ? " Yours may be longer or shorter." : "";
        return Said($"{part} after {Math.Min(MostRows, measures.Rows)} {what}; row 1 is at the bottom, and a number stands where its row begins. Below: what it grows into.{known}");
    }

    /// <summary>How a row is told by this yarn's colours in such a stitch.</summary>
    private static RoundByColour Told(WorkshopYarn yarn, FabricStitch stitch) => yarn.Colours.IsEmpty ? new(0, null, false)
        : RoundByColour.Of(Sections(yarn, yarn.Sequence is { } counted ? counted / stitch.YarnInSingleCrochet : 1), [..
            yarn.Colours.Select(c => c.Name)]);

    /// <summary>Stitches of each section in a sequence of so many: in proportion to what was counted, else alike.</summary>
    private static double[] Sections(WorkshopYarn yarn, double sequence)
    {
        if (yarn.Sequence is { } counted)
            return [.. yarn.Colours.Select(c => c.Stitches!.Value * sequence / counted)];
        var count = yarn.Colours.IsEmpty ? StandIns.Length : yarn.Colours.Length;
        return [.. Enumerable.Repeat(sequence / count, count)];
    }

    private static ImmutableArray<string> Names(WorkshopYarn yarn) => [.. (yarn.Colours.IsEmpty ? StandIns : yarn.Colours).Select(c =>
        c.Name)];

    private static IEnumerable<T> Turned<T>(ImmutableArray<T> all, int start) => all[start..].Concat(all[..start]);

    private static string Rise(FabricStitch stitch) => stitch.TurningChains == 1 ? "Chain 1."
        : stitch.TurningChainCounts ? $"Chain {stitch.TurningChains}: it stands for the first stitch of the next row." : $"Chain {stitch.TurningChains}.";

    private static string Noun(WorkshopPiece piece) => piece switch
    {
        WorkshopPiece.Hat => "hat",
        WorkshopPiece.Cowl => "cowl",
        WorkshopPiece.Scarf => "scarf",
        WorkshopPiece.Bag => "bag",
        _ => "square",
    };

    private static string Times(int count) => count switch { 1 => "once", 2 => "twice", _ => $"{(count < Small.Length ? Small[count] : Said($"{count}"))} times" };

    private static string Ordinal(int n) => n switch { 2 => "second", 3 => "third", _ => "fourth" };

    private static string Hours(CardRange minutes) => minutes.High < 120
        ? Said($"{Math.Floor(minutes.Low / 5) * 5:0} to {Math.Ceiling(minutes.High / 5) * 5:0} minutes")
        : Said($"{minutes.Low / 60:0.#} to {minutes.High / 60:0.#} hours");

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string Said(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
