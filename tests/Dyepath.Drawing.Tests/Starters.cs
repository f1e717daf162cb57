using System.Collections.Concurrent;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Drawing.Tests;

/// <summary>Patterns of garments as they are begun with, planned once.</summary>
internal static class Starters
{
    private static readonly ConcurrentDictionary<string, Lazy<Booklet>> Planned = new();

    public static Booklet Booklet(string garment) => Planned.GetOrAdd(garment, name => new Lazy<Booklet>(() =>
        PatternWriter.Write(GarmentPlanner.Plan(Project(name)).Plan
            ?? throw new InvalidOperationException($"No plan of a {name}.")))).Value;

    private static Project Project(string name) => name == "demo"
        ? ProjectReader.Read(DemoProject.Utf8).Project!
        : StarterDocument.Of(Repertoire.All.Single(kind => kind.Name == name));
}
