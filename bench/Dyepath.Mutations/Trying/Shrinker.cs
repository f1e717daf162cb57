using System.Text;
using Dyepath.Mutations.Mutating;

namespace Dyepath.Mutations.Trying;

/// <summary>Makes a failing input smaller as long as it fails in the same way.</summary>
internal static class Shrinker
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    /// <param name="fails">What is wrong with an input, in words that do not name its size; null where nothing is.</param>
    public static byte[] Shrink(byte[] input, Func<byte[], string?> fails)
    {
        var until = DateTime.UtcNow + Patience;
        if (fails(input) is not { } wrong)
            return input;
        JsonTree tree;
        try
        {
            tree = JsonTree.Parse(Encoding.UTF8.GetString(input));
        }
        catch (System.Text.Json.JsonException)
        {
            return Bytes(input, wrong, fails, until);
        }
        if (fails(Encoding.UTF8.GetBytes(tree.ToString())) != wrong)
            return input;
        for (var smaller = true; smaller && DateTime.UtcNow < until;)
        {
            smaller = false;
            foreach (var (owner, at) in tree.Below().ToArray())
            {
                if (DateTime.UtcNow > until)
                    break;
                if (at >= owner.Children.Count)
                    continue;
                var (node, name) = (owner.Children[at], owner.Kind == '{' ? owner.Names[at] : "");
                owner.Remove(at);
                if (fails(Encoding.UTF8.GetBytes(tree.ToString())) == wrong)
                    smaller = true;
                else
                    owner.Insert(at, name, node);
            }
        }
        return Encoding.UTF8.GetBytes(tree.ToString());
    }

    private static byte[] Bytes(byte[] input, string wrong, Func<byte[], string?> fails, DateTime until)
    {
        for (var step = input.Length / 2; step > 0; step /= 2)
        {
            for (var at = 0; at + step <= input.Length && DateTime.UtcNow < until;)
            {
                byte[] without = [.. input[..at], .. input[(at + step)..]];
                if (fails(without) == wrong)
                    input = without;
                else
                    at += step;
            }
        }
        return input;
    }
}
