namespace Dyepath.Core.Booklets;

/// <summary>The language of a copy's words.</summary>
public enum Language
{
    /// <summary>In which the pattern is written; its <see cref="Terms"/> choose between American and British usage.</summary>
    English,

    /// <summary>German.</summary>
    German,

    /// <summary>Spanish.</summary>
    Spanish,
}

/// <summary>What the languages are called where a program or a file names them.</summary>
public static class LanguageTags
{
    /// <summary>BCP 47, such as <c>de</c>; English with the region that its terms are of.</summary>
    public static string Of(Language language, Terms terms) => language switch
    {
        Language.German => "de",
        Language.Spanish => "es",
        Language.English => terms == Terms.Uk ? "en-GB" : "en-US",
    };
}
