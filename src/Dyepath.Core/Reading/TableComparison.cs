using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Reading;

/// <summary>The tables by size: measurements, dimensions and yarn, against the plan.</summary>
internal static class TableComparison
{
    public static void Compare(Plan plan, SizePlan size, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        foreach (var (section, _, table) in read.Tables.Where(t => t.Table.Head[0] is "Size" or "Ball"))
        {
            // From the first size on: a size may be called as the first column is.
            var column = table.Head.IndexOf(size.Name, 1);
            if (column < 0)
            {
                notes.Add(($"{section}, {size.Name}", "the table has no such column"));
                continue;
            }
            foreach (var row in table.Rows)
            {
                if (row.Length != table.Head.Length)
                    notes.Add(($"{section}, {row[0]}", "a cell is missing"));
                else if (table.Head[0] == "Ball"
                    ? !EndsThere(plan, size, row[0], row[column])
                    : !Agrees(plan, size, section, row[0], row[column]))
                    notes.Add(($"{section}, {row[0]}, {size.Name}", $"the text says {row[column]}"));
            }
        }
    }

    private static bool Agrees(Plan plan, SizePlan size, string section, string label, string cell)
    {
        var comma = label.LastIndexOf(", ", StringComparison.Ordinal);
        var (name, units) = comma < 0 ? (label, "") : (label[..comma], label[(comma + 2)..]);
        if (section == "MATERIALS")
            return Yarn(size, label, name, cell);
        if (Length(plan, size, name) is not { } length)
            return false;
        return Amounts.Says(cell, length, units);
    }

