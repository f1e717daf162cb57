using System.Runtime.InteropServices.JavaScript;

namespace Dyepath.Client.Yarn;

/// <summary>Follows the pointer along a ruler.</summary>
internal static partial class RulerHands
{
    private const string Module = "dyepath/ruler";

    /// <param name="id">Of the ruler's element.</param>
    /// <param name="boundary">A boundary is moved to a place in the ruler's unit.</param>
    /// <param name="section">A part is dragged to a share of the ruler; the last argument says that it was let go there.</param>
    /// <param name="ended">The pointer has let go.</param>
    public static async Task FollowAsync(string id, Action<int, double> boundary, Action<int, double, bool> section, Action ended)
    {
        await JSHost.ImportAsync(Module, "../js/ruler.js");
        Follow(id, boundary, section, ended);
    }

    [JSImport("follow", Module)]
    private static partial void Follow(
        string id,
        [JSMarshalAs<JSType.Function<JSType.Number, JSType.Number>>] Action<int, double> boundary,
        [JSMarshalAs<JSType.Function<JSType.Number, JSType.Number, JSType.Boolean>>] Action<int, double, bool> section,
        [JSMarshalAs<JSType.Function>] Action ended);
}
