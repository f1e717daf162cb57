using Dyepath.Contracts;
using Dyepath.Core.Garments;
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

    private static SwatchPicture? Picture(Plan plan) =>
        ProjectPicture.Of(plan, SwatchPicture.MostStitches, SwatchPicture.MostRows) is { } corner
            ? new SwatchPicture([.. corner.Colours.Select(c => c.ToString())], corner.Columns, corner.Rows, corner.Cells)
            : null;

    [LoggerMessage(Level = LogLevel.Warning, Message = "A plan took over {Limit}; the project is stored without a picture")]
    private partial void TookTooLong(TimeSpan limit);

    [LoggerMessage(Level = LogLevel.Error, Message = "A plan broke; the project is stored without a picture")]
    private partial void Broke(Exception fault);
}
