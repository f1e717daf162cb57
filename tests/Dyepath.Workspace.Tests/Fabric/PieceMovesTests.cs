using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Fabric;

namespace Dyepath.Workspace.Tests.Fabric;

public sealed class PieceMovesTests
{
    [Fact]
    public void A_start_moves_along_the_yarn_round_its_end_and_best_brings_it_back()
    {
        var document = Demo.Document();
        var before = document.Text;
        var plan = Demo.Planned(document);
        var back = plan.Sizes[0].Pieces[1];
        PieceMoves.MoveStart(document, plan, back, -1);
        var moved = Demo.Planned(document);
        Assert.True(PieceMoves.IsStartChosen(document, PieceId.Back));
        Assert.All(moved.Sizes, s => Assert.Equal((back.Start + 20) % 21, s.Pieces[1].Start));
        PieceMoves.MoveStart(document, moved, moved.Sizes[0].Pieces[1], 2);
        Assert.Equal((back.Start + 1) % 21, Demo.Planned(document).Sizes[0].Pieces[1].Start);
        PieceMoves.BestStart(document, PieceId.Back);
        Assert.False(PieceMoves.IsStartChosen(document, PieceId.Back));
        Assert.Equal(Compact(before), Compact(document.Text));
    }

    [Fact]
    public void Rows_are_fixed_for_one_size_with_the_direction_and_best_frees_them()
    {
        var document = Demo.Document();
        var plan = Demo.Planned(document);
        var (size, other) = (plan.Sizes[2], plan.Sizes[3]);
        PieceMoves.SetRows(document, plan, size, PieceId.Front, size.Pieces[0].Rows + 1);
        PieceMoves.SetRows(document, plan, size, PieceId.Front, size.Pieces[0].Rows + 2);
        var moved = Demo.Planned(document);
        Assert.Equal(plan.Direction, moved.Direction);
        Assert.Equal([size.Pieces[0].Rows + 2, size.Pieces[0].Rows + 2], moved.Sizes[2].Pieces.Take(2).Select(p => p.Rows));
        Assert.Equal(other.Pieces[0].Rows, moved.Sizes[3].Pieces[0].Rows);
        Assert.Equal(1, document.Count("sizes.overrides"));
        Assert.Equal("sizes.overrides[0]", PieceMoves.RowsPlace(document, plan, size.Name, PieceId.Back));
        Assert.Null(PieceMoves.RowsPlace(document, plan, size.Name, PieceId.Sleeve));
        PieceMoves.BestRows(document, plan, size.Name, PieceId.Back);
        Assert.False(document.Has("sizes.overrides"));
        Assert.Equal(size.Pieces[0].Rows, Demo.Planned(document).Sizes[2].Pieces[0].Rows);
    }

    private static string Compact(string json) => System.Text.Json.Nodes.JsonNode.Parse(json)!.ToJsonString();
}
