using Dyepath.Core.Garments;

namespace Dyepath.Core.Documents;

/// <summary>Ease in the document: a length, or a category of one of the two published revisions, whose words differ.</summary>
internal static class EaseDescription
{
    public static Shape<Ease> Ease { get; } = new EitherShape<Ease>(
        new MappedShape<Core.Quantities.Length, Ease>(Measured.Ease, l => new Ease(null, null, l), e => e.Own!.Value),
        new VariantShape<Ease>(
            "revision",
            e => e.Revision!,
            new VariantCase<Ease>(["newer"], Revision("newer", "very close", "close", "classic", "loose", "oversized")),
            new VariantCase<Ease>(["older"], Revision("older", "very close", "close", "standard", "loose", "oversized"))),
        e => e.Category is null);

    private static ObjectShape<Ease> Revision(string name, params string[] categories) => new(
        $"{name}Ease", $"An ease category by the {name} revision of the published list.", o =>
    {
        var revision = o.Required(
            "revision", "Which revision of the published list: the same word means different ease in the two.",
            new ChoiceShape<string>((name, name)),
            e => e.Revision!);
        var category = o.Required(
            "category", "The category; its middle is used.", new ChoiceShape<string>([.. categories.Select(c => (c, c))]),
            e => e.Category!);
        return v => new Ease(category.From(v), revision.From(v), null);
    });
}
