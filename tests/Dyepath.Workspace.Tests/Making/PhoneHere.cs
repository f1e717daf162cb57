using Dyepath.Workspace.Making.Beside;

namespace Dyepath.Workspace.Tests.Making;

/// <summary>A phone that writes down what it is asked.</summary>
internal sealed class PhoneHere : IDevice
{
    public Dictionary<string, string> Texts { get; } = [];

    public List<string> Said { get; } = [];

    public List<bool> Buzzed { get; } = [];

    public bool IsAwake { get; private set; }

    public Action<string>? Pressed { get; private set; }

    public bool CanSpeak => true;

    public bool CanBuzz => true;

    public string? Kept(string name) => Texts.GetValueOrDefault(name);

    public void Keep(string name, string text) => Texts[name] = text;

    public Task ListenAsync(Action<string> pressed)
    {
        Pressed = pressed;
        return Task.CompletedTask;
    }

    public void Deafen() => Pressed = null;

    /// <summary>How the last words were said: as fast as that, by this voice.</summary>
    public (double Rate, string Voice) Voiced { get; private set; }

    /// <summary>How often it was told to be silent.</summary>
    public int Hushed { get; private set; }

    public void Speak(string words, double rate, string voice)
    {
        Said.Add(words);
        Voiced = (rate, voice);
    }

    public void Hush() => Hushed++;

    public (string Name, string Language)[] Voices() => [("Shore", "en-GB")];

    public void Buzz(bool rowEnds) => Buzzed.Add(rowEnds);

    public void StayAwake(bool wanted) => IsAwake = wanted;

    /// <summary>How often the page was shown from its top.</summary>
    public int Topped { get; private set; }

    public void Top() => Topped++;

    public void Ready()
    {
    }
}
