namespace Dyepath.Cli;

/// <summary>What the program's exit tells a script.</summary>
internal static class ExitCode
{
    public const int Success = 0;

    /// <summary>Something in the command or the document is not as it must be, every fault listed; or the output is unwritable.</summary>
    public const int BadInput = 2;

    /// <summary>All is well formed, but no count or garment meets it; the nearest are listed.</summary>
    public const int NoFeasibleDesign = 3;

    /// <summary>A fault of the program's own.</summary>
    public const int InternalFault = 4;

    /// <summary>Stopped with Ctrl-C.</summary>
    public const int Cancelled = 130;
}
