using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Documents;

namespace Dyepath.Workspace.Work;

/// <summary>
/// A fault of the document as a page tells it, beside the box that shows its place: what is wanted there or what is wrong with what
/// stands there, with the range and an example, in the trade's words. Whoever edits the document by hand reads the fault itself.
/// </summary>
public static partial class FaultWords
{
    private static readonly Regex CountedRepeat = At("yarn.counted[].repeats[]");

    private static readonly Regex EdgingName = At("garment.edgings[].edging");

    private static readonly Regex EdgingPlace = At("garment.edgings[].where");

    /// <summary>What is asked for where nothing stands yet, in the order in which a design is best begun.</summary>
    private static readonly ImmutableArray<(Regex Place, string Words)> Wanted =
    [
        (At("yarn"), "Put in your yarn: its colours in the order in which they come off the ball."),
        (At("yarn.sections"), "Put in the colours of your yarn, in the order in which they come off the ball."),
        (At("yarn.sections[].name"), "Give this colour a name, so that makers can tell it by a word."),
        (At("yarn.sections[].colour"), "Pick this colour by eye, or type a plain name such as teal or mustard, or # and six digits, such as #1f4e5f."),
        (At("yarn.sections[].length"), "Measure this colour too: lengths are put in for every colour, or for none."),
        (At("yarn.counted[].name"), "Give this ball a name, such as first ball."),
        (At("yarn.counted[].repeats"), "Count at least one whole sequence of this ball, or take the ball out."),
        (At("fabric"), "Choose the stitch, and put in hook and gauge of your swatch."),
        (At("fabric.stitch"), "Choose the stitch of the fabric."),
        (At("fabric.swatch"), "Work a swatch of this yarn, and put in its hook and gauge."),
        (At("fabric.swatch.hook"), "Put in the hook that your swatch is worked with, such as 5.5 mm."),
        (At("fabric.swatch.worked"), "Put in the gauge of your swatch: how many stitches and rows it has over 10 cm."),
        (At("fabric.swatch.*.stitches"), "Count the stitches of the swatch too, over the length beside it."),
        (At("fabric.swatch.*.rows"), "Count the rows of the swatch too, over the length beside it."),
        (At("fabric.swatch.yarnUsed[].stitches"), "Count how many stitches you unravelled."),
        (At("fabric.otherSwatch.hook"), "Put in the hook of the other swatch, such as 6 mm."),
        (At("fabric.otherSwatch.worked"), "Put in the gauge of the other swatch: its stitches and rows over 10 cm."),
        (At("fabric.otherSwatch.*.stitches"), "Count the stitches of the other swatch too, over the length beside it."),
        (At("fabric.otherSwatch.*.rows"), "Count the rows of the other swatch too, over the length beside it."),
        (At("fabric.edging.stitches"), "Count the stitches of the edging swatch too."),
        (At("fabric.edging.rows"), "Count the rows of the edging swatch too."),
        (At("fabric.hands.spread"), "Put in the spread of your hands too, or leave both empty."),
        (At("fabric.hands.memory"), "Put in how long a tight or loose stretch lasts too, or leave both empty."),
        (At("yarn.ball"), "Put in the metres and grams of a ball, from its label."),
        (At("yarn.ball.length"), "Put in how much yarn is in a ball, from its label, such as 230 m."),
        (At("yarn.ball.mass"), "Put in the weight of a ball, from its label, such as 100 g."),
        (At("yarn.name"), "Give the yarn its name and colourway, as makers will look for it."),
        (At("companion.uses"), "Say what the companion yarn is used for."),
        (At("companion.name"), "Give the companion yarn its name, as makers will look for it."),
        (At("companion.colour"), "Pick the companion yarn's colour, or type it by its name or as # and six digits."),
        (At("companion.ball"), "Put in the metres and grams of a ball of the companion yarn, from its label."),
        (At("companion.ball.length"), "Put in how much companion yarn is in a ball, from its label, such as 230 m."),
        (At("companion.ball.mass"), "Put in the weight of a ball of the companion yarn, from its label, such as 100 g."),
        (At("garment"), "Choose a garment."),
        (At("garment.shape"), "Choose a garment."),
        (At("garment.edgings[].where"), "Choose the edge that this edging is worked on."),
        (At("garment.edgings[].edging"), "Choose an edging for this edge."),
        (At("sizes"), "Choose a size chart, or put in sizes of your own."),
        (At("sizes.chart"), "Choose a size chart, or put in sizes of your own."),
        (At("sizes.names[]"), "Choose a size of the chart."),
        (At("sizes.own[].name"), "Give this size a name."),
        (At("sizes.own[].measures"), "Put in at least one body measure of this size."),
        (At("title"), "Give the pattern a title."),
    ];

