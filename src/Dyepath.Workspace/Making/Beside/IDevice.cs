namespace Dyepath.Workspace.Making.Beside;

/// <summary>What a phone can do for busy hands: keys and pedals, voice, buzzing, a screen that stays on.</summary>
public interface IDevice
{
    /// <summary>A short text that this device keeps; null where it has none.</summary>
    string? Kept(string name);

    /// <summary>Takes the place of what was kept under this name.</summary>
    void Keep(string name, string text);

    /// <param name="pressed">Told <c>done</c>, <c>back</c>, <c>on</c>, <c>early</c> or <c>late</c>.</param>
    Task ListenAsync(Action<string> pressed);

    /// <summary>Ends <see cref="ListenAsync"/>.</summary>
    void Deafen();

    /// <summary>Begins to say words aloud, in place of what is being said.</summary>
    void Speak(string words, double rate, string voice);

    /// <summary>Stops what is being said.</summary>
    void Hush();

    /// <summary>Names of the voices that the device has, each with its language, such as <c>en-GB</c>.</summary>
    (string Name, string Language)[] Voices();

    /// <summary>The device has a voice.</summary>
    bool CanSpeak { get; }

    /// <summary>The device can buzz.</summary>
    bool CanBuzz { get; }

    /// <param name="rowEnds">Longer than at the end of a run.</param>
    void Buzz(bool rowEnds);

    /// <summary>Keeps the screen on while the page is in view, where the device lets it.</summary>
    void StayAwake(bool wanted);

    /// <summary>Shows the page from its top: what is new stands there.</summary>
    void Top();

    /// <summary>Shows the work from its top, with the keyboard on the great button.</summary>
    void Ready();
}
