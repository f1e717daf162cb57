using Dyepath.Core.Limits;
using Dyepath.Core.Measuring;

namespace Dyepath.Core.Findings;

/// <summary>
/// Runs a computation on a document and turns an unexpected exception into a finding with a place and an instruction: what a user typed
/// within the allowed ranges never ends in an exception, and the document is kept.
/// </summary>
internal static class SafetyNet
{
    /// <param name="work">What it throws, other than that it was cancelled, leads to a finding.</param>
    /// <param name="otherwise">What the finding leads to.</param>
    public static T Run<T>(Effort effort, Func<T> work, Func<Finding, T> otherwise)
    {
        try
        {
            return work();
        }
        catch (OperationCanceledException)
        {
            throw;
        }
        catch (TooMuchWorkException tooMuch)
        {
            return otherwise(new Finding(FindingLevel.Fault, tooMuch.Part.Place, $"Working this out would take too long. {tooMuch.Part.LeaveOut}"));
        }
#pragma warning disable CA1031 // The one place where a fault of ours becomes a finding.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return otherwise(Broken(effort.Part.Place, fault));
        }
    }

    /// <summary>The exception goes into the finding for diagnosis and is not shown to the user.</summary>
    private static Finding Broken(string place, Exception fault) => new(
        FindingLevel.Fault, place, "This could not be worked out: undo the last change. The document is kept.")
    {
        Cause = fault,
    };
}
