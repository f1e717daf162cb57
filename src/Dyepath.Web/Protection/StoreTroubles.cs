using Dyepath.Contracts;
using Dyepath.Storage;
using Dyepath.Storage.Faults;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Protection;

/// <summary>What a trouble of the store's is in words, and as an answer.</summary>
internal sealed class StoreTroubles(StoreLimits limits)
{
    private const string InAMoment = "2";

    /// <summary>With the status and the words of <see cref="Of"/>.</summary>
    public IResult Answer(StoreFault fault, HttpContext context)
    {
        var (status, words) = Of(fault);
        if (status == StatusCodes.Status503ServiceUnavailable)
            context.Response.Headers[HeaderNames.RetryAfter] = InAMoment;
        return Problems.Of(status, words.Title, words.Detail);
    }

    /// <summary>Status code and words of a trouble.</summary>
    public (int Status, Trouble Words) Of(StoreFault fault) => fault switch
    {
        StoreFault.Away => (StatusCodes.Status503ServiceUnavailable, new(
            "away", "The store does not answer just now.", "Nothing that was stored is lost. Keep what you have and send it again in a moment.")),
        StoreFault.DiskFull => (StatusCodes.Status507InsufficientStorage, new(
            "full", "The disk of the store is full.",
            "What was stored before is there still; what is sent now is not stored. Make room on the disk, then save again.")),
        StoreFault.TooManyProjects => (StatusCodes.Status507InsufficientStorage, new(
            "full", $"There are {limits.MostProjects} projects already.",
            "Delete some from the archive for ever, or let whoever runs the host allow more with --most-projects.")),
        StoreFault.TooManyBytes => (StatusCodes.Status507InsufficientStorage, new(
            "full", $"The store holds {limits.MostBytes / 1_000_000} MB already.",
            "Delete projects from the archive for ever, or let whoever runs the host allow more with --most-megabytes.")),
        _ => (StatusCodes.Status422UnprocessableEntity, new(
            "damaged", "What is stored there is damaged.",
            "It cannot be read any more. Look whether an earlier version or a backup has it.")),
    };
}
