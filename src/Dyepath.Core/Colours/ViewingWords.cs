namespace Dyepath.Core.Colours;

/// <summary>How findings name those to whom colours look alike.</summary>
public static class ViewingWords
{
    /// <summary>Whose eyes, or which print, as in "look alike to …".</summary>
    /// <exception cref="ArgumentOutOfRangeException">None of the named viewings.</exception>
    public static string Words(this Viewing viewing) => viewing switch
    {
        Viewing.Normal => "any eyes",
        Viewing.Protan => "eyes without red cones",
        Viewing.Deutan => "eyes without green cones",
        Viewing.Tritan => "eyes without blue cones",
        Viewing.Grey => "a black-and-white print",
        _ => throw new ArgumentOutOfRangeException(nameof(viewing), viewing, "No words for this viewing."),
    };
}
