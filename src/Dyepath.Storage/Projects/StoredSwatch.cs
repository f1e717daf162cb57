using System.Text.Json;
using Dyepath.Contracts;

namespace Dyepath.Storage.Projects;

internal static class StoredSwatch
{
    public static string? Write(SwatchPicture? swatch) =>
        swatch is null ? null : JsonSerializer.Serialize(swatch, ContractsJson.Default.SwatchPicture);

    public static SwatchPicture? Read(string? stored) =>
        stored is null ? null : JsonSerializer.Deserialize(stored, ContractsJson.Default.SwatchPicture);
}
