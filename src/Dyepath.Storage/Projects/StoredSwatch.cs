using System.Text;
using System.Text.Json;
using Dyepath.Contracts;

namespace Dyepath.Storage.Projects;

internal static class StoredSwatch
{
    public static string? Write(SwatchPicture? swatch) =>
        swatch is null ? null : JsonSerializer.Serialize(swatch, ContractsJson.Default.SwatchPicture);

    /// <summary>Null where it is damaged: a picture must not keep the shelf from being read.</summary>
    public static SwatchPicture? Read(string? stored) => stored is null ? null : SwatchPicture.Read(Encoding.UTF8.GetBytes(stored));
}
