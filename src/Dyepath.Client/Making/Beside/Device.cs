using System.Runtime.InteropServices.JavaScript;
using Dyepath.Workspace.Making.Beside;

namespace Dyepath.Client.Making.Beside;

/// <summary>In the browser (wwwroot/js/beside.js).</summary>
public sealed partial class Device : IDevice
{
    public const string Module = "dyepath/beside";

    public bool CanSpeak => Able("speak");

    public bool CanBuzz => Able("buzz");

    public string? Kept(string name) => Load(name);

    public void Keep(string name, string text) => Save(name, text);

    public async Task ListenAsync(Action<string> pressed)
    {
        await JSHost.ImportAsync(Module, "../js/beside.js");
        Keys(pressed);
    }

    public void Deafen() => NoKeys();

    public void Speak(string words, double rate, string voice) => SpeakWords(words, rate, voice);

    public void Hush() => Silence();

    public (string Name, string Language)[] Voices()
    {
        var said = AllVoices();
        return [.. Enumerable.Range(0, said.Length / 2).Select(i => (said[2 * i], said[2 * i + 1]))];
    }

    public void Buzz(bool rowEnds) => BuzzFor(rowEnds ? 120 : 30);

    public void StayAwake(bool wanted) => Awake(wanted);

    public void Top() => ShowTop();

    public void Ready() => ShowReady();

    [JSImport("top", Module)]
    private static partial void ShowTop();

    [JSImport("ready", Module)]
    private static partial void ShowReady();

    [JSImport("load", Module)]
    private static partial string? Load(string name);

    [JSImport("save", Module)]
    private static partial void Save(string name, string text);

    [JSImport("keys", Module)]
    private static partial void Keys([JSMarshalAs<JSType.Function<JSType.String>>] Action<string> pressed);

    [JSImport("noKeys", Module)]
    private static partial void NoKeys();

    [JSImport("able", Module)]
    private static partial bool Able(string what);

    [JSImport("speak", Module)]
    private static partial void SpeakWords(string words, double rate, string voice);

    [JSImport("hush", Module)]
    private static partial void Silence();

    [JSImport("voices", Module)]
    private static partial string[] AllVoices();

    [JSImport("buzz", Module)]
    private static partial void BuzzFor(int milliseconds);

    [JSImport("awake", Module)]
    private static partial void Awake(bool on);
}
