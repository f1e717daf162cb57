using System.Threading.RateLimiting;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Storage.Makings;
using Dyepath.Web.Makings;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Handovers;

/// <summary>
/// Makes the piece that is handed over from a project's stored text. That is all that the host plans: each plan for a while only and
/// few at once, so that the cores are there for who saves and reads.
/// </summary>
internal sealed class PieceMaker(Func<Project, CancellationToken, PlanResult> plan) : IDisposable
{
    private const int AtOnce = 2;

    private const int Waiting = 8;

    /// <summary>Most plans take a few dozen milliseconds.</summary>
    private static readonly TimeSpan LongestPlan = TimeSpan.FromSeconds(10);

    private readonly ConcurrencyLimiter _turns = new(new ConcurrencyLimiterOptions
    {
        PermitLimit = AtOnce,
        QueueLimit = Waiting,
        QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
    });

    public PieceMaker()
        : this(GarmentPlanner.Plan)
    {
    }

    /// <summary>
    /// The project for one size, without its photos and with nothing done yet; or the answer that says why there is none.
    /// </summary>
    public async Task<(MakingText? Piece, IResult? Refusal)> MakeAsync(
        byte[] document, string size, HttpContext context, CancellationToken stop)
    {
        using var turn = await _turns.AcquireAsync(cancellationToken: stop);
        if (!turn.IsAcquired)
        {
            context.Response.Headers[HeaderNames.RetryAfter] = ((int)LongestPlan.TotalSeconds)
                .ToString(System.Globalization.CultureInfo.InvariantCulture);
            return (null, Problems.Of(
                StatusCodes.Status503ServiceUnavailable, "The host is planning other pieces just now.", "Hand it over again in a moment."));
        }
        // The thread that answers requests is free meanwhile.
        return await Task.Run(() => Make(document, size, stop), stop);
    }

    public void Dispose() => _turns.Dispose();

    private (MakingText?, IResult?) Make(byte[] document, string size, CancellationToken stop)
    {
        if (ProjectReader.Read(document).Project is not { } project)
            return Refused("The project has faults still.", "Open it in the workspace, mend what is marked there, then hand it over.");
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(LongestPlan);
        PlanResult planned;
        try
        {
            planned = plan(project, patience.Token);
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
        var making = MakingDocument.Begin(project, size);
        var piece = MakingWriter.WriteUtf8(making);
        return piece.Length <= MakingReader.MostBytes ? (MakingBody.Text(piece, making), null) : (null, RequestBody.TooLarge);
    }

    private static (MakingText?, IResult) Refused(string title, string detail) =>
        (null, Problems.Of(StatusCodes.Status400BadRequest, title, detail));
}
