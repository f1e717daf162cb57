using System.Text;

namespace Dyepath.Mutations.Mutating;

/// <summary>Damages a text of JSON: mostly within its structure, sometimes as bytes. The same random numbers do the same damage.</summary>
internal static class Mutator
{
    public static byte[] Damage(string json, Random random)
    {
        if (random.Next(8) == 0)
            return DamageBytes(Encoding.UTF8.GetBytes(json), random);
        var tree = JsonTree.Parse(json);
        for (var times = random.Next(4) == 0 ? random.Next(2, 7) : 1; times > 0; times--)
            Damage(tree, random);
        var bytes = Encoding.UTF8.GetBytes(tree.ToString());
        return random.Next(40) == 0 ? DamageBytes(bytes, random) : bytes;
    }

    private static void Damage(JsonTree root, Random random)
    {
        (JsonTree Owner, int At)[] nodes = [.. root.Below()];
        if (nodes.Length == 0)
            return;
        var (owner, at) = nodes[random.Next(nodes.Length)];
        var node = owner.Children[at];
        switch (random.Next(24))
        {
            case 0:
                owner.Remove(at);
                break;
            case 1:
                owner.Insert(at, owner.Kind == '{' ? owner.Names[at] : "", node.Clone());
                break;
            case 2:
                var (other, there) = nodes[random.Next(nodes.Length)];
                owner.Children[at] = other.Children[there].Clone();
                break;
            case 3:
                var with = random.Next(owner.Children.Count);
                (owner.Children[at], owner.Children[with]) = (owner.Children[with], owner.Children[at]);
                break;
            case 4 when owner.Kind == '{':
                owner.Names[at] = Odd.Name(random, owner.Names[at]);
                break;
            case 5:
                owner.Insert(at, "\"odd\"", JsonTree.Value(Odd.Value(random, "1")));
                break;
            case 6:
                var deep = node;
                for (var levels = random.Next(8) == 0 ? random.Next(50, 4_000) : random.Next(1, 20); levels > 0; levels--)
                    deep = random.Next(2) == 0 ? JsonTree.List(deep) : JsonTree.Object("\"x\"", deep);
                owner.Children[at] = deep;
                break;
            case 7 when owner.Kind == '[':
                for (var times = random.Next(10) == 0 ? random.Next(100, 3_000) : random.Next(1, 70); times > 0; times--)
                    owner.Insert(at, "", node.Clone());
                break;
            case 8 when random.Next(10) == 0:
                owner.Children[at] = JsonTree.Value(JsonTree.Quoted(new string((char)random.Next(32, 1_000), random.Next(100, 100_000))));
                break;
            default:
                // A scalar, wherever it is.
                var scalars = nodes.Where(n => n.Owner.Children[n.At].Kind == '0').ToArray();
                if (scalars.Length == 0)
                    return;
                (owner, at) = scalars[random.Next(scalars.Length)];
                owner.Children[at] = JsonTree.Value(Odd.Value(random, owner.Children[at].Raw));
                break;
        }
    }

    public static byte[] DamageBytes(byte[] bytes, Random random)
    {
        for (var times = random.Next(1, 5); times > 0; times--)
        {
            if (bytes.Length == 0)
                return bytes;
            var at = random.Next(bytes.Length);
            switch (random.Next(9))
            {
                case 0:
                    bytes = bytes[..at];
                    break;
                case 1:
                    bytes = bytes[at..];
                    break;
                case 2:
                    bytes = [.. bytes[..at], .. bytes[Math.Min(bytes.Length, at + random.Next(1, 200))..]];
                    break;
                case 3:
                    bytes = [.. bytes[..at], .. (random.Next(5) switch { 0 => "\xff\xfe"u8, 1 => [0xc0, 0x80], 2 => [0xed, 0xa0, 0x80], 3 => [0xf4, 0x90, 0x80, 0x80], _ => [0xe2, 0x82] }), .. bytes[at..]];
                    break;
                case 4:
                    bytes = [.. (random.Next(2) == 0 ? [0xef, 0xbb, 0xbf] : new byte[] { 0xff, 0xfe }), .. bytes];
                    break;
                case 5:
                    bytes = [.. bytes[..at], .. "{}[],:\"\\9e-/*\0\n"u8.Slice(random.Next(15), 1), .. bytes[at..]];
                    break;
                case 6:
                    bytes = [.. bytes, .. bytes.AsSpan(0, Math.Min(at, 500))];
                    break;
                default:
                    bytes = [.. bytes];
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
            }
        }
        return bytes;
    }
}
