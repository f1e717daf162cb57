using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Draft;

namespace Dyepath.Workspace.Tests.Draft;

/// <summary>Where every line, band and edge of a drawing stands, worked out from the measures of the size alone.</summary>
public sealed class DrawnMeasuresTests
{
    private static readonly string[] InRows = ["Fronts"];

    /// <summary>Every garment as it is begun, and with each edge edged by itself.</summary>
    private static readonly Lazy<(string Kind, EdgingPlace? Edge, Plan Plan)[]> All = new(() =>
    [
        .. from kind in Repertoire.All
           from edge in kind.Edges.Select(e => (EdgingPlace?)e).Prepend(null)
           let plan = Planned(kind, edge)
           where plan is not null
           select (kind.Name, edge, plan),
    ]);

    private static Plan? Planned(GarmentKind kind, EdgingPlace? edge)
    {
        var project = StarterDocument.Of(kind);
        if (edge is not { } place)
            return GarmentPlanner.Plan(project).Plan;
        var edging = InRows.Contains(place.ToString()) ? "button-band" : kind.Name == "cardigan" && place != EdgingPlace.Cuffs ? "sc-rows" : "sc";
        return GarmentPlanner.Plan(project with { Garment = project.Garment with { Edgings = [new(place, edging, null)] } }).Plan;
    }

    private static IEnumerable<(string Kind, EdgingPlace? Edge, Plan Plan, SizePlan Size, GarmentDrawing Drawing)> Drawn() =>
        from at in All.Value
        from size in new[] { at.Plan.Sizes[0], at.Plan.Sizes[^1] }.Distinct()
        select (at.Kind, at.Edge, at.Plan, size, WornGarment.Front(at.Plan, size));

    private static double Deep(SizePlan size, EdgingPlace place) => size.Edgings.Where(e => e.Where == place).Sum(e => e.Depth.Centimetres);

    private static double Deepest(SizePlan size) => size.Edgings.Select(e => e.Depth.Centimetres).Append(0).Max();

    private static Patch[] Body(string kind, GarmentDrawing drawing) => [.. drawing.Patches.Take(kind == "cardigan" ? 2 : 1)];

    /// <summary>What lies below the piece and is counted in its length.</summary>
    private static double Below(SizePlan size) =>
        new[] { EdgingPlace.Hem, EdgingPlace.Brim, EdgingPlace.Brims, EdgingPlace.Border }.Sum(place => Deep(size, place));

    private static double Finished(SizePlan size, params GarmentMeasure[] any) => size.Finished[any.First(size.Finished.ContainsKey)].Centimetres;

    private static bool IsRound(string kind) => kind is "pullover" or "tunic" or "cardigan" or "vest" or "off-shoulder-top" or "off-shoulder-dress"
        or "skirt" or "hat" or "headband" or "cowl" or "pet-tabard";

    private static void Same((double, double, double, double) wanted, DimensionMark mark, string what) => Assert.True(
        Math.Abs(wanted.Item1 - mark.X1) + Math.Abs(wanted.Item2 - mark.Y1) + Math.Abs(wanted.Item3 - mark.X2) + Math.Abs(wanted.Item4 - mark.Y2) < 1e-6,
        $"{what}: {wanted} and not {mark}");

    /// <summary>Below stands the width, in the middle, and at the left the height up from the edge of its edging.</summary>
    [Fact]
    public void Width_and_height_stand_a_gap_off_what_is_drawn()
    {
        foreach (var (kind, edge, plan, size, drawing) in Drawn())
        {
            var (main, deepest) = (drawing.Patches[0], Deepest(size));
            var gap = Math.Max(2, Math.Max(main.Width, main.Height) / 20);
            var body = Body(kind, drawing);
            var middle = (body[0].X + body[^1].X + body[^1].Width) / 2;
            var half = Finished(size, GarmentMeasure.PanelWidth, GarmentMeasure.WristToWrist, GarmentMeasure.Width, GarmentMeasure.Circumference, GarmentMeasure.Wingspan)
                / (IsRound(kind) ? 4 : 2);
            var floor = drawing.Patches.Max(p => p.Y + p.Height) + deepest + gap;
            Same((middle - half, floor, middle + half, floor), drawing.Dimensions[0], $"{kind} {edge}");
            var (wall, bottom) = (drawing.Patches.Min(p => p.X) - deepest - gap, main.Y + main.Height + Below(size));
            var high = Finished(size, GarmentMeasure.Length, GarmentMeasure.Height, GarmentMeasure.Depth);
            Same((wall, bottom - high, wall, bottom), drawing.Dimensions[1], $"{kind} {edge}");
            Assert.Equal(IsRound(kind), drawing.Dimensions[0].Label.EndsWith(" round", StringComparison.Ordinal));
            Assert.Equal(Wording.Say(Core.Quantities.Length.FromCentimetres(high), plan.Project.Edition.Units), drawing.Dimensions[1].Label);
        }
    }

