using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Documents;

namespace Dyepath.Core.Workshops;

/// <summary>Reads the documents of workshops, and writes one to begin with.</summary>
public static class WorkshopDocument
{
    /// <summary>Largest document, in bytes.</summary>
    public const int MostBytes = 200_000;

    /// <summary>A workshop, or located faults; a bad document never throws.</summary>
    /// <param name="utf8">UTF-8 with or without byte order mark.</param>
    public static (Workshop? Workshop, ImmutableArray<Fault> Faults) Read(ReadOnlySpan<byte> utf8)
    {
        var faults = new FaultList();
        if (utf8.Length > MostBytes)
            faults.NotJson(1, "a larger document", FormattableString.Invariant($"at most {MostBytes} bytes"), "Give each workshop a document of its own.");
        else if (DocumentParser.Parse(utf8, faults) is { } node && WorkshopDescription.Workshop.TryRead(Place.Root(node), faults, out var
            workshop))
            return (workshop, []);
        return (null, faults.ToImmutable());
    }

    /// <summary>JSON with a comment on every field; <see cref="Read"/> reads it without faults.</summary>
    public static string Starter() => DocumentPrinter.Print(WorkshopDescription.Workshop.Write(First, new Commentary()));

    private static Workshop First { get; } = new(
        "Colours that draw", 120,
        [
            new WorkshopPerson(
                "Ada", new WorkshopYarn(YarnThickness.Medium, SequenceReach.BothArms, ColourChange.Sharp,
                [
                    new CardColour("kelp", new Srgb(0x1f, 0x4e, 0x5f), 6), new CardColour("foam", new Srgb(0xf4, 0xe9, 0xd8), 5),
                    new CardColour("rust", new Srgb(0xa2, 0x64, 0x3a), 6), new CardColour("slate", new Srgb(0x79, 0xa8, 0xa9), 5),
                ]), WorkshopPiece.Cowl),
            new WorkshopPerson(null, new WorkshopYarn(YarnThickness.Thick, SequenceReach.BothArms, ColourChange.Blended, []),
                WorkshopPiece.Hat),
        ]);
}
