using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Projects.Description;

/// <summary>Names of measures and counts in the document.</summary>
internal static class FixedNames
{
    /// <summary>What a chest is called beside <see cref="BodyMeasure.Bust"/>.</summary>
    public const string Chest = "chest";

    public static string Bust { get; } = BodyMeasures.Key(BodyMeasure.Bust);

    public static ImmutableArray<string> Body { get; } = [.. Enum.GetValues<BodyMeasure>().Select(BodyMeasures.Key), Chest];

    public static ImmutableArray<string> Finished { get; } = [.. Enum.GetValues<GarmentMeasure>().Select(GarmentMeasures.Key)];
}
