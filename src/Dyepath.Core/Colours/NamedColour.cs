namespace Dyepath.Core.Colours;

/// <summary>A colour of the yarn under the name that the pattern prints.</summary>
/// <param name="Name">As the pattern prints it.</param>
/// <param name="Colour">As a screen shows it.</param>
public sealed record NamedColour(string Name, Srgb Colour);
