using System.Collections.Immutable;
using System.Globalization;

namespace Dyepath.Faults;

/// <summary>What the command line asks for.</summary>
internal sealed record Options
{
    public Target Target { get; init; } = Target.All[0];

    /// <summary>Folders of the target; empty: its usual ones.</summary>
    public ImmutableArray<string> Folders { get; init; } = [];

    public int Seed { get; init; } = 1;

    public int Count { get; init; } = 200;

    /// <summary>What a fault's line in the report has to contain, such as <c>PickUp.cs:51</c> or a word; empty: any.</summary>
    public ImmutableArray<string> At { get; init; } = [];

    /// <summary>Numbers of the faults to try; empty: all that are planted.</summary>
    public ImmutableArray<int> Only { get; init; } = [];

    /// <summary>Test classes that run, by name or with <c>*</c> at either end; empty: all.</summary>
    public ImmutableArray<string> Classes { get; init; } = [];

    /// <summary>Test classes that do not, likewise.</summary>
    public ImmutableArray<string> Without { get; init; } = [];

    /// <summary>Seconds of processor time that a test class may take; those that take longer are left out. Missing: any.</summary>
    public int? Longest { get; init; }

    public int Parallel { get; init; } = Environment.ProcessorCount;

    public bool List { get; init; }

    public static string Usage { get; } =
        $"dotnet run -c Release --project bench/Dyepath.Faults -- [--target {string.Join('|', Target.All.Select(t => t.Name))}] "
        + "[--folder NAME]... [--seed N] [--count N] [--at TEXT]... [--fault N]... [--class NAME]... [--without NAME]... [--longest SECONDS] [--parallel N] [--list]";

    public bool Asks(string folder) => (Folders.IsEmpty ? Target.Folders : Folders).Contains(folder);

    public bool Runs(string testClass) =>
        (Classes.IsEmpty || Classes.Any(c => Fits(testClass, c))) && !Target.Without.Concat(Without).Any(c => Fits(testClass, c));

    private static bool Fits(string name, string pattern) => (pattern[0] == '*', pattern[^1] == '*', pattern.Trim('*')) switch
    {
        (true, true, var part) => name.Contains(part, StringComparison.Ordinal),
        (true, false, var end) => name.EndsWith(end, StringComparison.Ordinal),
        (false, true, var beginning) => name.StartsWith(beginning, StringComparison.Ordinal),
        (false, false, var whole) => name == whole,
    };

    public static Options? Read(string[] args, out string wrong)
    {
        var options = new Options();
        wrong = "";
        for (var i = 0; i < args.Length; i++)
        {
            if (args[i] == "--list")
            {
                options = options with { List = true };
                continue;
            }
            var (name, value) = (args[i], ++i < args.Length ? args[i] : "");
            var isNumber = int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var number);
            switch (name)
            {
                case "--target" when Target.All.FirstOrDefault(t => t.Name == value) is { } target:
                    options = options with { Target = target };
                    break;
                case "--folder" when value.Length > 0:
                    options = options with { Folders = options.Folders.Add(value) };
                    break;
                case "--at" when value.Length > 0:
                    options = options with { At = options.At.Add(value) };
                    break;
                case "--class" when value.Length > 0:
                    options = options with { Classes = options.Classes.Add(value) };
                    break;
                case "--without" when value.Length > 0:
                    options = options with { Without = options.Without.Add(value) };
                    break;
                case "--seed" when isNumber:
                    options = options with { Seed = number };
                    break;
                case "--count" when isNumber && number > 0:
                    options = options with { Count = number };
                    break;
                case "--fault" when isNumber:
                    options = options with { Only = options.Only.Add(number) };
                    break;
                case "--longest" when isNumber && number > 0:
                    options = options with { Longest = number };
                    break;
                case "--parallel" when isNumber && number > 0:
                    options = options with { Parallel = number };
                    break;
                default:
                    wrong = $"“{name} {value}” is not understood.";
                    return null;
            }
        }
        return options;
    }
}
