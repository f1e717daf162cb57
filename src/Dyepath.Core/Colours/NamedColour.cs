namespace Dyepath.Core.Colours;

/// <summary>A colour of the yarn under the name that the pattern prints.</summary>
public sealed record NamedColour(string Name, Srgb Colour);
