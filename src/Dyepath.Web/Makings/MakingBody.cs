using Dyepath.Contracts;
using Dyepath.Core.Making.Log;
using Dyepath.Storage.Makings;

namespace Dyepath.Web.Makings;

/// <summary>Reads the making that a request carries.</summary>
internal static class MakingBody
{
    private const int MostFaults = 5;

    /// <summary>The making and its text, or the answer that says why it is none.</summary>
    public static async Task<(MakingDocument? Making, MakingText? Text, IResult? Refusal)> ReadAsync(
        HttpRequest request, CancellationToken stop)
    {
        if (await RequestBody.ReadAsync(request, stop) is not { } bytes)
            return (null, null, RequestBody.TooLarge);
        var reading = MakingReader.Read(bytes);
        return reading.IsGood
            ? (reading.Making, Text(bytes, reading.Making), null)
            : (null, null, Problems.Of(
                StatusCodes.Status400BadRequest, "The text is no making.",
                string.Join('\n', reading.Faults.Take(MostFaults).Select(fault => fault.ToString()))));
    }

    /// <summary>With its title and size as lists show them.</summary>
    public static MakingText Text(byte[] utf8, MakingDocument making) =>
        new(utf8, ShownName.Of(making.Project.Title), ShownName.Of(making.Size), making.Log.Length);
}
