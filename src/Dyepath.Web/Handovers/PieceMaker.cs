using Dyepath.Core.Garments;
using Dyepath.Core.Making.Log;
using Dyepath.Storage.Makings;
using Dyepath.Web.Projects;

namespace Dyepath.Web.Handovers;

/// <summary>Makes the piece that is handed over from a project's stored text.</summary>
internal static class PieceMaker
{
    /// <summary>Most plans take a few dozen milliseconds.</summary>
    private static readonly TimeSpan LongestPlan = TimeSpan.FromSeconds(10);

    /// <summary>The project for one size, without its photos and with nothing done yet; or the answer that says why there is none.</summary>
    public static (MakingText? Piece, IResult? Refusal) Make(byte[] document, string size, CancellationToken stop)
    {
        if (DocumentText.Read(document).Text?.Project is not { } project)
            return Refused("The project has faults still.", "Open it in the workspace, mend what is marked there, then hand it over.");
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(LongestPlan);
        PlanResult planned;
        try
        {
            planned = GarmentPlanner.Plan(project, patience.Token);
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            return Refused("The project's plan takes too long.", "Choose fewer sizes, then hand it over.");
        }
        if (!planned.HasPlan)
            return Refused("The project has no plan yet.", string.Join(' ', planned.Reasons.Select(reason => reason.Text)));
        var sizes = planned.Plan.Sizes.Select(s => s.Name).ToArray();
        if (!sizes.Contains(size))
            return Refused("The project has no such size.", $"Choose one of {string.Join(", ", sizes)}.");
        var piece = MakingWriter.WriteUtf8(MakingDocument.Begin(project, size));
        return piece.Length <= MakingReader.MostBytes ? (new(piece, project.Title, size, 0), null) : (null, RequestBody.TooLarge);
    }

    private static (MakingText?, IResult) Refused(string title, string detail) =>
        (null, Problems.Of(StatusCodes.Status400BadRequest, title, detail));
}
