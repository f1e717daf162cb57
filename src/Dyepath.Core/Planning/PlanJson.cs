using System.Text;
using System.Text.Json;
using Dyepath.Core.Edgings;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Replays;
using Dyepath.Core.Sizing;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>A plan as JSON: what <c>dyepath plan --json</c> prints. Centimetres, metres and grams are rounded to a thousandth.</summary>
public static class PlanJson
{
    private static readonly JsonWriterOptions Options = new() { Indented = true };

    public static string Write(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
            Write(json, plan);
        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    /// <summary>Writes the plan as one JSON object.</summary>
    /// <param name="cells">The size whose fabric is written cell by cell; missing, none's.</param>
    public static void Write(Utf8JsonWriter json, Plan plan, string? cells = null)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(plan);
        json.WriteStartObject();
        json.WriteString("title", plan.Project.Title);
        json.WriteString("direction", Camel(plan.Direction.ToString()));
        json.WriteString("why", DirectionWords.Why(plan));
        json.WriteStartObject("fabric");
        json.WriteNumber("sequenceStitches", Round(plan.Sequence.Ring.SequenceUnits));
        json.WriteStartArray("sections");
        foreach (var section in plan.Sequence.Ring.Sections)
            json.WriteNumberValue(Round(ColourRing.ToUnits(section)));
        json.WriteEndArray();
        json.WriteNumber("yarnPerUnitCm", Round(plan.Sequence.YarnPerUnit.Centimetres));
        json.WriteNumber("stitchWidthCm", Round(plan.StitchWidth.Centimetres));
        json.WriteNumber("rowHeightCm", Round(plan.RowHeight.Centimetres));
        json.WriteEndObject();
        var hands = plan.Sequence.Measured.Hands;
        json.WriteStartObject("hands");
        json.WriteBoolean("assumed", !hands.IsMakersOwn);
        json.WriteNumber("spread", Round(hands.Spread));
        json.WriteNumber("memoryStitches", Round(hands.Memory));
        json.WriteNumber("dye", Round(hands.Dye));
        json.WriteNumber("largestBias", MadeWell.LargestBias);
        json.WriteNumber("gain", MadeWell.Gain);
        json.WriteNumber("gainSpread", MadeWell.GainSpread);
        json.WriteNumber("largestCorrection", MadeWell.LargestCorrection);
        json.WriteString("checks", "every row, by feel");
        json.WriteEndObject();
        Array(json, "sizes", plan.Sizes, (j, size) =>
        {
            Size(j, plan, size);
            if (size.Name == cells)
                CellsJson.Write(j, plan, size);
        });
        Array(json, "options", plan.Options, Option);
        Array(json, "rules", plan.Rules, (j, rule) =>
        {
            j.WriteString("id", Camel(rule.ToString()));
            j.WriteString("text", RuleWords.Of(rule, plan.Project));
        });
        Findings(json, plan.Findings);
        json.WriteEndObject();
    }

