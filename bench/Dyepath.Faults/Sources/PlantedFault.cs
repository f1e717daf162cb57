using System.Globalization;

namespace Dyepath.Faults.Sources;

/// <summary>The class that is compiled into the target: which fault is chosen, and which ones a run passes.</summary>
internal static class PlantedFault
{
    /// <summary>Number of the chosen fault; without it the program is good.</summary>
    public const string Chosen = "DYEPATH_FAULT";

    /// <summary>A file into which the processor time taken, in seconds, and the numbers of all the faults passed are written at the end.</summary>
    public const string Passed = "DYEPATH_FAULTS_PASSED";

    public static string Source(int count) => string.Create(CultureInfo.InvariantCulture, $$"""
        internal static class PlantedFault
        {
            private static readonly int Chosen = int.TryParse(System.Environment.GetEnvironmentVariable("{{Chosen}}"), out var number) ? number : -1;
            private static readonly bool[]? Seen = Watched();

            public static bool Is(int number)
            {
                if (Seen is not null)
                    Seen[number] = true;
                return number == Chosen;
            }

            private static bool[]? Watched()
            {
                var file = System.Environment.GetEnvironmentVariable("{{Passed}}");
                if (string.IsNullOrEmpty(file))
                    return null;
                var seen = new bool[{{count}}];
                System.AppDomain.CurrentDomain.ProcessExit += (_, _) =>
                {
                    var lines = new System.Collections.Generic.List<string> { System.Environment.CpuUsage.TotalTime.TotalSeconds.ToString("R") };
                    for (var i = 0; i < seen.Length; i++)
                    {
                        if (seen[i])
                            lines.Add(i.ToString());
                    }
                    System.IO.File.WriteAllLines(file, lines);
                };
                return seen;
            }
        }
        """);
}
