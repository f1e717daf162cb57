using Dyepath.Core.Edgings;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Reading;

/// <summary>Edgings as read against edgings as planned.</summary>
internal static class EdgingComparison
{
    public static void Compare(SizePlan size, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        var edgings = read.Edgings.Where(e => e.Size == size.Name).ToArray();
        if (edgings.Length != size.Edgings.Length)
        {
            notes.Add((size.Name, $"the text has {edgings.Length} edgings, the plan {size.Edgings.Length}"));
            return;
        }
        foreach (var (said, planned) in edgings.Zip(size.Edgings))
        {
            var place = $"{size.Name}, {PlaceWords.Of(planned.Where)}";
            if ((said.Place, said.Copies, said.PickUp, said.Rounds) != (PlaceWords.Of(planned.Where), planned.Copies, planned.PickUp, planned.Rounds))
                notes.Add((place, $"the text picks up {said.PickUp} for {said.Rounds} rounds, {said.Copies} times; the plan {planned.PickUp}, {planned.Rounds}, {planned.Copies}"));
            var rule = PickUpWords.Text(planned.Spread);
            if (said.Rule != rule)
                notes.Add((place, $"the rule is “{said.Rule}” in the text, “{rule}” in the plan"));
            if (said.Followed != planned.PickUp || said.Total != planned.PickUp)
                notes.Add((place, $"the rule makes {said.Followed} and says {said.Total}, the plan picks up {planned.PickUp}"));
        }
    }
}
