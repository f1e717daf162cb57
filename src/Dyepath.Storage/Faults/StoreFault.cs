namespace Dyepath.Storage.Faults;

/// <summary>Why the store did not do what was asked, where that is no fault of the program's.</summary>
public enum StoreFault
{
    /// <summary>The database cannot be reached, is starting, or has no connection free: the same may work in a moment.</summary>
    Away,

    /// <summary>The disk on which the store lies has no room.</summary>
    DiskFull,

    /// <summary>There are <see cref="StoreLimits.MostProjects"/> projects.</summary>
    TooManyProjects,

    /// <summary>The texts have <see cref="StoreLimits.MostBytes"/>.</summary>
    TooManyBytes,

    /// <summary>Bytes of the store cannot be read back.</summary>
    Damaged,
}

/// <summary>Nothing was changed, or what was changed is whole.</summary>
public sealed class StoreException(StoreFault fault, Exception? inner = null) : Exception($"The store: {fault}.", inner)
{
    /// <summary>Why.</summary>
    public StoreFault Fault { get; } = fault;
}

/// <summary>The store cannot be used as it is; the message names it and says what to do.</summary>
public sealed class StoreNotReadyException(string message, Exception? inner = null) : Exception(message, inner);
