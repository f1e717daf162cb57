using Dyepath.Contracts;

namespace Dyepath.Web;

/// <summary>Answers that say why something was not done.</summary>
internal static class Problems
{
    /// <summary>With this status.</summary>
    public static IResult Of(int status, string title, string detail) => Of(new Problem(title, detail, status));

    /// <summary>The stored text is another one than the client thinks.</summary>
    public static IResult Stored(int status, string title, string detail, string etag, DateTimeOffset updatedAt) =>
        Of(new Problem(title, detail, status, etag, updatedAt));

    /// <summary>For an id that no project has.</summary>
    public static IResult NoProject { get; } = Of(
        StatusCodes.Status404NotFound, "There is no such project.",
        "It may have been deleted elsewhere; look on the shelf and in the archive.");

    /// <summary>With the problem's own status.</summary>
    public static IResult Of(Problem problem) =>
        TypedResults.Json(problem, ContractsJson.Default.Problem, "application/problem+json", problem.Status);
}
