using System.CommandLine.Parsing;
using System.Globalization;
using System.Numerics;

namespace Dyepath.Cli.Commands;

/// <summary>
/// Reads the number of an option: the same everywhere, with a decimal point and no thousands, so that 0,5 is not taken for 5.
/// </summary>
internal static class NumberText
{
    public static T Read<T>(ArgumentResult result)
        where T : struct, INumber<T>
    {
        var text = result.Tokens[0].Value;
        if (T.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
            return number;
        result.AddError(typeof(T) == typeof(double) || typeof(T) == typeof(decimal)
            ? $"“{text}” is not a number; write it with a decimal point and without thousands, such as 0.5."
            : $"“{text}” was given; write a whole number{(typeof(T) == typeof(ulong) ? $", 0 to {ulong.MaxValue}" : "")}.");
        return default;
    }
}
