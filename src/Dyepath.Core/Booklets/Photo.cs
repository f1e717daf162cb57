namespace Dyepath.Core.Booklets;

/// <summary>A photograph of the designer's, at the place named (<see cref="WordPlaces"/>), after her words there.</summary>
/// <param name="Place">One of <see cref="WordPlaces.All"/>.</param>
/// <param name="Alternative">What is seen, for who cannot see it.</param>
/// <param name="Picture">Already checked.</param>
public sealed record Photo(string Place, string Alternative, JpegPicture Picture) : Block
{
    /// <summary>Most photos in a document.</summary>
    public const int Most = 9;

    /// <summary>Most bytes of all photos together.</summary>
    public const int MostBytes = 1_000_000;

    /// <summary>Most characters of <see cref="Alternative"/>.</summary>
    public const int LongestAlternative = 400;
}