    /// <summary>Openings of the top stand 4 cm above it, those at the side 4 cm beside everything, as long as they are open.</summary>
    [Fact]
    public void Openings_and_sleeves_have_their_lines_above_and_at_the_right()
    {
        foreach (var (kind, edge, _, size, drawing) in Drawn())
        {
            var (body, main) = (Body(kind, drawing), drawing.Patches[0]);
            var room = drawing.Patches.Max(p => p.X + p.Width) + Deepest(size) + 4;
            var level = -4 - Deep(size, EdgingPlace.TopEdge);
            var wanted = new List<(double, double, double, double)>();
            if (size.Finished.TryGetValue(GarmentMeasure.FrontNeck, out var half))
                wanted.Add((main.Width - half.Centimetres, level, main.Width, level));
            else if (size.Finished.TryGetValue(GarmentMeasure.NeckWidth, out var neck))
                wanted.Add(((main.Width - neck.Centimetres) / 2, level, (main.Width + neck.Centimetres) / 2, level));
            var bare = kind is "off-shoulder-top" or "off-shoulder-dress";
            if (kind is "cardigan")
            {
                var cuff = drawing.Patches[3].X + drawing.Patches[3].Width + Deep(size, EdgingPlace.Cuffs);
                wanted.Add((cuff - Finished(size, GarmentMeasure.SleeveLength), level, cuff, level));
                wanted.Add((room, 0, room, Finished(size, GarmentMeasure.SleeveWidth) / 2));
            }
            else if (bare)
            {
                var sleeve = drawing.Patches[2];
                var (centre, seen) = (sleeve.X + sleeve.Width / 2, Finished(size, GarmentMeasure.SleeveWidth) / 2);
                wanted.Add((centre - seen / 2, level, centre + seen / 2, level));
                var cuff = sleeve.Y + sleeve.Height + Deep(size, EdgingPlace.Cuffs);
                wanted.Add((room, cuff - Finished(size, GarmentMeasure.SleeveLength), room, cuff));
            }
            else if (kind == "tabard")
            {
                var join = Finished(size, GarmentMeasure.TabJoin);
                wanted.Add((room, (main.Height - join) / 2, room, (main.Height + join) / 2));
            }
            else if (size.Finished.TryGetValue(kind == "pet-tabard" ? GarmentMeasure.LegOpening : GarmentMeasure.ArmholeDepth, out var side))
                wanted.Add((room, 0, room, side.Centimetres));
            Assert.Equal(wanted.Count, drawing.Dimensions.Length - 2);
            foreach (var (line, mark) in wanted.Zip(drawing.Dimensions.Skip(2)))
                Same(line, mark, $"{kind} {edge}");
            Assert.Equal(body[^1].X + body[^1].Width, drawing.Patches.Where(p => p.Turns == 0 && p.Y == 0 && !bare).Select(p => p.X + p.Width).Append(body[^1].X + body[^1].Width).Max());
        }
    }

