namespace Dyepath.Mutations.Trying;

/// <summary>A promise that an input broke.</summary>
internal sealed class Broken(string promise) : Exception(promise);
