using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Constructions;

/// <summary>Fields of the document and of the form that garments for the upper body have in common.</summary>
internal static class TopFields
{
    private const string Heading = "Ease and lengths";

    public static GarmentField UpperArmEaseField { get; } =
        new(Heading, "upperArmEase", "Ease at the upper arm", Usual: "8 cm", Hint: "Armholes are at least half of upper arm and this.");

    public static ImmutableArray<GarmentField> EaseAndLengths(string belowWaist) =>
    [
        new(Heading, "ease", "How loose at the bust", FieldKind.Ease),
        new(Heading, "hipEase", "Ease at the hip", Usual: "5 cm", Hint: "Counts where the garment reaches the hip."),
        new(Heading, "belowWaist", "Hangs below the waist", Usual: belowWaist),
        new(Heading, "hipBelowWaist", "Reaches the hip from", Usual: "20 cm", Hint: "Below the waist; longer garments follow the hip too."),
    ];

    /// <param name="usual">A category of the newer published list.</param>
    public static Field<GarmentSpec, Ease> BustEase(ObjectFields<GarmentSpec> o, Func<GarmentSpec, Ease> of, string usual) => o.Optional(
        "ease", "Added to the bust: a length, or a published category with its revision.", EaseDescription.Ease, of, new Ease(usual, "newer", null));

    public static Field<GarmentSpec, Length> HipEase(ObjectFields<GarmentSpec> o, Func<GarmentSpec, Length> of) => o.Optional(
        "hipEase", "Added to the hip, where the garment reaches it.", Measured.Ease, of, Length.FromCentimetres(5));

    public static Field<GarmentSpec, Length> BelowWaist(
        ObjectFields<GarmentSpec> o, Func<GarmentSpec, Length> of, double usualCentimetres) =>
        o.Optional("belowWaist", "How far it hangs below the waist.", Measured.Ease, of, Length.FromCentimetres(usualCentimetres));

    public static Field<GarmentSpec, Length> HipBelowWaist(ObjectFields<GarmentSpec> o, Func<GarmentSpec, Length> of) => o.Optional(
        "hipBelowWaist", "A garment that hangs this far below the waist, or farther, reaches the hip.", Measured.Step, of, Length.FromCentimetres(20));

    public static Field<GarmentSpec, Length> UpperArmEase(ObjectFields<GarmentSpec> o, Func<GarmentSpec, Length> of) => o.Optional(
        "upperArmEase", "Armholes are at least half of upper arm plus this.", Measured.Ease, of, Length.FromCentimetres(8));
}