    /// <summary>
    /// What is wrong, where the document's words name its parts; <c>{0}</c> is what was found, <c>{1}</c> what may stand there.
    /// </summary>
    private static readonly ImmutableArray<(Func<Fault, bool> Is, string Words)> Wrong =
    [
        (f => CountedRepeat.IsMatch(f.Path) && f.Allowed.Contains("numbers", StringComparison.Ordinal),
            "This repeat has {0}, and the sequence another number of colours: count the ones that are wanting, or take the repeat out."),
        (f => f.Path == "fabric.sectionStitches" && f.Allowed.Contains("numbers", StringComparison.Ordinal),
            "There are {0} for whole stitches, and the sequence has another number of colours: let them follow the counts, or set one for each."),
        (f => f.Allowed.StartsWith("only with \"keeping\"", StringComparison.Ordinal),
            "Whole stitches for each colour belong to counted work: keep the colours counted, or let the whole stitches go."),
        (f => f.Allowed == "only beside a length", "Spread and blend go with the length of their colour: put that in too, or empty them."),
        (f => f.Allowed.StartsWith("another hook than", StringComparison.Ordinal),
            "Both swatches have this hook: put in the hook of the other swatch, or empty its boxes."),
        (f => f.Allowed.EndsWith("of the same name", StringComparison.Ordinal),
            "A colour of the same name looks different: give the two names of their own, or make their colours equal."),
        (f => f.Allowed.Contains("fewestRounds", StringComparison.Ordinal),
            "These are fewer rounds than the fewest that you allow: put in more here, or fewer there."),
        (f => f.Path.EndsWith(".colour", StringComparison.Ordinal) && f.Kind == FaultKind.Form,
            "{0} is no colour that is known here by its name: pick it by eye, or type # and six digits, such as #1f4e5f."),
        (f => f.Path.EndsWith("watch.hook", StringComparison.Ordinal) && f.Allowed.StartsWith("a hook size", StringComparison.Ordinal),
            "{0} is no hook that is known here: put in its millimetres, from 0.5 to 50, such as 5.5, or its US letter and number, such as I-9."),
        (f => f.Allowed == "each once", "Here is {0}: take one of the two out."),
        (f => f.Allowed == "either chart or own", "Sizes come from a chart or are your own, not both: leave one of the two out."),
        (f => f.Allowed == "only with a chart", "These sizes are those of a chart: choose one, or take them out."),
        (f => f.Next == "Name the base size in sizes.base.", "Choose the base size under Garment first: only its numbers can be taken as made."),
        (f => f.Allowed.StartsWith("the base size, ", StringComparison.Ordinal),
            "Here is {0}; only numbers of {1} can be taken as made. Numbers of other sizes are fixed by hand."),
        (f => EdgingPlace.IsMatch(f.Path) && f.Kind == FaultKind.Meaning,
            "This garment has no such edge as it stands: choose another one, or take the edging out."),
    ];

    /// <summary>Nothing is wrong yet: something is only not there.</summary>
    public static bool IsWanting(Fault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return fault.Found is "nothing" or "\"\"" or "too few" or "a list of 0"
            || fault.Found.StartsWith("no ", StringComparison.Ordinal) || HasNoStitches(fault);
    }

    /// <summary>Place among what is wanted, from 0; behind all of it where it is none.</summary>
    public static int Rank(Fault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        var place = HasNoStitches(fault) ? "yarn.counted[0].repeats" : fault.Path;
        for (var i = 0; i < Wanted.Length; i++)
        {
            if (Wanted[i].Place.IsMatch(place))
                return i;
        }
        return Wanted.Length;
    }

