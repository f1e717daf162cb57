namespace Dyepath.Client.Shell;

/// <summary>How far a step of the design is.</summary>
public enum StepState
{
    /// <summary>Nothing is to be said of it.</summary>
    Open,

    /// <summary>Something has yet to be put in.</summary>
    Wanting,

    /// <summary>Something keeps the design from being planned.</summary>
    Wrong,

    /// <summary>Planned, and something on it is warned of.</summary>
    Doubtful,

    /// <summary>All that it asks for is put in, and nothing is warned of.</summary>
    Done,
}

/// <summary>The marks of steps in words, and the sign that shows each without a colour.</summary>
internal static class StepWords
{
    public static string Title(StepState state) => state switch
    {
        StepState.Wanting => "something is wanted",
        StepState.Wrong => "something is to mend",
        StepState.Doubtful => "something is in doubt",
        StepState.Done => "done",
        _ => "",
    };

    public static string SignOf(StepState state) => state switch
    {
        StepState.Wanting => "wanting",
        StepState.Wrong => "attention",
        StepState.Doubtful => "note",
        _ => "done",
    };
}
