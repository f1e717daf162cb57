using System.Runtime.InteropServices.JavaScript;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Store;

namespace Dyepath.Client.Store;

/// <summary>The browser's own database (wwwroot/js/store.js).</summary>
public sealed partial class DeviceStore : IDeviceEvents
{
    public const string Module = "dyepath/store";

    public void ListenTo(string sort, Action<string> wrote, Action<string> removed) => Listen(sort, wrote, removed);

    public void ListenToPage(Action cleared, Action online, Action<bool> seen) => Watch(cleared, online, seen);

    /// <summary>A browser that does not keep what it is asked to keep says so in ways of its own; here it is one.</summary>
    internal static async Task<T> OrNot<T>(Task<T> work)
    {
        try
        {
            return await work;
        }
        catch (JSException fault)
        {
            throw new IOException(fault.Message.Split('\n')[0], fault);
        }
    }

    [JSImport("announce", Module)]
    internal static partial void Announce(string sort, string id, bool removed);

    [JSImport("listen", Module)]
    private static partial void Listen(
        string sort, [JSMarshalAs<JSType.Function<JSType.String>>] Action<string> wrote,
        [JSMarshalAs<JSType.Function<JSType.String>>] Action<string> removed);

    [JSImport("watch", Module)]
    private static partial void Watch(
        [JSMarshalAs<JSType.Function>] Action cleared, [JSMarshalAs<JSType.Function>] Action online,
        [JSMarshalAs<JSType.Function<JSType.Boolean>>] Action<bool> seen);
}
