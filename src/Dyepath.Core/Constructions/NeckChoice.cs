using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Documents;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Constructions;

/// <summary>Which necks a garment may have: its fields of the form and its part of the document.</summary>
/// <param name="Forms">The first one is usual; of one alone the document says no form.</param>
internal sealed record NeckChoice(ImmutableArray<NeckForm> Forms)
{
    /// <summary>Pullover and tunic.</summary>
    public static NeckChoice Any { get; } = new([.. Neck.Forms.Select(f => f.Form)]);

    /// <summary>A garment that opens in front.</summary>
    public static NeckChoice InFront { get; } = new([NeckForm.Slit, NeckForm.Square, NeckForm.Round, NeckForm.V]) { OpensInFront = true };

    /// <summary>A garment with armholes cut; its shoulders are too short for buttons.</summary>
    public static NeckChoice Sleeveless { get; } = new(
        [NeckForm.Square, NeckForm.Round, NeckForm.V, NeckForm.VInsert, NeckForm.Slit, NeckForm.Boat])
    {
        UsualStep = Length.Zero,
    };

    public static NeckChoice Slit { get; } = new([NeckForm.Slit]);

    private bool OpensInFront { get; init; }

    private Length UsualStep { get; init; } = Neck.UsualStep;

    private const string Heading = "Neck";

    private const string ByHead = "a child's follows the head";

    private bool AnyCut => Forms.Any(f => Of(f).IsCut);

    /// <summary>Fields of the garment's page.</summary>
    public ImmutableArray<GarmentField> Fields =>
    [
        .. Forms.Length == 1 ? [] : ImmutableArray.Create(Form),
        Measure("neckWidth", "Neck width of the base size", $"Left open, after its edging; {ByHead}.", n => n.SayUsual.Width),
        new(Heading, "neckStep", "Neck wider per size", Usual: Centimetres(UsualStep)),
        .. !AnyCut ? [] : ImmutableArray.Create(
            Measure("neckDepth", "Neck depth, front", $"From the shoulder, after its edging; {ByHead}.", n => n.IsCut ? n.SayUsual.Depth : null),
            Measure("backNeckDepth", "Neck depth, back", $"From the shoulder, after its edging; {ByHead}.", n => n.IsCutAtBack ? n.SayUsual.BackDepth : null),
            Measure(
                "letOff", "Cut edges may lie off by", "To keep the motif whole; farther off, the motif gives way.",
                n => n.IsCut ? $"{Centimetres(PieceGroup.UsualLetOff)}, less where a size would come out poorly" : null)),
    ];

    private GarmentField Form => new(Heading, "neck", "Form of the neck", FieldKind.Choice, Usual: WordOf(Forms[0]))
    {
        Choices = [.. Forms.Select(form => Neck.Forms.First(f => f.Form == form)).Select(f => (f.Word, f.Label))],
    };

    /// <param name="usual">What holds where it is left out; null for a form that does not have it.</param>
    private GarmentField Measure(string name, string label, string hint, Func<Neck, string?> usual) =>
        new(Heading, name, label, Usual: usual(Of(Forms[0])), Hint: hint)
        {
            By = Forms.Length == 1 ? null : new("neck", Forms.Select(f => (WordOf(f), Usual: usual(Of(f)))).Where(f => f.Usual is not null)
                .ToImmutableSortedDictionary(f => f.Item1, f => f.Usual!, StringComparer.Ordinal)),
        };

    /// <summary>The form's field, which a garment's other fields may ask after; of one form alone it is not in the document.</summary>
    public Field<GarmentSpec, NeckForm> FormField(ObjectFields<GarmentSpec> o, Func<GarmentSpec, Neck> of) => o.Optional(
        "neck", $"Form of the neck. {string.Join("; ", Forms.Select(Describe))}.",
        new ChoiceShape<NeckForm>([.. Forms.Select(f => (WordOf(f), f))]), g => of(g).Form, Forms[0]);

    /// <summary>The neck's other fields.</summary>
    /// <param name="form">Missing where there is one alone.</param>
    public Func<FieldValues, Neck> Document(ObjectFields<GarmentSpec> o, Field<GarmentSpec, NeckForm>? form, Func<GarmentSpec, Neck> of)
    {
        var width = o.Optional(
            "neckWidth", OpensInFront ? "Left open between the shoulders of the base size, after its edging." : "Neck of the base size, after its edging.",
            Measured.Body, g => of(g).Width, Forms.Length == 1 ? Of(Forms[0]).SayUsual.Width : $"by its form, such as {Of(Forms[0]).SayUsual.Width}");
        var step = o.Optional(
            "neckStep", "Added to the neck width per size above the base, taken off below it.", Measured.Step, g => of(g).Step, UsualStep);
        if (!AnyCut)
            return v => Of(Forms[0]) with { Width = width.From(v), Step = step.From(v) };
        var depth = o.Optional(
            "neckDepth", "Of a neck that is cut: from the shoulder down to the front neck's lower edge, after its edging.", Measured.Body,
            g => of(g).Depth, "by its form: of a square one 12 cm for adults, 0.16 of a child's head");
        var back = o.Optional(
            "backNeckDepth", "The same at the back.", Measured.Body, g => of(g).BackDepth, "2.5 cm for adults, 0.04 of a child's head");
        var letOff = o.Optional(
            "letOff", "How far an edge that is cut may lie off its place, so that the motif stays whole; farther off, the motif gives way there.",
            Measured.Step, g => of(g).LetOff, $"{Centimetres(PieceGroup.UsualLetOff)}, or less where a measure of a size would come out more than an inch off");
        return v => Of(form!.From(v)) with
        {
            Width = width.From(v),
            Step = step.From(v),
            Depth = depth.From(v),
            BackDepth = back.From(v),
            LetOff = letOff.From(v),
        };
    }

    private Neck Of(NeckForm form) => new(form, null) { InFront = OpensInFront };

    private string Describe(NeckForm form) => $"{WordOf(form)}: " + form switch
    {
        NeckForm.Slit when OpensInFront => "left open between the shoulders, so that the fronts' inner corners fold back",
        NeckForm.Slit => "left open between the shoulders",
        NeckForm.Boat => "a slit so wide that the shoulders are short",
        NeckForm.Buttoned => "a small slit beside a left shoulder that is buttoned",
        NeckForm.Square => "cut straight down and across",
        NeckForm.Round => "cut along a curve, in steps",
        NeckForm.V when OpensInFront => "the fronts are cut to a point where they meet, in steps",
        NeckForm.V => "cut to a point in front, in steps",
        NeckForm.VInsert => "cut square in front, its lower corners filled with plain triangles of companion yarn, so that the edge is a V",
        _ => throw new InvalidOperationException($"No neck {form}."),
    };

    private static string WordOf(NeckForm form) => Neck.Forms.First(f => f.Form == form).Word;

    private static string Centimetres(Length length) => string.Create(CultureInfo.InvariantCulture, $"{length.Centimetres:0.#} cm");
}
