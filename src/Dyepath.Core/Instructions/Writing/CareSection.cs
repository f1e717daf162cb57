using System.Collections.Immutable;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>Care, and the usual cautions of the craft.</summary>
internal static class CareSection
{
    private static readonly string[] ChildrensCharts = ["child", "youth", "baby"];

    public static Section Write(PatternContext context)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        blocks.AddRange(context.Own("care"));
        blocks.Add(new Bullets(
        [
            Phrase.Plain("Follow the ball band. Where it is silent: wash cold by hand, press the water out in a towel, dry flat to the measurements."),
        ]));
        blocks.Add(new Caution(Phrase.Plain(
            "Test the dye before pale and dark colours meet: soak a strand for half an hour on white cloth. If it bleeds, rinse the yarn until it does not.")));
        blocks.Add(new Caution(Phrase.Plain(
            "Rest your hands: stop every half hour to an hour, stretch, and change hook or project. Numbness or lasting pain is a reason to stop and see a doctor.")));
        if (ChildrensCharts.Contains(context.Project.Sizes.Chart))
        {
            blocks.Add(new Caution(Phrase.Plain(
                "No cords, ties or drawstrings at the hood or neck of children's clothing (US 16 CFR 1120, EN 14682). Buttons and other small parts are not for children under three. Weave every end in securely.")));
        }
        blocks.Add(new Caution(Phrase.Plain(
            "Not for use as children's sleepwear, which has flammability rules of its own (US 16 CFR 1615 and 1616). Local rules decide; this is not legal advice.")));
        blocks.AddRange(context.Own("closing"));
        return new Section("care", Phrase.Plain("Care and cautions"), blocks.ToImmutable());
    }
}
