using Dyepath.Core.Booklets;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>Something that can be done about a finding.</summary>
/// <param name="Words">As a sentence goes on with it: <c>make the neck wider</c>.</param>
/// <param name="Place">What it sets in the document; missing where no one place does it.</param>
/// <param name="Value">To what, as JSON; missing with the place.</param>
internal sealed record Deed(string Words, string? Place, string? Value)
{
    /// <summary>What comes of it, behind a colon; missing where that is not known.</summary>
    public string? Then { get; init; }

    public static Deed Of(string place, string value, string words) => new(words, place, value);

    /// <summary>What no one place of the document does, such as another hook.</summary>
    public static Deed Of(string words) => new(words, null, null);

    public static Deed LetOff(Length most, Units units) => Of(
        "garment.letOff", Json(most), most == Length.Zero
            ? "let cut edges lie where they are asked for, so that the motif gives way there instead"
            : $"let cut edges lie off by {Wording.Say(most, units)} at most, so that the motif gives way there instead");

    /// <summary>A length as the document writes it.</summary>
    public static string Json(Length length) => FormattableString.Invariant($"\"{length.Centimetres:0.#} cm\"");

    public static string OffThen(GarmentMeasure measure, Length furthest, Units units) =>
        $"{GarmentMeasures.Words(measure)} is then off by {Wording.Fine(furthest, units)} at most";

    public string Say() => Then is null ? Words : $"{Words}: {Then}";

    public Remedy Remedy => new(Place, Value, $"{Wording.Capital(Say())}.");

    /// <summary>A finding, and behind it what helps.</summary>
    /// <param name="fact">What is found, without its full stop.</param>
    /// <param name="goesOn">Its sentence goes on with what helps, behind a colon; otherwise that is a sentence of its own.</param>
    public static Finding Found(FindingLevel level, string place, string fact, IReadOnlyList<Deed> deeds, bool goesOn = false)
    {
        var help = string.Join("; or ", deeds.Select(d => d.Say()));
        return new Finding(level, place, deeds.Count == 0 ? $"{fact}." : goesOn ? $"{fact}: {help}." : $"{fact}. {Wording.Capital(help)}.")
        {
            Fact = $"{fact}.",
            Remedies = [.. deeds.Select(d => d.Remedy)],
        };
    }
}
