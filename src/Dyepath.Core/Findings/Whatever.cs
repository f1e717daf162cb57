using Dyepath.Core.Limits;
using Dyepath.Core.Measuring;

namespace Dyepath.Core.Findings;

/// <summary>
/// The net under whatever is worked out from a document: low-level code throws on what must not be, and a maker who typed something that
/// was allowed is told so in words, at a place, with her document unharmed.
/// </summary>
internal static class Whatever
{
    /// <param name="work">What it throws, other than that it was cancelled, leads to a finding.</param>
    /// <param name="otherwise">What the finding leads to.</param>
    public static T Happens<T>(Effort effort, Func<T> work, Func<Finding, T> otherwise)
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

    /// <summary>What is not for a maker's eyes is kept for whoever mends it.</summary>
    private static Finding Broken(string place, Exception fault) => new(
        FindingLevel.Fault, place, "This could not be worked out: undo the last change. The document is kept.")
    {
        Cause = fault,
    };
}
