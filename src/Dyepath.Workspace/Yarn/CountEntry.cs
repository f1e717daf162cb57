using System.Globalization;

namespace Dyepath.Workspace.Yarn;

/// <summary>
/// Counts as they are keyed in, one after another. Where a further digit would make far more stitches than this colour usually
/// takes, a digit is a count by itself, so that counting costs one key a colour.
/// </summary>
public sealed class CountEntry
{
    /// <summary>Most stitches of one section that the document allows.</summary>
    private const int Most = 1_000;

    /// <summary>Digits keyed in, not yet a count.</summary>
    public string Pending { get; private set; } = "";

    /// <summary>Whether a digit may become a count without a further key.</summary>
    public bool GoesOn { get; set; } = true;

    /// <summary>Takes what the box now holds.</summary>
    /// <param name="usual">Stitches that this colour usually takes; null where nothing is known of it.</param>
    /// <returns>The count, once there is one.</returns>
    public int? Type(string text, double? usual)
    {
        var digits = new string([.. text.Where(char.IsAsciiDigit).Take(4)]);
        var ended = text.Length > 0 && text[^1] is ' ' or ',' or ';' or '.' or '\n';
        Pending = digits;
        if (digits.Length == 0)
            return null;
        return ended || (GoesOn && Value * 10 > Plausible(usual)) ? Take() : null;
    }

    /// <summary>One digit more, as a key or button gives it.</summary>
    public int? Digit(char digit, double? usual) => Type(Pending + digit, usual);

    /// <summary>What is keyed in is the count.</summary>
    public int? Enter() => Pending.Length == 0 ? null : Take();

    /// <summary>Takes away the last digit; false where there is none, so that the last count is meant.</summary>
    public bool Back()
    {
        if (Pending.Length == 0)
            return false;
        Pending = Pending[..^1];
        return true;
    }

    /// <summary>Drops what is keyed in.</summary>
    public void Clear() => Pending = "";

    private int Value => int.Parse(Pending, CultureInfo.InvariantCulture);

    private static double Plausible(double? usual) => usual is { } known ? 1.6 * known + 2 : double.PositiveInfinity;

    private int? Take()
    {
        var value = Value;
        if (value > Most)
            return null;
        Pending = "";
        return value;
    }
}
