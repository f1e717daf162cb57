using Dyepath.Core.Booklets;

namespace Dyepath.Core.Tests.Edgings;

/// <summary>An edging's phrases as text in US terms and centimetres.</summary>
internal static class EdgingSayings
{
    private static readonly Edition Metric = new(Terms.Us, Units.Centimetres, Hand.Right);

    public static string Say(Phrase phrase) => new Wording(new Booklet("T", "D", ["M"], Metric, []), Metric).Text(phrase);
}
