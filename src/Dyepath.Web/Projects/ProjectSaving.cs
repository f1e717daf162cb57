using Dyepath.Contracts;
using Dyepath.Storage.Projects;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Dyepath.Web.Projects;

/// <summary>Replaces a project's text, for whoever has seen the present one.</summary>
internal sealed class ProjectSaving(ProjectStore store)
{
    private static readonly IResult SeenIsMissing = Problems.Of(
        StatusCodes.Status428PreconditionRequired, "The change does not say which text it was made from.",
        "Send the ETag that came with that text as If-Match.");

    /// <param name="keep">Keeps the replaced text whatever its age: before a restore.</param>
    public async Task<IResult> SaveAsync(HttpContext context, string id, DocumentText text, bool keep)
    {
        if (Preconditions.Seen(context.Request) is not { } seen)
            return SeenIsMissing;
        var (picture, refusal) = SentPicture.Read(context.Request);
        if (refusal is not null)
            return refusal;
        return await store.SaveAsync(id, seen, new Draft(text.Utf8, text.Name, picture), keep, context.RequestAborted) switch
        {
            ChangeOutcome.Done done => Saved(context, done.Project),
            ChangeOutcome.Stale stale => Stale(stale.Stored),
            _ => Problems.NoProject,
        };
    }

    private static Ok<ProjectSummary> Saved(HttpContext context, ProjectSummary project)
    {
        Preconditions.TellEtag(context, project.Etag);
        return TypedResults.Ok(project);
    }

    private static IResult Stale(ProjectSummary stored) => Problems.Stored(
        StatusCodes.Status412PreconditionFailed, "The project was changed elsewhere meanwhile.",
        "Nothing was overwritten. Look at the stored text, then save yours over it or as a copy.", stored.Etag, stored.UpdatedAt);
}
