using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Projects;

namespace Dyepath.Web.Handovers;

/// <summary>Whether what a maker sends is the piece that was handed to her.</summary>
internal static class SamePiece
{
    /// <summary>
    /// Her own are the log and the counts of her yarn. The size and the design are the designer's, to the last word; but for
    /// these counts the design may be worked out anew, which changes the yarn's counts and the stitches that follow from them.
    /// </summary>
    public static bool Is(MakingDocument begun, MakingDocument sent) => begun.Size == sent.Size
        && (IsSame(begun.Project, sent.Project)
            || (!sent.Counted.IsEmpty && IsSame(OwnYarn.Rederive(begun.Project, sent.Counted), sent.Project)));

    /// <summary>As written: that says everything, in one form.</summary>
    private static bool IsSame(Project one, Project other) => ProjectWriter.Write(one) == ProjectWriter.Write(other);
}
