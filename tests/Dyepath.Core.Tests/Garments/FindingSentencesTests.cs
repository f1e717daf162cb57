using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Constructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>
/// What is said of plans that come out poorly, and of documents that cannot be planned: every finding of a family of them is one of the
/// sentences below from its first word to its last, and every sentence is said. # stands for a number, ~ for names and measures.
/// </summary>
public sealed class FindingSentencesTests
{
    private const string Moves = "[; it also moves [~ by up to # cm[ (most in ~)]?[, | and ]?]+[ and # more]?]?";

    private const string Lost = "[, and # % of the stitches are lost to the motif instead of # %]?";

    private const string TooMuch = "# cm too [wide|narrow|long|short]";

    private const string Leaps = "[from ~ to ~ it [grows|shrinks] by # cm where it is to [[grow|shrink] by # cm|stay as it is][, | and ]?]+";

    /// <summary>Of one direction or of both, or of a plan.</summary>
    private const string Worked = "[Worked [up|sideways|up or sideways]: ]?";

    /// <summary>What is in brackets is one of several, or may be missing (?), or comes again (+).</summary>
    private static readonly ImmutableArray<string> Sentences =
    [
        "[# to ]?# pairs of rows stop # [to # ]?cm short of the [waist|crown]: from there up to it the lines of colour step by #[ or #]* stitches, and everywhere else the picture goes on.",
        "Most of the crown closes at one height, since rows can stop short only by half a repeat of the colours: it becomes a pouch and not a dome. Draw it together instead, or take a yarn whose colours repeat sooner.",
        $"~ is not graded evenly: {Leaps}: each size is within an inch of what is asked for, at a place where the colours let rows end[. Let cut edges lie [off by # cm at most|where they are asked for], so that the motif gives way there instead: from size to size it then grows by at most # cm otherwise than it is to, where now it is # cm{Lost}{Moves}]?.",
        $"~ is not graded evenly: {Leaps}.",
        $"~ is not graded evenly: {Leaps}: work it sideways: furthest off of ~: size ~, ~, {TooMuch}{Moves}.",
        "Cut edges lie where the colours let rows end: [~ comes out up to # cm [over|under][ (~)]?[, | and ]?]+.",
        "Nothing closes the left shoulder of the front: edge it with a button band.",
        "Nothing holds it up: its waist is as wide as its pieces and must be drawn in to the body's waist. Edge the waist with a casing, such as elastic-casing.",
        $"[Size ~: ~ comes out # cm [over|under] its target of # cm|Sizes ~: ~ comes out # [to # ]?cm [over|under] their targets]: [[; or ]?[swatch with a # mm hook (furthest off of ~ then: # cm)|allow front and back to differ by up to # stitches (furthest off of ~ then: # cm)|allow several leans in one pattern: ~ is then off by # cm at most{Lost}{Moves}|edge the [waist|hem|cuffs] with single crochet, whose rounds make up what the counts leave: ~ is then off by # cm at most{Lost}{Moves}|work it [up|sideways]: furthest off of ~: size ~, ~, {TooMuch}{Moves}]]+.",
        "[Size ~: ~ comes out # cm [over|under] its target of # cm|Sizes ~: ~ comes out # [to # ]?cm [over|under] their targets]: no change to edgings, cuts, hooks, counts or direction that was tried brings it nearer.",
        "[Size|Sizes] ~: front neck depth of the ~ front is # cm and of the ~ front # cm[ in ~]?, so that they do not match: choose another depth or form of the neck, or a yarn whose colours come round sooner.",
        $"The ~ neck looks square[ in ~]?: where the colours let rows end, it has one step at either side[. Let cut edges lie [off by # cm at most|where they are asked for], so that the motif gives way there instead: it has more steps{Lost}{Moves}]?.",
        "The [shawl|wrap] is narrower than one repeat of the colours in One size: the motif will not be seen whole there; plain companion yarn may look better.",
        "[Size|Sizes] ~: the neck opening, all round and stretched, goes over the head with # [to # ]?cm to spare, which a firm edging or a larger head takes. For more, make the neck wider.",
        "[Size ~: the ~ is # cm; for its ~|Sizes ~: the ~ is # [to # ]?cm; for their ~] it must be # [to # ]?cm at least: [join less of the sides|make the neck narrower, or give more ease|give more ease at the bust].",
        "Size One size: of # cm of width the edging of the border takes # cm, so that little of the motif is left. Work # rounds or fewer.",
        "Stitches of a colour: [~ is to take # where its yarn makes #[, | and ]?]+. No hand works so much tighter: write the nearest whole stitches (#, #, #, #), or count this yarn again.",
        "Stitches of a colour: [~ is to take # where its yarn makes #[, | and ]?]+. No hand works so much looser: write the nearest whole stitches (#, #, #, #), or count this yarn again.",
        $"The [neck|armhole] is cut and has no edging: its steps and the ends of its rows stay to be seen. [Edge it with single crochet: [the edging's depth is inside what is asked for, so that all that is cut is planned anew, and may come out at other measures|with the edging inside it, furthest off of what is cut is size ~, ~, # cm too [wide|narrow|deep|shallow|long|short]{Lost}{Moves}]|Make it wider or deeper, and then edge it: with an edging inside it as it is [there is no plan|a body would no longer get in]].",
        "The [back's neck|front's armhole|back's armhole] is not cut[ in ~]?: where the colours let rows end, under # cm of it would be seen beside the seam[ in one size or more]?, so its edge is straight[. If it is to be cut, give a depth: it is then said from which depth on every size has it|. Ask for # cm: it is then cut in every size, # [to # ]?cm deep]?.",
        "The chart women does not give head for every size: it is taken as what women of that bust measure on average (ANSUR II). Sizes of your own can give it.",
        $"The motif gives way from the cut on, in the ~: there the colours draw something else, over up to # % of its stitches, as the pattern and the picture show. [Nothing that was tried keeps it in every size. A yarn whose colours come round [sooner|after an even number of stitches] would help, or another depth or width of the cut|Work it up: [it goes on unbroken|# % of all its stitches are lost to it instead of # %], and furthest off of ~: size ~, ~, {TooMuch}{Moves}].",
        "The yarn is still called “Variegated yarn”: put in its name and colourway, so that makers find it.",
        $"{Worked}Size ~: rows stop short of the crown by # stitches at a time (# cm), as the colours come round, and that is too deep here: give the colours an even number of stitches in all, so that half a round is enough, or fewer; or do without gores.",
        $"{Worked}Size ~ is hardly longer than its armholes: make it longer.",
        $"{Worked}Size ~ would have an armhole depth of -# cm: give it more.",
        $"{Worked}Size ~ would have a length of -# cm: give it more.",
        $"{Worked}Size ~: the neck is too shallow for inserts with a straight edge: make it deeper or narrower, or choose another form.",
        $"{Worked}Size One size: the piece comes to lie over # stitches from its first row to its last: make it shorter.",
        $"{Worked}The neck of size ~ leaves no shoulders: make it narrower.",
        $"{Worked}The tab of size # takes the whole side: make it shorter.",
        $"{Worked}Gores are rows that stop short of the waist, and worked up no row runs to it: work it sideways, or without gores. Work it sideways: there is a plan (furthest off of hem width and length: size ~, ~, {TooMuch}).",
        $"{Worked}Right fronts: Size ~ has no count that makes the motif: choose another motif or hook. Work it sideways: there is a plan (furthest off of back width, length and width: size ~, ~, {TooMuch}).",
        $"{Worked}Sizes S, M, L have no counts with which each size comes out larger than the one before it and all share one lean. Work it sideways: there is a plan (furthest off of width and length: size ~, ~, {TooMuch}). Allow several leans in one pattern (furthest off of width then: # cm).",
        $"{Worked}Size ~: what is cut out leaves too little between: make the neck narrower or less deep, or the piece wider or longer.[ Work it sideways: there is a plan (furthest off of ~: size ~, ~, {TooMuch}).]?",
        $"{Worked}Size One size: no row can end earlier or go on further without breaking the motif, since the colours do not come round after a whole number of stitches: give each colour a whole number of stitches.",
        $"{Worked}The fixed counts are even in one size and odd in another: linen stitch is worked otherwise then. Fix counts that are alike. Work it sideways: there is a plan (furthest off of width and length: size ~, ~, {TooMuch}).",
        $"{Worked}Sizes S, M have no counts with which each size comes out larger than the one before it and only 1 count is used. Work it sideways: there is a plan (furthest off of width and length: size ~, ~, {TooMuch}). Allow # counts (furthest off of width then: # cm).",
        $"{Worked}No count from # to # makes bands. Nearest: [# stitches make ~[; ]?]+.[ # of these counts make ~ instead, # for one.]+",
        "Not measured yet, but taken from the example that the document was begun with: [the lengths of the colours, the counted stitches, ]?the yarn that the swatch's stitches took and the swatch's gauge and hook. Put in your own before anybody buys or works by them.",
    ];

