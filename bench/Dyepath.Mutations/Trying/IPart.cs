namespace Dyepath.Mutations.Trying;

/// <summary>One kind of input and what is promised of it.</summary>
internal interface IPart : IAsyncDisposable
{
    string Name { get; }

    Task PrepareAsync(int seed);

    /// <summary>The input of a case; the same for the same seed and number.</summary>
    byte[] Input(int seed, int number);

    /// <summary>Tries it.</summary>
    /// <param name="number">Decides what is tried besides, where not everything is tried of each.</param>
    /// <returns>What became of it, in a word or two, for the tally.</returns>
    /// <exception cref="Broken">A promise is broken; any other exception breaks one too.</exception>
    Task<string> TryAsync(byte[] input, int number, CancellationToken cancel);
}
