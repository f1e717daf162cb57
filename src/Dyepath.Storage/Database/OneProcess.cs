namespace Dyepath.Storage.Database;

/// <summary>A turn that one process has at a time; the operating system ends it with the process, however that dies.</summary>
internal static class OneProcess
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);

    public static async Task<FileStream> WaitAsync(string file, CancellationToken stop)
    {
        while (true)
        {
            try
            {
                return OwnersFile.Open(file, FileMode.OpenOrCreate);
            }
            catch (IOException) when (File.Exists(file))
            {
                await Task.Delay(Pause, stop);
            }
        }
    }
}
