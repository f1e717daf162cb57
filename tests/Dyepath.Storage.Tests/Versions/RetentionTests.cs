using CsCheck;
using Dyepath.Storage.Versions;

namespace Dyepath.Storage.Tests.Versions;

public class RetentionTests
{
    private static readonly DateTimeOffset Begin = new(2026, 3, 1, 9, 17, 0, TimeSpan.Zero);

    /// <summary>Moments of saving: bursts of seconds, pauses of hours, holidays.</summary>
    private static readonly Gen<DateTimeOffset[]> Saves =
        Gen.OneOf(Gen.Int[1, 300], Gen.Int[300, 20_000], Gen.Int[20_000, 400_000]).Array[1, 80].Select(pauses =>
        {
            var moment = Begin;
            return pauses.Select(seconds => moment += TimeSpan.FromSeconds(seconds)).ToArray();
        });

    [Fact]
    public void Thinning_at_every_save_leaves_what_thinning_once_would() => Saves.Holds(
        saves =>
        {
            var kept = new List<SavedText>();
            for (var i = 0; i < saves.Length; i++)
            {
                kept.Add(Text(i, saves[i]));
                Thin(kept, saves[i]);
            }
            var once = saves.Select((moment, i) => Text(i, moment)).ToList();
            Thin(once, saves[^1]);
            return kept.SequenceEqual(once);
        },
        seed: 41, cases: 400);

    [Fact]
    public void One_text_of_two_minutes_then_of_an_hour_then_of_a_day_stays_and_it_is_the_last() => Saves.Holds(
        saves =>
        {
            var all = saves.Select((moment, i) => Text(i, moment)).ToList();
            var kept = all.ToList();
            var now = saves[^1];
            Thin(kept, now);
            Assert.Equal(all[^1], kept[^1]);
            foreach (var (younger, every) in new[] { (0, 2), (120, 60), (2 * 1440, 1440) })
            {
                // Whichever side of a limit a stretch lies on, it is over by twice its length.
                var old = kept.Where(v => now - v.SavedAt > TimeSpan.FromMinutes(younger)).ToList();
                var stretches = old.Select(v => v.SavedAt.UtcTicks / TimeSpan.FromMinutes(every).Ticks).ToList();
                Assert.Equal(stretches.Distinct(), stretches);
            }
            // A day's last text always stays.
            Assert.All(all.GroupBy(v => v.SavedAt.UtcDateTime.Date), day => Assert.Contains(day.Last(), kept));
        },
        seed: 42, cases: 400);

    [Fact]
    public void Texts_to_be_kept_stay_whatever_their_age() => Gen.Select(Saves, Gen.Bool.Array[80]).Holds(
        (saves, keep) =>
        {
            var all = saves.Select((moment, i) => Text(i, moment) with { Kept = keep[i] }).ToList();
            var kept = all.ToList();
            Thin(kept, saves[^1]);
            return all.Where(v => v.Kept).All(kept.Contains);
        },
        seed: 43, cases: 100);

    /// <summary>What buyers have is not thinned, whatever its age and however many texts there are.</summary>
    [Fact]
    public void Published_texts_stay_and_take_no_other_s_place() => Gen.Select(Saves, Gen.Bool.Array[80]).Holds(
        (saves, published) =>
        {
            var all = saves.Select((moment, i) => Text(i, moment) with { Published = published[i] }).ToList();
            var (kept, others) = (all.ToList(), all.Where(v => !v.Published).ToList());
            Thin(kept, saves[^1]);
            Thin(others, saves[^1]);
            Assert.Equal(all.Where(v => v.Published), kept.Where(v => v.Published));
            Assert.Equal(others, kept.Where(v => !v.Published));
        },
        seed: 44, cases: 100);

    [Fact]
    public void The_quota_holds_even_for_kept_texts_and_the_newest_fill_it()
    {
        var many = Enumerable.Range(1, 400).Select(i => Text(i, Begin.AddDays(i)) with { Kept = true }).ToList();
        Thin(many, Begin.AddDays(400));
        Assert.Equal(Enumerable.Range(201, Retention.MostVersions), many.Select(v => v.Number));

        var large = Enumerable.Range(1, 30).Select(i => Text(i, Begin.AddDays(i)) with { Bytes = 2_000_000 }).ToList();
        Thin(large, Begin.AddDays(30));
        Assert.Equal(Enumerable.Range(21, 10), large.Select(v => v.Number));
    }

    private static SavedText Text(int number, DateTimeOffset moment) => new(number, moment, 1_000, false);

    private static void Thin(List<SavedText> versions, DateTimeOffset now)
    {
        var dropped = Retention.Dropped(versions, now);
        versions.RemoveAll(v => dropped.Contains(v.Number));
    }
}
