using Dyepath.Core.Garments;

namespace Dyepath.Core.Constructions;

/// <summary>Rules that many garments follow.</summary>
internal static class GarmentRules
{
    public static PlanRule Body { get; } = new(
        "body", "A size is planned for the middle of each body measure's range; a body at either end of the range has half the range less or more ease.");

    public static PlanRule Locked { get; } = new(
        "locked", "The base size keeps the numbers it was made with, and every other size is moved by as much as the base was; an override moves its own size alone.");

    public static PlanRule Gauge { get; } = new(
        "gauge", "Finished measures use the hung gauge, or else the blocked one, or else the worked one; worked sideways, the blocked one, since the swatch was hung the other way. The worked gauge is for the hook.");

    public static PlanRule PlainGauge { get; } = new(
        "gauge", "Finished measures use the hung gauge, or else the blocked one, or else the worked one; worked sideways, the blocked one.");

    public static PlanRule Seam { get; } = new(
        "seam", "Hidden stitches and rows of each sewn edge, and the depth of edgings, are taken off before counts are chosen.");
}
