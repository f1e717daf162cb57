using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>How far a size's finished measure comes out from what it asks for.</summary>
/// <param name="Size">Its name.</param>
/// <param name="Measure">The measure that is off.</param>
/// <param name="Error">Finished less asked for; more than 0: too much.</param>
public sealed record FitError(string Size, GarmentMeasure Measure, Length Error)
{
    /// <summary>What is off by more comes out poorly: an inch, as a boxy garment is let off (common practice, no source).</summary>
    public static Length Poor { get; } = Length.FromInches(1);

    /// <summary>A measure that grows from one size to the next by so much more or less than is asked for comes out poorly.</summary>
    internal static bool IsLeap(Length asked, Length made) => Length.Abs(made - asked) > Poor;

    /// <summary>A measure that is seen to be smaller in a larger size.</summary>
    /// <param name="noticed">What is not seen of that.</param>
    internal static bool IsFall(Length asked, Length made, Length noticed) => asked >= Length.Zero && made < Length.Zero - noticed;

    /// <summary>As far as it is off, whichever way; 0 or more.</summary>
    public Length Off => Length.Abs(Error);

    /// <summary>More than was asked for.</summary>
    public bool IsOver => Error > Length.Zero;

    /// <summary>How far they are usually off: in the root mean square. At least one.</summary>
    public static Length Typical(IEnumerable<FitError> errors) =>
        Length.FromCentimetres(Math.Sqrt(errors.Average(e => e.Error.Centimetres * e.Error.Centimetres)));

    /// <summary>Such as <c>size M, width, 3.6 cm too wide</c>.</summary>
    public string Say(Units units) => Error == Length.Zero
        ? "every size as asked"
        : $"size {Size}, {GarmentMeasures.Words(Measure)}, {Wording.Fine(Off, units)} {Way(IsOver)}";

    private string Way(bool over) => Measure switch
    {
        GarmentMeasure.ArmholeDepth or GarmentMeasure.NeckDepth or GarmentMeasure.BackNeckDepth or GarmentMeasure.LegOpening
            or GarmentMeasure.GussetDepth or GarmentMeasure.Depth => over ? "too deep" : "too shallow",
        GarmentMeasure.Length or GarmentMeasure.SleeveLength or GarmentMeasure.StrapLength or GarmentMeasure.TabLength
            or GarmentMeasure.GussetLength or GarmentMeasure.SleeveJoin or GarmentMeasure.TabJoin or GarmentMeasure.Vent => over ? "too long" : "too short",
        GarmentMeasure.Height or GarmentMeasure.TabHeight or GarmentMeasure.InsertHeight => over ? "too tall" : "too low",
        _ => over ? "too wide" : "too narrow",
    };
}
