using Dyepath.Contracts;
using Dyepath.Storage.Projects;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Projects;

/// <summary>Replaces a project's text, for whoever has seen the present one.</summary>
internal sealed class ProjectSaving(ProjectStore store, DraftMaker drafts)
{
    private static readonly IResult SeenIsMissing = Problems.Of(
        StatusCodes.Status428PreconditionRequired, "The change does not say which text it was made from.",
        "Send the ETag that came with that text as If-Match.");

    /// <param name="keep">Keeps the replaced text whatever its age: before a restore.</param>
    public async Task<IResult> SaveAsync(HttpContext context, string id, DocumentText text, bool keep)
    {
        var stop = context.RequestAborted;
        if (Preconditions.Seen(context.Request) is not { } seen)
            return SeenIsMissing;
        // Looked at first, so that a change which will be refused, or is none, is not planned.
        if (await store.SummaryAsync(id, stop) is not { } stored)
            return Problems.NoProject;
        if (stored.Etag == Draft.EtagOf(text.Utf8))
            return Saved(context, stored);
        if (stored.Etag != seen)
            return Stale(stored);
        return await store.SaveAsync(id, seen, drafts.Make(text, stop), keep, stop) switch
        {
            ChangeOutcome.Done done => Saved(context, done.Project),
            ChangeOutcome.Stale stale => Stale(stale.Stored),
            _ => Problems.NoProject,
        };
    }

    private static Ok<ProjectSummary> Saved(HttpContext context, ProjectSummary project)
    {
        context.Response.Headers[HeaderNames.ETag] = project.Etag;
        return TypedResults.Ok(project);
    }

    private static IResult Stale(ProjectSummary stored) => Problems.Stored(
        StatusCodes.Status412PreconditionFailed, "The project was changed elsewhere meanwhile.",
        "Nothing was overwritten. Look at the stored text, then save yours over it or as a copy.", stored.Etag, stored.UpdatedAt);
}
