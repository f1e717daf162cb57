using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Mutations.Agreement;
using Dyepath.Mutations.Parts;
using Dyepath.Mutations.Trying;

namespace Dyepath.Mutations;

/// <summary>What the command line asks for.</summary>
internal sealed record Options(ImmutableArray<string> Parts, int Seed, int? Count, int? Case)
{
    private static readonly ImmutableArray<(string Name, int Count, Func<IPart> Make)> All =
    [
        ("agreement", 9_500, () => new AgreementPart()),
        ("documents", 70_000, () => new DocumentPart()),
        ("makings", 80_000, () => new MakingPart()),
        ("photos", 30_000, () => new PhotoPart()),
        ("backups", 20_000, () => new BackupPart()),
        ("http", 10_000, () => new HttpPart()),
    ];

    public static string Usage { get; } =
        $"dotnet run -c Release --project bench/Dyepath.Mutations -- [--part {string.Join('|', All.Select(p => p.Name))}|all] [--seed N] [--count N | --case N]";

    public static IPart Part(string name) => All.First(p => p.Name == name).Make();

    public static int UsualCount(string name) => All.First(p => p.Name == name).Count;

    public static Options? Read(string[] args, out string wrong)
    {
        var options = new Options([.. All.Select(p => p.Name)], 1, null, null);
        wrong = "";
        for (var i = 0; i < args.Length; i += 2)
        {
            var value = i + 1 < args.Length ? args[i + 1] : "";
            var isNumber = int.TryParse(value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number);
            switch (args[i])
            {
                case "--part" when value == "all":
                    break;
                case "--part" when All.Any(p => p.Name == value):
                    options = options with { Parts = [value] };
                    break;
                case "--seed" when isNumber:
                    options = options with { Seed = number };
                    break;
                case "--count" when isNumber && number > 0:
                    options = options with { Count = number };
                    break;
                case "--case" when isNumber:
                    options = options with { Case = number };
                    break;
                default:
                    wrong = $"“{args[i]} {value}” is not understood.";
                    return null;
            }
        }
        return options;
    }
}
