using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Documents;

namespace Dyepath.Core.Projects;

/// <summary>What reading a document led to: a project, or every reason why there is none.</summary>
public sealed class ProjectReading
{
    private ProjectReading(Project? project, ImmutableArray<Fault> faults) => (Project, Faults) = (project, faults);

    /// <summary>Missing when there are faults.</summary>
    public Project? Project { get; }

    /// <summary>In the order of the document's description; empty when the project was read.</summary>
    public ImmutableArray<Fault> Faults { get; }

    /// <summary>The document was read.</summary>
    [MemberNotNullWhen(true, nameof(Project))]
    public bool IsGood => Project is not null;

    internal static ProjectReading Good(Project project) => new(project, []);

    internal static ProjectReading Bad(ImmutableArray<Fault> faults) => new(null, faults);
}