    private static readonly int[] Even = [6, 5, 7, 4];

    private static readonly int[] Odd = [9, 8, 9, 7];

    [Fact]
    public void Every_finding_is_a_sentence_of_the_trade_and_every_sentence_is_said()
    {
        var patterns = Sentences.Select(s => new Regex($"^{Pattern(s)}$", RegexOptions.CultureInvariant)).ToArray();
        var said = new HashSet<int>();
        List<string> unknown = [];
        foreach (var project in Family())
        {
            var result = project.Tried();
            foreach (var finding in result.Plan?.Findings ?? result.Reasons)
            {
                var at = Array.FindIndex(patterns, p => p.IsMatch(finding.Text));
                if (at < 0)
                    unknown.Add($"{project.Garment.Shape.Name}: {finding.Text}");
                said.Add(at);
                Assert.DoesNotMatch(@"\b(\d+ %) of [a-z ]+ instead of \1", finding.Text);
            }
        }
        Assert.True(unknown.Count == 0, string.Join('\n', unknown));
        Assert.Empty(Sentences.Where((_, i) => !said.Contains(i)));
    }

    private static string Pattern(string sentence) => Regex.Replace(
        Regex.Escape(sentence).Replace(@"\[", "(", StringComparison.Ordinal).Replace("]", ")", StringComparison.Ordinal).Replace(@"\|", "|", StringComparison.Ordinal),
        @"\)\\([?+*])", ")$1").Replace(@"\#", @"[0-9]+(\.[0-9]+)?", StringComparison.Ordinal).Replace("~", @"[A-Za-z0-9' ,]+?", StringComparison.Ordinal);

