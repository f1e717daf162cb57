using System.Collections.Immutable;

namespace Dyepath.Cli;

/// <summary>One thing wrong with what the user gave: where, and what to do about it.</summary>
internal sealed record InputFault(string Place, string Text);

/// <summary>Carries every fault of the user's input to the one place that prints them.</summary>
internal sealed class BadInputException(ImmutableArray<InputFault> faults)
    : Exception(string.Join(Environment.NewLine, faults.Select(f => $"{f.Place}: {f.Text}")))
{
    public BadInputException(string place, string text)
        : this([new InputFault(place, text)])
    {
    }

    public ImmutableArray<InputFault> Faults => faults;
}