    /// <summary>Writes why there is no plan: <c>{"outcome", "reasons":[{"level","place","text"}]}</c>.</summary>
    public static void WriteReasons(Utf8JsonWriter json, PlanResult result)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(result);
        json.WriteStartObject();
        json.WriteString("outcome", Camel(result.Outcome.ToString()));
        Array(json, "reasons", result.Reasons, Finding);
        json.WriteEndObject();
    }

    private static void Size(Utf8JsonWriter json, Plan plan, SizePlan size)
    {
        json.WriteString("name", size.Name);
        json.WriteStartObject("body");
        foreach (var (measure, length) in size.Body)
            json.WriteNumber(measure + "Cm", Round(length.Centimetres));
        json.WriteEndObject();
        Chance(json, "madeWell", size.MadeWell);
        Chance(json, "makersServed", MadeWell.Served(plan, size));
        Variants(json, plan, size);
        Measures(json, "target", size.Target);
        Measures(json, "finished", size.Finished);
        Array(json, "pieces", size.Pieces, (j, piece) => Piece(j, plan, piece));
        Array(json, "edgings", size.Edgings, (j, edging) =>
        {
            j.WriteString("where", Camel(edging.Where.ToString()));
            j.WriteString("edging", edging.Edging);
            j.WriteNumber("copies", edging.Copies);
            j.WriteNumber("pickUp", edging.PickUp);
            j.WriteNumber("rounds", edging.Rounds);
            j.WriteNumber("depthCm", Round(edging.Depth.Centimetres));
            j.WriteNumber("edgeCm", Round(edging.Edge.Centimetres));
            j.WriteNumber("atRestCm", Round(edging.RelaxedWidth.Centimetres));
            j.WriteNumber("stretchedCm", Round(edging.StretchedWidth.Centimetres));
            j.WriteString("rule", PickUpWords.Text(edging.Spread));
        });
        Array(json, "seams", size.Seams, (j, seam) =>
        {
            j.WriteString("where", seam.Where);
            j.WriteString("first", SeamPlan.Names(seam.First));
            j.WriteString("second", SeamPlan.Names(seam.Second));
            j.WriteNumber("phaseJump", Round(seam.PhaseJump));
            j.WriteNumber("match", Round(seam.Match));
            j.WriteString("extension", seam.Extension is { } extension ? Camel(extension.ToString()) : null);
            j.WriteNumber("chance", Round(seam.Chance));
            j.WriteString("quality", seam.Extension is null ? null : Camel(seam.Quality.ToString()));
            j.WriteNumber("lengthCm", Round(seam.Length.Centimetres));
        });
        Array(json, "worn", size.Worn, (j, fit) =>
        {
            j.WriteString("what", FitPartNames.Of(fit.Part));
            j.WriteNumber("garmentCm", Round(fit.Garment.Centimetres));
            j.WriteString("body", BodyMeasures.Key(fit.Body));
            j.WriteNumber("wantedCm", Round(fit.Wanted.Centimetres));
            j.WriteBoolean("holds", fit.Holds);
        });
        json.WriteStartObject("yarn");
        Yarn(json, size.Yarn, plan.Sequence);
        json.WriteEndObject();
    }

    /// <summary>The counts to offer for the piece that fewest makers make well.</summary>
    private static void Variants(Utf8JsonWriter json, Plan plan, SizePlan size)
    {
        if (size.Pieces.Where(p => p.Pooled).MinBy(p => p.MadeWell) is not { } piece || CountVariants.Of(plan, piece) is not { } offered)
            return;
        json.WriteStartObject("variants");
        json.WriteString("piece", piece.Name);
        Chance(json, "servedAlone", offered.Alone);
        Chance(json, "served", offered.Served);
        Array(json, "counts", offered.Variants, (j, variant) =>
        {
            j.WriteNumber("stitchesMore", variant.Offset * plan.Project.Fabric.Stitch.StitchesPerUnit);
            j.WriteNumber("fromRepeat", Round(plan.Sequence.Ring.SequenceUnits * (1 + variant.From)));
        });
        json.WriteEndObject();
    }

    private static void Piece(Utf8JsonWriter json, Plan plan, PiecePlan piece)
    {
        json.WriteString("name", piece.Name);
        json.WriteNumber("copies", piece.Copies);
        json.WriteBoolean("pooled", piece.Pooled);
        json.WriteString("worked", MotifNames.Of(piece.Working));
        json.WriteNumber("stitches", piece.Stitches);
        if (piece.Shape is { } shape && shape.WidestRow != piece.Stitches)
            json.WriteNumber("widestStitches", shape.WidestRow);
        json.WriteStartArray("rowStitches");
        foreach (var stitches in piece.RowStitches)
            json.WriteNumberValue(stitches);
        json.WriteEndArray();
        json.WriteNumber("rows", piece.Rows);
        if (piece.Taper is { } taper)
        {
            json.WriteStartObject("taper");
            json.WriteString("slope", Camel(taper.Slope.ToString()));
            json.WriteStartArray("rowStitches");
            for (var row = 0; row < taper.Rows; row++)
                json.WriteNumberValue(taper.At(row));
            json.WriteEndArray();
            json.WriteEndObject();
        }
        Chance(json, "madeWell", piece.MadeWell);
        json.WriteNumber("foundationChains", piece.FoundationChains);
        json.WriteNumber("start", Round(piece.Start));
        json.WriteNumber("startSection", piece.StartSection);
        json.WriteNumber("turnCost", Round(piece.TurnCost));
        json.WriteNumber("lean", Round(piece.Lean));
        if (piece.Shape is { Bias: > 0 } biased && biased.Rows > 3)
        {
            json.WriteStartObject("leans");
            json.WriteNumber("rightSideRows", Round(biased.LeanFrom(0)));
            json.WriteNumber("wrongSideRows", Round(biased.LeanFrom(1)));
            json.WriteEndObject();
        }
        if (piece.Shape is { Strips.IsEmpty: false } gored)
        {
            Array(json, "gores", gored.Strips, (j, strip) =>
            {
                j.WriteNumber("goesOnInRow", strip.Row + 1);
                j.WriteNumber("overStitches", strip.Units);
                j.WriteNumber("rowsMissing", strip.Skipped);
                j.WriteNumber("jump", Round(strip.Jump));
            });
        }
        json.WriteString("motif", MotifNames.Of(piece.Motif));
        if (piece is { Pooled: true, Shape: not null } && PieceMotif.Seen(plan, piece) is { Length: > 1 } seen)
        {
            Array(json, "motifs", seen, (j, part) =>
            {
                j.WriteString("motif", MotifNames.Of(part.Kind));
                j.WriteNumber("share", Round(part.Share));
            });
        }
        json.WriteNumber("forgivesTighter", Math.Round(piece.Forgives.Tighter, 6));
        json.WriteNumber("forgivesLooser", Math.Round(piece.Forgives.Looser, 6));
        json.WriteNumber("widthCm", Round(piece.Width.Centimetres));
        json.WriteNumber("heightCm", Round(piece.Height.Centimetres));
        json.WriteNumber("sideBandRows", piece.SideBandRows);
        if (piece.SideBand is { } band)
        {
            json.WriteStartObject("sideBand");
            json.WriteNumber("rows", band.Rows);
            json.WriteNumber("stitches", band.Stitches);
            if (band.Below is { } below)
                json.WriteNumber("belowMark", below);
            json.WriteString("rule", PickUpWords.Text(band.Spread));
            json.WriteEndObject();
        }
        json.WriteBoolean("wrongSideOut", piece.WrongSideOut);
        json.WriteStartObject("foundation");
        json.WriteNumber("firstStitchInChain", piece.Foundation.FirstStitchInChain);
        json.WriteBoolean("companion", piece.Foundation.Companion);
        json.WriteNumber("knotSection", piece.Foundation.KnotSection);
        json.WriteNumber("knotInto", Round(piece.Foundation.KnotInto));
        json.WriteNumber("colourSection", piece.Foundation.ColourSection);
        json.WriteNumber("moreChains", piece.Foundation.MoreChains);
        json.WriteNumber("yarn", Round(piece.Foundation.Yarn));
        json.WriteEndObject();
        Array(json, "marks", piece.Marks, (j, mark) =>
        {
            j.WriteString("what", WhatOf(mark));
            j.WriteNumber(mark.AlongStitches ? "stitch" : "row", mark.Position);
        });
    }

    private static string WhatOf(PieceMark mark) => (mark.Opening.Id, mark.Begins) switch
    {
        (OpeningId.Neck, true) => "neck opening begins",
        (OpeningId.Neck, false) => "neck opening ends",
        (OpeningId.LegOpening, _) => "leg openings begin, from the hem",
        (OpeningId.Tab, true) => "tab begins, from the hem",
        (OpeningId.Tab, false) => "tab ends, from the hem",
        (OpeningId.Vent, _) => "vents end, from the hem",
        (OpeningId.SleeveJoin, _) => "sleeve join begins, from the hem",
        _ => "armholes begin, from the hem",
    };

    private static void Yarn(Utf8JsonWriter json, YarnPlan yarn, ColourSequence sequence)
    {
        json.WriteNumber("metres", Round(yarn.Length.Metres));
        json.WriteNumber("grams", Round(yarn.Mass.Grams));
        json.WriteNumber("ballsTypical", yarn.BallsTypical);
        json.WriteNumber("ballsSafe", yarn.BallsSafe);
        Odds(json, yarn.Odds);
        json.WriteNumber("leftoverMetres", Round(yarn.Leftover.Metres));
        if (yarn.Companion is { } companion)
        {
            json.WriteStartObject("companion");
            json.WriteNumber("metres", Round(companion.Length.Metres));
            json.WriteNumber("grams", Round(companion.Mass.Grams));
            json.WriteNumber("balls", companion.Balls);
            Odds(json, companion.Odds);
            json.WriteEndObject();
        }
        Array(json, "uses", yarn.Uses, (j, use) =>
        {
            j.WriteString("what", YarnUseNames.Of(use));
            j.WriteBoolean("companion", use.Companion);
            j.WriteNumber("metres", Round(use.Length.Metres));
        });
        Array(json, "joins", yarn.Joins, (j, join) =>
        {
            j.WriteNumber("ball", join.Ball);
            j.WriteString("piece", join.Run.Name);
            j.WriteNumber("row", join.Row);
            j.WriteNumber("stitch", join.Stitch);
            var (section, into) = join.ColourIn(sequence);
            j.WriteString("colour", sequence.Colours[section].Name);
            j.WriteNumber("stitchesIntoColour", Round(into));
            j.WriteNumber("wastedMetres", Round(join.Wasted.Metres));
        });
    }

    private static void Chance(Utf8JsonWriter json, string name, double? of)
    {
        if (of is { } chance)
            json.WriteNumber(name, Round(chance));
        else
            json.WriteNull(name);
    }

    private static void Odds(Utf8JsonWriter json, IEnumerable<BallShare> odds) => Array(json, "ballsProbability", odds, (j, o) =>
    {
        j.WriteNumber("balls", o.Balls);
        j.WriteNumber("share", Round(o.Share));
    });

    private static void Option(Utf8JsonWriter json, DirectionOption option)
    {
        json.WriteString("direction", Camel(option.Direction.ToString()));
        json.WriteBoolean("feasible", option.Feasible);
        json.WriteString("reason", DirectionWords.Reason(option));
        json.WriteStartArray("counts");
        foreach (var count in option.Counts)
            json.WriteNumberValue(count);
        json.WriteEndArray();
        json.WriteStartArray("decides");
        foreach (var measure in option.Decides)
            json.WriteStringValue(GarmentMeasures.Key(measure));
        json.WriteEndArray();
        json.WriteNumber("worstErrorCm", Round(option.WorstError.Centimetres));
        json.WriteNumber("typicalErrorCm", Round(option.TypicalError.Centimetres));
        json.WriteNumber("motifLost", Round(option.LostShare));
        Array(json, "curve", option.Curve, (j, point) =>
        {
            j.WriteNumber("counts", point.Counts);
            j.WriteNumber("worstErrorCm", Round(point.WorstError.Centimetres));
            j.WriteStartArray("stitches");
            foreach (var stitches in point.Stitches)
                j.WriteNumberValue(stitches);
            j.WriteEndArray();
        });
    }

    private static void Findings(Utf8JsonWriter json, IEnumerable<Finding> findings) => Array(json, "findings", findings, Finding);

    private static void Finding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("level", Camel(finding.Level.ToString()));
        json.WriteString("place", finding.Place);
        json.WriteString("text", finding.Text);
        if (!finding.Remedies.IsEmpty)
        {
            Array(json, "remedies", finding.Remedies, (to, remedy) =>
            {
                if (remedy is { Place: { } place, Value: { } value })
                {
                    to.WriteString("place", place);
                    to.WritePropertyName("value");
                    to.WriteRawValue(value);
                }
                to.WriteString("text", remedy.Text);
            });
        }
    }

    private static void Measures(Utf8JsonWriter json, string name, IEnumerable<KeyValuePair<GarmentMeasure, Length>> measures)
    {
        json.WriteStartObject(name);
        foreach (var (measure, length) in measures)
            json.WriteNumber(GarmentMeasures.Key(measure) + "Cm", Round(length.Centimetres));
        json.WriteEndObject();
    }

    private static void Array<T>(Utf8JsonWriter json, string name, IEnumerable<T> items, Action<Utf8JsonWriter, T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            write(json, item);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static double Round(double value) => Math.Round(value, 3, MidpointRounding.AwayFromZero);

    private static string Camel(string name) => JsonNamingPolicy.CamelCase.ConvertName(name);
}
