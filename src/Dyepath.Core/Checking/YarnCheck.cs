using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Checking;

/// <summary>Adds the yarn up row by row, and walks the balls.</summary>
internal static class YarnCheck
{
    private static readonly Length Hair = Length.FromCentimetres(1);

    public static void Yarn(Plan plan, SizePlan size, PlainFabric fabric, Disagreements notes)
    {
        var yarn = size.Yarn;
        var uses = Length.Zero;
        var companion = Length.Zero;
        foreach (var use in yarn.Uses)
        {
            if (use.Companion)
                companion += use.Length;
            else
                uses += use.Length;
        }
        notes.Same("length", yarn.Length, uses, Hair);
        var ball = plan.Project.Yarn.Ball;
        notes.Same("balls", yarn.Length + yarn.Leftover, ball.Length * yarn.BallsTypical, Hair);
        notes.Same("mass", yarn.Mass.Grams, ball.Mass.Grams * (yarn.Length.Metres / ball.Length.Metres), 0.01);
        if (yarn.BallsSafe * ball.Length.Metres < yarn.Length.Metres * 1.2 - 1e-6)
            notes.Say("ballsSafe", $"{yarn.BallsSafe} balls hold no fifth in reserve.");
        if (yarn.Companion is { } solid)
            notes.Same("companion", solid.Length, companion, Hair);
        foreach (var piece in size.Pieces)
            Piece(piece, yarn, fabric, notes);
        foreach (var join in yarn.Joins)
        {
            var piece = size.Pieces.FirstOrDefault(
                p => join.Piece == p.Name || join.Piece.StartsWith(p.Name + " ", StringComparison.Ordinal));
            if (piece is null || join.Row > piece.Rows || join.Row < 0 || join.Stitch < 1
                || join.Stitch > Math.Max(piece.FoundationChains, piece.RowStitches.Max()))
                notes.Say($"joins.{join.Ball}",
                    $"Ball {join.Ball} ends at row {join.Row}, stitch {join.Stitch} of the {join.Piece}, where there is none.");
        }
    }

    private static void Piece(PiecePlan piece, YarnPlan yarn, PlainFabric fabric, Disagreements notes)
    {
        var units = 0.0;
        for (var row = 0; row < piece.Rows; row++)
        {
            units += (double)piece.RowStitches[row % piece.RowStitches.Length] / fabric.PerUnit;
            if (row < piece.Rows - 1)
                units += piece.TurnCost;
        }
        var planned = yarn.Uses.Where(u => u.What == $"{piece.Name}: stitches" || u.What == $"{piece.Name}: turning")
            .Aggregate(Length.Zero, (sum, use) => sum + use.Length);
        notes.Same($"uses.{piece.Name}", planned, fabric.Unit * (piece.Copies * units), Hair);
        var chains = fabric.Unit * (
            piece.Copies * piece.FoundationChains * 25.5 / 53 / (fabric.Stitch.YarnInSingleCrochet * fabric.PerUnit));
        var foundation = yarn.Uses.Where(u => u.What == $"{piece.Name}: foundation").Aggregate(Length.Zero, (sum, use) => sum + use.Length);
        notes.Same($"uses.{piece.Name}: foundation", foundation, chains, Hair);
    }
}
