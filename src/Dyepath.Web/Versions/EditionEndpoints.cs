using Dyepath.Contracts;
using Dyepath.Core.Projects;
using Dyepath.Storage.Versions;
using Dyepath.Web.Projects;

namespace Dyepath.Web.Versions;

/// <summary>The texts that a designer published, each under its edition number.</summary>
internal static class EditionEndpoints
{
    private const string ProblemJson = "application/problem+json";

    private static readonly IResult NoNumber = Problems.Of(
        StatusCodes.Status422UnprocessableEntity, "The pattern has no edition number.",
        FormattableString.Invariant($"Give it one, from 1 to {Core.Booklets.Edition.MostNumber}, and publish it again."));

    private static readonly IResult TooMany = Problems.Of(
        StatusCodes.Status409Conflict, FormattableString.Invariant($"{EditionStore.MostEditions} editions of this project are published already."),
        "Take one of them back first.");

    private static readonly IResult NoEdition = Problems.Of(
        StatusCodes.Status404NotFound, "No such edition is published.", "Look at the list again.");

    /// <summary>Publishing a text, and taking that back.</summary>
    public static void MapEditions(this WebApplication app)
    {
        var editions = app.MapGroup($"/{ApiPaths.Editions("{id}")}").WithTags("versions");
        editions.MapPost("", PublishAsync)
            .WithName("publish").WithSummary("Keeps a document for good under the edition number that it has; it is listed among the versions.")
            .Accepts<object>("application/json").Produces<VersionSummary>()
            .Produces<Problem>(StatusCodes.Status400BadRequest, ProblemJson).Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson)
            .Produces<Problem>(StatusCodes.Status409Conflict, ProblemJson)
            .Produces<Problem>(StatusCodes.Status422UnprocessableEntity, ProblemJson)
            .Produces<Problem>(StatusCodes.Status507InsufficientStorage, ProblemJson);
        editions.MapDelete("/{edition:int}", async (string id, int edition, EditionStore store, CancellationToken stop) =>
            await store.TakeBackAsync(id, edition, stop) ? TypedResults.NoContent() : NoEdition)
            .WithName("takeBack").WithSummary("The edition becomes a version like any other.")
            .Produces(StatusCodes.Status204NoContent).Produces<Problem>(StatusCodes.Status404NotFound, ProblemJson);
    }

    private static async Task<IResult> PublishAsync(string id, HttpContext context, EditionStore store, CancellationToken stop)
    {
        var (text, refusal) = await DocumentBody.ReadAsync(context.Request, stop);
        if (text is null)
            return refusal!;
        var reading = ProjectReader.Read(text.Utf8);
        if (reading.Project is not { } project)
        {
            var fault = reading.Faults[0];
            return Problems.Of(
                StatusCodes.Status422UnprocessableEntity, "The pattern has something to mend before it can be published.",
                $"{fault.Path}: found {fault.Found}; allowed: {fault.Allowed}. {fault.Next}");
        }
        if (project.Edition.Number is not { } number)
            return NoNumber;
        return await store.PublishAsync(id, number, text.Utf8, stop) switch
        {
            PublishOutcome.Done done => TypedResults.Ok(done.Version),
            PublishOutcome.Taken => Problems.Of(
                StatusCodes.Status409Conflict, FormattableString.Invariant($"Another text is published as edition {number}."),
                "What buyers have stays as it is: give this one the next number."),
            PublishOutcome.TooMany => TooMany,
            _ => Problems.NoProject,
        };
    }
}