    /// <summary>
    /// Such as <c>front, row 31: F3</c>: the third stitch of foam, counted along the sections from the sequence's beginning.
    /// </summary>
    private static bool EndsThere(Plan plan, SizePlan size, string label, string cell)
    {
        var ball = label.StartsWith("Ball ", StringComparison.Ordinal)
            && int.TryParse(label[5..], NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0;
        if (size.Yarn.Joins.FirstOrDefault(j => j.Ball == ball) is not { } join)
            return ball > 0 && cell == "–";
        var (section, units) = (0, join.Place / 1e6);
        for (; units >= plan.Sequence.UnitsIn(section) - 1e-9; section++)
            units -= plan.Sequence.UnitsIn(section);
        var word = plan.Sizes[0].Pieces[0].Working == Fabrics.Working.Turned ? "row" : "round";
        var row = join.Row == 0 ? "foundation" : string.Create(CultureInfo.InvariantCulture, $"{word} {join.Row}");
        return cell == string.Create(CultureInfo.InvariantCulture, $"{join.Run.Name}, {row}: {plan.Sequence.Colours[section].Symbol}{(int)(units + 1e-6) + 1}");
    }

    private static bool Yarn(SizePlan size, string label, string name, string cell)
    {
        var yarn = size.Yarn;
        bool Lengths(Length length) => Rounded(cell, label, length.Metres, length.Inches / 36, 1, 1);
        return name switch
        {
            "Length" => Lengths(yarn.Length),
            "Weight" => Rounded(cell, label, yarn.Mass.Grams, yarn.Mass.Ounces, 1, 0),
            "Companion yarn" when !label.EndsWith("balls to buy", StringComparison.Ordinal) => Lengths(yarn.Companion!.Length),
            "Companion yarn" => cell == yarn.Companion!.Balls.ToString(CultureInfo.InvariantCulture),
            "Makers of 20 whom one ball fewer serves" => int.TryParse(cell, NumberStyles.None, CultureInfo.InvariantCulture, out var makers)
                && makers == Enumerable.Range(0, 21)
                    .Last(n => n / 20.0 <= (yarn.Odds.LastOrDefault(o => o.Balls < yarn.BallsSafe)?.Share ?? 0) + 1e-9),
            "Balls that serve 99 makers of 100" => cell == yarn.Odds.First(o => o.Share >= 0.99).Balls.ToString(CultureInfo.InvariantCulture),
            "Balls to buy" => cell == yarn.BallsSafe.ToString(CultureInfo.InvariantCulture),
            _ => false,
        };
    }

    /// <summary>In the order in which the label names its units.</summary>
    private static bool Rounded(string cell, string label, double metric, double imperial, double metricSlack, double imperialSlack)
    {
        var metricFirst = label.EndsWith(", m", StringComparison.Ordinal) || label.EndsWith(", g", StringComparison.Ordinal)
            || label.Contains(", m /", StringComparison.Ordinal) || label.Contains(", g /", StringComparison.Ordinal);
        var count = label.Contains(" / ", StringComparison.Ordinal) ? 2 : 1;
        double[] exact = metricFirst ? [metric, imperial] : [imperial, metric];
        double[] slack = metricFirst ? [metricSlack, imperialSlack] : [imperialSlack, metricSlack];
        return Amounts.SaysRoundedUp(cell, exact.AsSpan(0, count), slack.AsSpan(0, count));
    }

    /// <summary>From the first row's beginning to the last one's, each pair of rows two stitches on.</summary>
    private static Length Slanted(Plan plan, SizePlan size)
    {
        var up = size.Finished[plan.Direction == Direction.Up ? GarmentMeasure.Length : GarmentMeasure.Width].Centimetres;
        var on = size.Pieces[0].Rows * plan.StitchWidth.Centimetres;
        return Quantities.Length.FromCentimetres(Math.Sqrt(up * up + on * on));
    }

    /// <summary>What is printed of both, to half a centimetre, is what a reader takes from each other.</summary>
    private static Length? Ease(Length? finished, Length body)
    {
        return finished is { } made ? Half(made) - Half(body) : null;

        static Length Half(Length length) =>
            Quantities.Length.FromCentimetres(Math.Round(length.Centimetres * 2, MidpointRounding.AwayFromZero) / 2);
    }

    private static Length? Length(Plan plan, SizePlan size, string name)
    {
        var girth = size.Body.ContainsKey("bust") ? "bust" : "chest";
        Length? Finished(GarmentMeasure measure) => size.Finished.TryGetValue(measure, out var value) ? value : null;
        switch (name)
        {
            case "To fit bust" or "To fit chest":
                return size.Body[girth];
            case "To fit hip" or "To fit head" or "To fit waist" or "To fit shoulders":
                return size.Body[name["To fit ".Length..]];
            case "Finished hip":
                return Finished(GarmentMeasure.Width);
            case "Ease at the hip":
                return Ease(Finished(GarmentMeasure.Width), size.Body["hip"]);
            case "Finished head":
                return Finished(GarmentMeasure.Circumference);
            case "Ease at the head":
                return Ease(Finished(GarmentMeasure.Circumference), size.Body["head"]);
            case "Finished bust" or "Finished chest":
                return Finished(GarmentMeasure.Width);
            case "Ease at the bust" or "Ease at the chest":
                return Ease(Finished(GarmentMeasure.Width), size.Body[girth]);
            case "Width, along a row" or "Width, from the first row to the last":
                return name.EndsWith("a row", StringComparison.Ordinal) == (plan.Direction == Direction.Up)
                    ? Finished(GarmentMeasure.Width) : null;
            case "Length, along a row" or "Length, from the first row to the last":
                return name.EndsWith("a row", StringComparison.Ordinal) == (plan.Direction == Direction.Sideways)
                    ? Finished(GarmentMeasure.Length) : null;
            case "Slanted edge":
                return Slanted(plan, size);
            case "Straight across, between the slanted edges":
                // As much fabric as between the first row and the last.
                var (width, length) = (size.Finished[GarmentMeasure.Width].Centimetres, size.Finished[GarmentMeasure.Length].Centimetres);
                return Quantities.Length.FromCentimetres(width * length / Slanted(plan, size).Centimetres);
            case "Width" or "Width, front and back together":
                return Finished(GarmentMeasure.Width);
            case "Wrist to wrist":
                return Finished(GarmentMeasure.WristToWrist);
            case "Front or back, across":
                return Finished(GarmentMeasure.PanelWidth);
            case "Leg opening, depth":
                return Finished(GarmentMeasure.LegOpening);
            case "Tab, front to back":
                return Finished(GarmentMeasure.TabLength);
            case "Back, width":
                return Finished(GarmentMeasure.BackWidth);
            case "Neck opening, each front":
                return Finished(GarmentMeasure.FrontNeck);
            case "Hem, round":
                return Finished(GarmentMeasure.HemWidth);
            case "Upper edge, round":
                return Finished(GarmentMeasure.CrownEdge);
            case "Length":
                return Finished(GarmentMeasure.Length);
            case "Armhole depth":
                return Finished(GarmentMeasure.ArmholeDepth);
            case "Armhole inset":
                return Finished(GarmentMeasure.ArmholeInset);
            case "Neck depth, front":
                return Finished(GarmentMeasure.NeckDepth);
            case "Neck depth, back":
                return Finished(GarmentMeasure.BackNeckDepth);
            case "Side vent":
                return Finished(GarmentMeasure.Vent);
            case "Sleeve join":
                return Finished(GarmentMeasure.SleeveJoin);
            case "Shoulder width":
                // Across front or back: a neck, and at either side a shoulder and an armhole.
                return Finished(GarmentMeasure.Width) is { } round && Finished(GarmentMeasure.NeckWidth) is { } neck
                    ? (round - 2 * neck - 4 * (Finished(GarmentMeasure.ArmholeInset) ?? Quantities.Length.Zero)) / 4 : null;
            case "Neck opening, flat":
                return Finished(GarmentMeasure.NeckWidth);
            case "Sleeve, round":
                return Finished(GarmentMeasure.SleeveWidth);
            case "Sleeve length":
                return Finished(GarmentMeasure.SleeveLength);
            case "Circumference":
                return Finished(GarmentMeasure.Circumference);
            case "Height":
                return Finished(GarmentMeasure.Height);
            case "Gusset, depth":
                return Finished(GarmentMeasure.GussetDepth);
            case "Strap with its ends":
                return Finished(GarmentMeasure.StrapLength);
            case "Wingspan":
                return Finished(GarmentMeasure.Wingspan);
            case "Depth":
                return Finished(GarmentMeasure.Depth);
        }
        if (size.Edgings.FirstOrDefault(e => name == $"{PlaceWords.Of(e.Where)} at rest" || name == $"{PlaceWords.Of(e.Where)} stretched") is { } edging)
        {
            var kind = EdgingLibrary.Find(edging.Edging);
            return name.EndsWith("rest", StringComparison.Ordinal)
                ? EdgingComparison.Rest(kind, edging.Edge, EdgingComparison.Elastic(plan.Construction, size, edging))
                : edging.StretchedWidth;
        }
        // Lettered dimensions: “a: front and back, width”.
        var colon = name.IndexOf(": ", StringComparison.Ordinal);
        var comma = name.LastIndexOf(", ", StringComparison.Ordinal);
        if (colon < 0 || comma < colon)
            return null;
        var lengths = name[(colon + 2)..comma].Split(" and ").Select(one => size.Pieces.FirstOrDefault(p => p.Name == one))
            .Select(piece => piece is null ? null : Lettered(plan, piece, name[(comma + 2)..])).ToArray();
        return lengths.All(l => l is { } length && Math.Abs((length - lengths[0]!.Value).Millimetres) < 1e-6) ? lengths[0] : null;
    }

    /// <summary>A cut is measured on the outline of the piece as it is drawn, of two in the mean, a slit between its marks.</summary>
    private static Length? Lettered(Plan plan, PiecePlan piece, string what)
    {
        var cuts = WornOutline.Of(plan, piece).Cuts;
        return what switch
        {
            "width" => piece.Width,
            "height" => piece.Height,
            "neck width" => Cut(OpeningId.Neck, true) ?? Slit(OpeningId.Neck, piece.Width),
            "neck depth" => Cut(OpeningId.Neck, false) ?? Quantities.Length.Zero,
            "armhole depth" => Cut(OpeningId.Armhole, false) ?? Slit(OpeningId.Armhole, piece.Height),
            "armhole inset" => Cut(OpeningId.Armhole, true) ?? Quantities.Length.Zero,
            "sleeve joined to the body" => Slit(OpeningId.SleeveJoin, piece.Height),
            "side vent" => Slit(OpeningId.Vent, piece.Height),
            "leg opening depth" => Slit(OpeningId.LegOpening, piece.Height),
            "tab joined to the side" => Slit(OpeningId.Tab, piece.Height),
            "front neck" => Cut(OpeningId.Neck, true) ?? Slit(OpeningId.Neck, piece.Width),
            "shoulder width" => (piece.Width - (Cut(OpeningId.Neck, true) ?? Slit(OpeningId.Neck, piece.Width) ?? Quantities.Length.Zero))
                / (plan.Construction.GroupOf(piece.Id).Opening(OpeningId.Neck, piece.Id).At == OpeningAt.Middle ? 2 : 1)
                - (Cut(OpeningId.Armhole, true) ?? Quantities.Length.Zero),
            _ when plan.Construction.GroupOf(piece.Id).Gores is { } gores && what == $"{EdgeWords.Of(gores.Top)} edge" => Top(),
            _ => null,
        };

        Length? Top() => WornOutline.Of(plan, piece).Points.Where(p => p.Y < 1e-6).Select(p => p.X).ToArray() is { Length: > 0 } top
            ? Quantities.Length.FromCentimetres(top.Max() - top.Min()) : null;

        Length? Cut(OpeningId id, bool across)
        {
            var found = cuts.Where(c => c.Opening == id).Select(c => c.Points.Select(p => across ? p.X : p.Y).ToArray()).ToArray();
            return found.Length == 0 ? null : Quantities.Length.FromCentimetres(found.Average(places => places.Max() - places.Min()));
        }

        Length? Slit(OpeningId id, Length side) => piece.Openings.FirstOrDefault(o => o.Id == id) is { } slit
            ? side * ((slit.Last - slit.First + 1.0) / (slit.AlongStitches ? Columns() : piece.Rows)) : null;

        int Columns() => piece.Shape is { } shape ? shape.LastColumn - shape.FirstColumn + 1 : piece.Stitches;
    }
}