    /// <summary>A band along a straight side is a box as deep as the edging; round the corners where it frames the piece.</summary>
    [Fact]
    public void Bands_lie_along_the_sides_that_they_edge()
    {
        foreach (var (kind, edge, plan, size, drawing) in Drawn().Where(d => d.Edge is not null && d.Kind is not ("shawl" or "bias-wrap")))
        {
            if (size.Edgings.Length == 0)
                continue;
            var (d, main) = (size.Edgings.Single().Depth.Centimetres, drawing.Patches[0]);
            var (w, h) = (main.Width, main.Height);
            var body = Body(kind, drawing);
            double Neck() => (w - Finished(size, GarmentMeasure.NeckWidth)) / 2;
            List<(double X, double Y, double W, double H)>? wanted = (kind, edge!.Value) switch
            {
                ("vest", not EdgingPlace.Hem) => null,
                ("tabard", EdgingPlace.Hem) => Sides((h + Finished(size, GarmentMeasure.TabJoin)) / 2, (h - Finished(size, GarmentMeasure.TabJoin)) / 2, true),
                ("tabard", EdgingPlace.Armholes) => Sides(0, (h - Finished(size, GarmentMeasure.TabJoin)) / 2, false),
                ("poncho", EdgingPlace.Hem) => Sides(0, h, true),
                ("cardigan", EdgingPlace.Neck) =>
                    [(w - Finished(size, GarmentMeasure.FrontNeck) - d, -d, Finished(size, GarmentMeasure.FrontNeck) + d, d), (body[1].X, -d, Finished(size, GarmentMeasure.FrontNeck) + d, d)],
                ("cardigan", EdgingPlace.Fronts) => [(w, 0, d, h)],
                (_, EdgingPlace.Neck) => [(Neck() - d, -d, w - 2 * Neck() + 2 * d, d)],
                (_, EdgingPlace.Armholes) => Sides(0, Finished(size, GarmentMeasure.ArmholeDepth) + d, false),
                (_, EdgingPlace.LegOpenings) => Sides(0, Finished(size, GarmentMeasure.LegOpening) + d, false),
                (_, EdgingPlace.Hem or EdgingPlace.Brim) => [.. body.Select(p => (p.X, h, p.Width, d))],
                (_, EdgingPlace.Brims) => [(0, -d, w, d), (0, h, w, d)],
                ("cardigan", EdgingPlace.Cuffs) => [(drawing.Patches[2].X - d, 0, d, drawing.Patches[2].Height), (drawing.Patches[3].X + drawing.Patches[3].Width, 0, d, drawing.Patches[3].Height)],
                (_, EdgingPlace.Cuffs) => [.. drawing.Patches.Skip(1).Select(p => (p.X, p.Height, p.Width, d))],
                (_, EdgingPlace.TopEdge or EdgingPlace.Waist) => [.. drawing.Patches.Select(p => (p.X, -d, p.Width, d))],
                (_, EdgingPlace.Border) => [(-d, -d, w + 2 * d, d), (-d, 0, d, h), (-d, h, w + 2 * d, d), (w, 0, d, h)],
                _ => null,
            };
            if (wanted is null)
                continue;
            var bands = drawing.Outlines.Where(o => o.Kind == "edging").Select(o => (
                X: o.Points.Min(p => p.X), Y: o.Points.Min(p => p.Y), W: o.Points.Max(p => p.X) - o.Points.Min(p => p.X), H: o.Points.Max(p => p.Y) - o.Points.Min(p => p.Y)))
                .Select(b => (Math.Round(b.X, 6), Math.Round(b.Y, 6), Math.Round(b.W, 6), Math.Round(b.H, 6))).Distinct().Order().ToArray();
            var told = wanted.Select(b => (Math.Round(b.X, 6), Math.Round(b.Y, 6), Math.Round(b.W, 6), Math.Round(b.H, 6))).Order().ToArray();
            Assert.True(told.Length == bands.Length && told.Zip(bands).All(p => Near(p.First, p.Second)),
                $"{kind} {edge} {size.Name}: {string.Join(" ", told)} and not {string.Join(" ", bands)}");

            List<(double, double, double, double)> Sides(double from, double length, bool under) =>
                [(-d, from, d, length), (w, from, d, length), .. under ? new[] { (-d, h, w + 2 * d, d) } : []];
        }

        static bool Near((double, double, double, double) a, (double, double, double, double) b) =>
            Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) + Math.Abs(a.Item3 - b.Item3) + Math.Abs(a.Item4 - b.Item4) < 1e-4;
    }

    /// <summary>Inside of what is cut out of a vest the band turns its corners square, as deep everywhere.</summary>
    [Fact]
    public void Bands_in_square_cuts_have_square_corners()
    {
        foreach (var (_, edge, plan, size, drawing) in Drawn().Where(d => d is { Kind: "vest", Edge: EdgingPlace.Neck or EdgingPlace.Armholes }))
        {
            var d = size.Edgings.Single().Depth.Centimetres;
            var cuts = WornOutline.Of(plan, size[PieceId.Front]).Cuts;
            var bands = drawing.Outlines.Where(o => o.Kind == "edging").Select(o => o.Points).ToArray();
            if (edge == EdgingPlace.Neck)
            {
                var neck = cuts.Single(c => c.Opening == OpeningId.Neck).Points;
                var (left, right, deep) = (neck.Min(p => p.X), neck.Max(p => p.X), neck.Max(p => p.Y));
                (double, double)[] wanted = [(right, 0), (right, deep), (left, deep), (left, 0), (left + d, 0), (left + d, deep - d), (right - d, deep - d), (right - d, 0)];
                Same(wanted, Assert.Single(bands));
                Same([(right, 0), (right, deep), (left, deep), (left, 0)], drawing.Outlines.Single(o => o.Kind == "opening" && o.Points.Length == 4).Points);
            }
            else
            {
                var (inset, deep, width) = (cuts.SelectMany(c => c.Points).Where(p => p.X < 9).Max(p => p.X), bands[0].Max(p => p.Y), drawing.Patches[0].Width);
                Same([(inset, 0), (inset, deep), (0, deep), (0, deep - d), (inset - d, deep - d), (inset - d, 0)], bands[0]);
                Same([(width, deep), (width - inset, deep), (width - inset, 0), (width - inset + d, 0), (width - inset + d, deep - d), (width, deep - d)], bands[1]);
            }
        }

        static void Same(IEnumerable<(double X, double Y)> wanted, IEnumerable<(double X, double Y)> points)
        {
            Assert.Equal(wanted.Count(), points.Count());
            Assert.All(wanted.Zip(points), p => Assert.True(Math.Abs(p.First.X - p.Second.X) + Math.Abs(p.First.Y - p.Second.Y) < 1e-6, $"{p.First} and not {p.Second}"));
        }
    }

    /// <summary>What is open without being cut out is drawn as a line: along the top in the middle, at the sides from the top down.</summary>
    [Fact]
    public void Slits_are_lines_as_long_as_they_are_open()
    {
        foreach (var (kind, edge, _, size, drawing) in Drawn().Where(d => d.Kind is not ("vest" or "shawl" or "bias-wrap")))
        {
            var main = drawing.Patches[0];
            var (w, h) = (main.Width, main.Height);
            var wanted = new List<(double, double, double, double)>();
            if (size.Finished.TryGetValue(GarmentMeasure.FrontNeck, out var half))
            {
                wanted.Add((w - half.Centimetres, 0, w, 0));
                wanted.Add((drawing.Patches[1].X, 0, drawing.Patches[1].X + half.Centimetres, 0));
            }
            else if (size.Finished.TryGetValue(GarmentMeasure.NeckWidth, out var neck))
                wanted.Add(((w - neck.Centimetres) / 2, 0, (w + neck.Centimetres) / 2, 0));
            var right = kind == "cardigan" ? drawing.Patches[1].X + drawing.Patches[1].Width : w;
            if (kind == "tabard")
            {
                var join = Finished(size, GarmentMeasure.TabJoin);
                wanted.AddRange([(0, (h - join) / 2, 0, (h + join) / 2), (w, (h - join) / 2, w, (h + join) / 2)]);
            }
            else
            {
                GarmentMeasure[] sides = [GarmentMeasure.ArmholeDepth, GarmentMeasure.LegOpening, GarmentMeasure.SleeveJoin];
                if (sides.Any(size.Finished.ContainsKey))
                    wanted.AddRange([(0, 0, 0, Finished(size, sides)), (right, 0, right, Finished(size, sides))]);
            }
            var lines = drawing.Outlines.Where(o => o.Kind == "opening").Select(o => (o.Points[0].X, o.Points[0].Y, o.Points[1].X, o.Points[1].Y)).Order().ToArray();
            Assert.All(drawing.Outlines.Where(o => o.Kind == "opening"), o => Assert.Equal((2, false), (o.Points.Length, o.Closed)));
            Assert.Equal(wanted.Count, lines.Length);
            Assert.All(wanted.Order().Zip(lines), p => Assert.True(
                Math.Abs(p.First.Item1 - p.Second.Item1) + Math.Abs(p.First.Item2 - p.Second.Item2) + Math.Abs(p.First.Item3 - p.Second.Item3)
                + Math.Abs(p.First.Item4 - p.Second.Item4) < 1e-6, $"{kind} {edge}: {p.First} and not {p.Second}"));
        }
    }

    /// <summary>The view leaves 9 cm round everything, or more round what is large, and half as much above; below is room for a number.</summary>
    [Fact]
    public void The_figure_stands_behind_it_and_the_view_holds_both()
    {
        foreach (var (kind, edge, plan, size, drawing) in Drawn())
        {
            var (d, body) = (Deepest(size), Body(kind, drawing));
            var (left, right) = (drawing.Patches.Min(p => p.X) - d, drawing.Patches.Max(p => p.X + p.Width) + d);
            var (top, bottom) = (-d, drawing.Patches.Max(p => p.Y + p.Height) + d);
            Assert.Equal(size.Body.ContainsKey("bust") && kind is not ("hat" or "headband"), drawing.IsOnFigure);
            if (drawing.IsOnFigure)
            {
                var figure = StandingFigure.Of(plan, size, (body[0].X + body[^1].X + body[^1].Width) / 2, bottom);
                (left, right) = (Math.Min(left, figure.Min(p => p.X)), Math.Max(right, figure.Max(p => p.X)));
                (top, bottom) = (Math.Min(top, figure.Min(p => p.Y)), Math.Max(bottom, figure.Max(p => p.Y)));
                var pieces = drawing.Outlines.Where(o => o.Kind == "edge").ToArray();
                var seen = drawing.Outlines.Where(o => o.Kind == "body").SelectMany(o => o.Points).ToArray();
                // Whatever of it is behind no piece is drawn, and nothing else but where it goes behind one.
                Assert.All(figure.Where(p => pieces.All(o => !IsWithin(o, p) && Distance(o, p) > 0.01)), p => Assert.True(seen.Any(s => Near(s, p)), $"{kind} {edge}: {p}"));
                Assert.All(seen, s => Assert.True(figure.Any(p => Near(s, p)) || pieces.Any(o => Distance(o, s) < 0.002), $"{kind} {edge}: {s}"));
                Assert.All(seen.Where(s => !figure.Any(p => Near(s, p))), s => Assert.DoesNotContain(pieces, o => IsWithin(o, s) && Distance(o, s) > 1e-9));
            }
            var margin = Math.Max(9, 0.12 * Math.Max(right - left, bottom - top));
            Assert.Equal([left - margin, top - margin / 2, right - left + 2 * margin, bottom - top + 1.5 * margin],
                [drawing.Left, drawing.Top, drawing.Width, drawing.Height], (a, b) => Math.Abs(a - b) < 1e-6);
        }
    }

    private static bool Near((double X, double Y) a, (double X, double Y) b) => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y) < 1e-6;

    private static bool IsWithin(GarmentLine outline, (double X, double Y) at) => outline.Points.Zip(outline.Points.Skip(1).Append(outline.Points[0]))
        .Count(s => s.First.Y > at.Y != s.Second.Y > at.Y
            && s.First.X + (at.Y - s.First.Y) / (s.Second.Y - s.First.Y) * (s.Second.X - s.First.X) < at.X) % 2 == 1;

    private static double Distance(GarmentLine outline, (double X, double Y) at) => outline.Points.Zip(outline.Points.Skip(1).Append(outline.Points[0])).Min(s =>
    {
        var (x, y) = (s.Second.X - s.First.X, s.Second.Y - s.First.Y);
        var t = x * x + y * y is > 0 and var length ? Math.Clamp(((at.X - s.First.X) * x + (at.Y - s.First.Y) * y) / length, 0, 1) : 0;
        return Math.Sqrt(Math.Pow(s.First.X + t * x - at.X, 2) + Math.Pow(s.First.Y + t * y - at.Y, 2));
    });
}