    private static IEnumerable<Project> Family()
    {
        yield return Of("hat", Even).With(g => g with { Direction = Direction.Sideways, Shape = (Hat)g.Shape with { Gored = true } });
        yield return Of("hat", Odd).With(g => g with { Direction = Direction.Sideways, Shape = (Hat)g.Shape with { Gored = true, Height = Cm(10) } });
        yield return Of("skirt", Even).With(g => g with { Direction = Direction.Sideways, Edgings = [], Shape = (Skirt)g.Shape with { Flare = Cm(30) } });
        yield return Of("skirt", Even).With(g => g with { Direction = Direction.Up, Shape = (Skirt)g.Shape with { Flare = Cm(30) } });
        yield return Vest(Even, NeckForm.Slit, Direction.Sideways);
        yield return Vest(Even, NeckForm.Round, Direction.Sideways);
        yield return Vest(Odd, NeckForm.V, Direction.Up);
        yield return Top(Odd, NeckForm.Round, Direction.Sideways);
        yield return Top(Even, NeckForm.Square, Direction.Up);
        yield return Top(Even, NeckForm.Buttoned, Direction.Sideways);
        yield return Cardigan(Odd, NeckForm.Round, Direction.Sideways);
        yield return Cardigan(Odd, NeckForm.Round, Direction.Up);
        yield return Cardigan(Even, NeckForm.V, Direction.Up);
        yield return Of("poncho", null).With(g => g with { Shape = (Poncho)g.Shape with { Length = Cm(20), SideJoin = Cm(15) } });
        yield return Of("poncho", null).With(g => g with { Shape = (Poncho)g.Shape with { SideJoin = Cm(80) } });
        yield return Of("pullover", null).With(g => g with { Shape = (BoxyTop)g.Shape with { UpperArmEase = Cm(90) } });
        yield return Of("pullover", null).With(g => g with { Shape = (BoxyTop)g.Shape with { BelowWaist = Cm(-60) } });
        yield return Of("pullover", null).With(g => g with { Shape = (BoxyTop)g.Shape with { Neck = new Neck(NeckForm.Slit, Cm(60)) } });
        yield return GarmentTrials.WithCompanion(Of("vest", null)).With(g => g with { Shape = (Vest)g.Shape with { Neck = new Neck(NeckForm.VInsert, null) { Depth = Cm(3) } } });
        yield return Of("bias-wrap", null).With(g => g with { Shape = (BiasWrap)g.Shape with { Length = Cm(900) } });
        yield return Of("tabard", null).With(g => g with { Shape = (Tabard)g.Shape with { TabHeight = Cm(80) } });
        yield return Of("wrap", null).With(g => g with { Edgings = [new(EdgingPlace.Border, "sc", 20)] });
        yield return Of("wrap", null).With(g => g with { Shape = (Wrap)g.Shape with { Width = Cm(6), Length = Cm(20) } });
        yield return Cut(Top(null, NeckForm.Round, Direction.Sideways), n => n with { Depth = Cm(6), BackDepth = Cm(1) });
        yield return Cut(Vest(null, NeckForm.V, Direction.Up), n => n with { Depth = Cm(66) });
        yield return Cut(Of("vest", null), n => n with { Form = NeckForm.V, Depth = Cm(66) });
        yield return Cut(Of("cardigan", null), n => n with { Form = NeckForm.V, Width = Cm(10) })
            .With(g => g with { Direction = Direction.Sideways, Shape = (Cardigan)g.Shape with { BustEase = new Ease(null, null, Cm(-10)) } });
        yield return Cut(Vest(null, NeckForm.Square, Direction.Sideways), n => n with { Width = Cm(34), Depth = Cm(30) });
        yield return Of("pullover", null).With(g => g with { Motif = MotifKind.Bands });
        yield return Of("pullover", null).With(g => g with { Direction = Direction.Up, Grading = g.Grading with { MostCounts = 1 } });
        var linen = Of("pullover", null).With(g => g with { Direction = Direction.Up });
        yield return (linen with { Fabric = linen.Fabric with { Stitch = FabricStitch.Linen } })
            .Fixed([], [new("S", "panelStitches", null, 82, "made so"), new("M", "panelStitches", null, 83, "made so")]);
        var shawl = Of("shawl", null);
        yield return shawl with
        {
            Yarn = shawl.Yarn with { Counted = [shawl.Yarn.Counted[0] with { Repeats = [[4, 3, 4, 3], [5, 3, 4, 3], [4, 3, 5, 3]] }] },
            Fabric = shawl.Fabric with { Keeping = ColourKeeping.Free, SectionStitches = null },
        };
        var wrap = Of("wrap", null);
        yield return wrap with { Fabric = wrap.Fabric with { SectionStitches = [4, 9, 4, 3] } };
        yield return wrap with { Fabric = wrap.Fabric with { SectionStitches = [2, 3, 4, 3] } };
    }