    /// <summary>
    /// That a document's colours are neither counted nor measured, which its reader finds only where nothing else is wrong; null where
    /// they are, or where there are none.
    /// </summary>
    public static Fault? NotCounted(ProjectDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var colours = document.Count(Sections);
        return colours == 0 || document.Count("yarn.counted") > 0 || document.Has("fabric.sectionStitches")
            || Enumerable.Range(0, colours).Any(i => document.Has(string.Create(CultureInfo.InvariantCulture, $"{Sections}[{i}].length")))
            ? null
            : new Fault(Sections, 1, FaultKind.Meaning, NoStitches, "a length for every section, or stitches", "Count the stitches of a few repeats.");
    }

    /// <summary>One or two whole sentences.</summary>
    public static string Of(Fault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        if (HasNoStitches(fault))
            return "Count how many stitches each colour takes, which is surest; or measure the length of every colour.";
        if (IsWanting(fault) && Rank(fault) is var rank && rank < Wanted.Length)
            return Wanted[rank].Words;
        if (Wrong.FirstOrDefault(w => w.Is(fault)).Words is { } words)
            return string.Format(CultureInfo.InvariantCulture, words, Quoted(fault.Found), Quoted(fault.Allowed));
        if (IsOfTheFile(fault))
            return $"The document's file has {Quoted(fault.Found)} here, and may have {Quoted(fault.Allowed)}. Mend it in the file, and import it again.";
        if (fault.Found.StartsWith("no ", StringComparison.Ordinal))
            return fault.Next;
        var allowed = Quoted(Units().Replace(fault.Allowed, m => $"({Alternatives(m.Groups["units"].Value)})"))
            .Replace(" on one line", "", StringComparison.Ordinal);
        // The document's own words for what a page offers to choose from are nobody's to type.
        if (fault.Allowed.StartsWith('"') || EdgingName.IsMatch(fault.Path))
            return IsWanting(fault) ? "Choose one of what is offered here." : $"{Quoted(fault.Found)} is none of what is offered here: choose again.";
        return IsWanting(fault) ? $"Put in {allowed}."
            : !IsTyped(fault.Found) ? $"Here is {Quoted(fault.Found)}, where there should be {allowed}. {Quoted(fault.Next)}"
            : Noun().IsMatch(allowed) ? $"{Quoted(fault.Found)} cannot stand here: put in {allowed}."
            : $"Here stands {Quoted(fault.Found)}; it may be {allowed}. {Quoted(fault.Next)}";
    }

    private const string Sections = "yarn.sections", NoStitches = "no stitches";

    /// <summary>The fault that the colours have no lengths, and nothing is counted.</summary>
    public static bool HasNoStitches(Fault fault) => fault.Found.EndsWith(NoStitches, StringComparison.Ordinal);

    /// <summary>What no box of a page can have written.</summary>
    private static bool IsOfTheFile(Fault fault) =>
        fault.Kind == FaultKind.NotJson || fault.Path == "document" || FileWords().IsMatch(fault.Next) || FileWords().IsMatch(fault.Found);

    /// <summary>What was found is a value as it was typed, and no remark on it.</summary>
    private static bool IsTyped(string found) => found.StartsWith('"') || Number().IsMatch(found);

    private static string Quoted(string text) => Quotes().Replace(text, "“${inside}”");

    private static string Alternatives(string list) => list.LastIndexOf(", ", StringComparison.Ordinal) is var at and > 0
        ? $"{list[..at]} or {list[(at + 2)..]}" : list;

    /// <summary>A place with <c>[]</c> for any index and <c>*</c> for any name.</summary>
    private static Regex At(string place) => new(
        "^" + Regex.Escape(place).Replace(@"\[]", @"\[[0-9]+\]", StringComparison.Ordinal).Replace(@"\*", "[a-zA-Z]+", StringComparison.Ordinal) + "$",
        RegexOptions.CultureInvariant);

    [GeneratedRegex(@"\((?<units>[a-z]+(?:, [a-z]+)*)\)")]
    private static partial Regex Units();

    [GeneratedRegex("^(?:an? |text |one )")]
    private static partial Regex Noun();

    [GeneratedRegex("\"(?<inside>[^\"]*)\"")]
    private static partial Regex Quotes();

    [GeneratedRegex(@"^-?[0-9.]+(?:[eE][-+]?[0-9]+)?$")]
    private static partial Regex Number();

    [GeneratedRegex(@"an object|a list of|Write a list|the unknown property|true or false|quotation marks|\[ … ]|other is on line")]
    private static partial Regex FileWords();
}
