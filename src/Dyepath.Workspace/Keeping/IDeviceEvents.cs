namespace Dyepath.Workspace.Keeping;

/// <summary>What happens to what is kept on this device, and to the page.</summary>
public interface IDeviceEvents
{
    /// <param name="wrote">Another tab has written the text with this id.</param>
    /// <param name="removed">Another tab has put it away for ever.</param>
    void ListenTo(string sort, Action<string> wrote, Action<string> removed);

    /// <param name="cleared">Everything that was kept on this device is gone.</param>
    /// <param name="online">The connection is back.</param>
    /// <param name="seen">The page is in view, or no longer.</param>
    void ListenToPage(Action cleared, Action online, Action<bool> seen);
}