    private static Project Vest(int[]? sections, NeckForm form, Direction direction) =>
        Of("vest", sections).With(g => g with { Direction = direction, Edgings = [], Shape = (Vest)g.Shape with { Neck = ((Vest)g.Shape).Neck with { Form = form } } });

    private static Project Top(int[]? sections, NeckForm form, Direction direction) =>
        Of("pullover", sections).With(g => g with { Direction = direction, Edgings = [], Shape = (BoxyTop)g.Shape with { Neck = ((BoxyTop)g.Shape).Neck with { Form = form } } });

    private static Project Cardigan(int[]? sections, NeckForm form, Direction direction) =>
        Of("cardigan", sections).With(g => g with { Direction = direction, Edgings = [], Shape = (Cardigan)g.Shape with { Neck = ((Cardigan)g.Shape).Neck with { Form = form } } });

    private static Project Cut(Project project, Func<Neck, Neck> change) => project.With(g => g with
    {
        Shape = g.Shape switch
        {
            Vest vest => vest with { Neck = change(vest.Neck) },
            BoxyTop top => top with { Neck = change(top.Neck) },
            Cardigan cardigan => cardigan with { Neck = change(cardigan.Neck) },
            var other => other,
        },
    });

    /// <param name="sections">Stitches of each colour; missing: as begun.</param>
    private static Project Of(string garment, int[]? sections)
    {
        var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == garment));
        return sections is null ? project : project with
        {
            Yarn = project.Yarn with
            {
                Sections = [.. project.Yarn.Sections.Select((s, i) => s with { Length = 6.3 * sections[i] * Cm(1) })],
                Counted = [project.Yarn.Counted[0] with { Repeats = [.. Enumerable.Repeat(sections.ToImmutableArray(), 3)] }],
            },
        };
    }
}
