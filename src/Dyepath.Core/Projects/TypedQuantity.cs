using Dyepath.Core.Documents;
using Dyepath.Core.Projects.Description;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Projects;

/// <summary>Reads one quantity as the document writes it, so that a document with faults elsewhere can be shown.</summary>
public static class TypedQuantity
{
    /// <summary>Such as <c>31.5 cm</c> or <c>12½ in</c>; from 0 to 100 m.</summary>
    public static bool TryLength(string text, out Length length) => TryRead(Measured.AlongSection, text, out length);

    /// <summary>A length of yarn, in any unit of the document, such as <c>6.4 cm</c> or <c>230 m</c>; from 0 to 20 km.</summary>
    public static bool TryYarn(string text, out Length length) => TryRead(Measured.Yarn, text, out length);

    /// <summary>Such as <c>5.5 mm</c>, in millimetres.</summary>
    public static bool TryHook(string text, out double millimetres) => TryRead(Measured.Hook, text, out millimetres);

    /// <summary>A weight of grading, such as <c>4 cm²</c>, in square centimetres.</summary>
    public static bool TryWeight(string text, out double squareCentimetres) => TryRead(Measured.Forgiveness, text, out squareCentimetres);

    private static bool TryRead<T>(Shape<T> shape, string text, out T value)
        where T : struct => shape.TryRead(Place.Root(new TextNode(text)), new FaultList(), out value);
}
