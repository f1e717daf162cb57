using Dyepath.Contracts;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions.Writing;
using Dyepath.Core.Projects;
using Dyepath.Storage.Projects;

namespace Dyepath.Web.Projects;

/// <summary>Makes what is stored from a text: its name, and a picture of the fabric that its plan draws.</summary>
internal sealed partial class DraftMaker(ILogger<DraftMaker> logger)
{
    /// <summary>A plan takes a few dozen milliseconds; whatever takes this long is stored without a picture.</summary>
    private static readonly TimeSpan LongestPlan = TimeSpan.FromSeconds(2);

    public Draft Make(DocumentText text, CancellationToken stop) =>
        new(text.Utf8, text.Name, text.Project is { } project ? Picture(project, stop) : null);

    private SwatchPicture? Picture(Project project, CancellationToken stop)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(LongestPlan);
        try
        {
            return GarmentPlanner.Plan(project, patience.Token).Plan is { } plan ? Picture(plan) : null;
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            TookTooLong(LongestPlan);
        }
#pragma warning disable CA1031 // Whatever goes wrong in a picture, the text is stored.
        catch (Exception fault) when (fault is not OperationCanceledException)
#pragma warning restore CA1031
        {
            Broke(fault);
        }
        return null;
    }

    private static SwatchPicture? Picture(Plan plan)
    {
        var size = plan.Sizes.FirstOrDefault(s => s.Name == plan.Project.Sizes.Base) ?? plan.Sizes[0];
        if (size.Pieces.FirstOrDefault(p => p.Pooled) is not { } piece)
            return null;
        var rows = Math.Min(piece.Rows, SwatchPicture.MostRows);
        var fabric = PieceFabric.Of(plan, piece, rows);
        var across = Math.Min(fabric.Path.Cells(0), SwatchPicture.MostStitches);
        var cells = new byte[across * rows];
        for (var row = 0; row < rows; row++)
        {
            // The fabric counts from its lower right corner, the picture from its upper left.
            var line = cells.AsSpan((rows - 1 - row) * across, across);
            fabric.Row(row)[..across].CopyTo(line);
            line.Reverse();
        }
        var yarn = plan.Project.Yarn;
        var sections = yarn.FromOtherEnd ? yarn.Sections.Reverse() : yarn.Sections;
        return new SwatchPicture([.. sections.Select(s => s.Colour.ToString())], across, rows, cells);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "A plan took over {Limit}; the project is stored without a picture")]
    private partial void TookTooLong(TimeSpan limit);

    [LoggerMessage(Level = LogLevel.Error, Message = "A plan broke; the project is stored without a picture")]
    private partial void Broke(Exception fault);
}
