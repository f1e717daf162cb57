using System.Globalization;
using Dyepath.Contracts;
using Dyepath.Storage.Projects;

namespace Dyepath.Web;

/// <summary>Answers for a stored text whose bytes are not those that were stored.</summary>
internal static class DamagedText
{
    /// <summary>Names the project and what it can go back to; with the ETag that a restore of that version is to send.</summary>
    public static IResult OfProject(TextReading.Damaged text) => Problems.Of(new Problem(
        $"The stored text of “{text.Name}” is damaged.",
        text.LastGood is { } good
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"Restore its version {good.Number}, of {good.SavedAt:yyyy-MM-dd HH:mm} UTC, the newest that can be read. "
                + $"A device on which the project is open may have a newer text still.")
            : "It has no version that can be read. Save it again from a device that has it still, or restore a backup into an empty store.",
        StatusCodes.Status422UnprocessableEntity, text.Etag, text.UpdatedAt, text.LastGood?.Number));

    /// <summary>Says how the device on which it is made mends it.</summary>
    public static IResult OfMaking(TextReading.Damaged text) => Problems.Of(new Problem(
        $"The stored making of “{text.Name}” is damaged.",
        "The device on which it is made has it still: open it there and make a step, and it is stored anew.",
        StatusCodes.Status422UnprocessableEntity, text.Etag, text.UpdatedAt));

    /// <summary>The same for every handover.</summary>
    public static IResult OfHandover { get; } = Problems.Of(
        StatusCodes.Status422UnprocessableEntity, "The piece behind this address is damaged.", "Ask the designer who sent it for another address.");
}
