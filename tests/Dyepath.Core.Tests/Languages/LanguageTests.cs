using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;

namespace Dyepath.Core.Tests.Languages;

public sealed class LanguageTests
{
    /// <summary>KEYS: a file for what has to be said in another language; DUMP: a folder for what is said in English.</summary>
    [Fact(Explicit = true)]
    public void Explore()
    {
        var keys = new SortedDictionary<string, (int Count, string Example)>(StringComparer.Ordinal);
        var none = Catalogue.Read(Language.German, "");
        var dump = Environment.GetEnvironmentVariable("DUMP");
        var number = 0;
        foreach (var plan in SaidPhrases.Plans(int.Parse(Environment.GetEnvironmentVariable("SEEDS") ?? "20")))
        {
            number++;
            if (dump is not null)
            {
                Directory.CreateDirectory(dump);
                var booklet = PatternWriter.Write(plan);
                var all = new List<string>();
                foreach (var edition in new[]
                {
                    new Edition(Terms.Us, Units.CentimetresThenInches, Hand.Left), new Edition(Terms.Uk, Units.Inches, Hand.Right, plan.Sizes[^1].Name),
                })
                    all.Add(TextBooklet.Write(booklet, edition));
                SaidPhrases.Say(plan, (say, phrase) => all.Add(say.Text(phrase)), (sizes, edition) => new Wording(sizes, edition));
                File.WriteAllLines(Path.Combine(dump, $"{number:000}.txt"), all);
                continue;
            }
            var now = "";
            SaidPhrases.Say(
                plan,
                (say, phrase) =>
                {
                    var plain = new Wording([.. plan.Sizes.Select(s => s.Name)], plan.Project.Edition);
                    try
                    {
                        now = plain.Text(phrase);
                    }
                    catch (ArgumentException)
                    {
                        now = "?";
                    }
                    say.Text(phrase);
                },
                (sizes, edition) => new Wording(sizes, edition, key => keys[key] = keys.TryGetValue(key, out var k) ? (k.Count + 1, k.Example) : (1, now), none));
        }
        if (Environment.GetEnvironmentVariable("KEYS") is { } file)
            File.WriteAllLines(file, keys.Select(k => $"{k.Key}\t{k.Value.Example}"));
    }
}
