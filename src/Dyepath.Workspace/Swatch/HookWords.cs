using System.Globalization;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Workspace.Swatch;

/// <summary>Hooks as they are labelled.</summary>
public static class HookWords
{
    /// <summary>What other systems call the hook that is typed; null where it is no hook.</summary>
    public static string? Of(string typed)
    {
        if (!TypedQuantity.TryHook(typed, out var millimetres))
            return null;
        var nearest = HookSizes.Nearest(Length.FromMillimetres(millimetres));
        string[] systems = [nearest.Us.Length > 0 ? $"US {nearest.Us}" : "", nearest.OldUk.Length > 0 ? $"old UK {nearest.OldUk}" : ""];
        var names = string.Join(", ", systems.Where(n => n.Length > 0));
        var size = nearest.Diameter.Millimetres;
        if (Math.Abs(size - millimetres) < 1e-6)
            return names.Length > 0 ? $"{names}. The millimetres govern." : "A usual size in millimetres.";
        var other = string.Create(CultureInfo.InvariantCulture, $"The nearest usual size is {size:0.###} mm");
        return names.Length > 0 ? $"{other} ({names})." : other + ".";
    }
}
