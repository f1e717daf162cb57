using System.Collections;
using System.Reflection;

namespace Dyepath.Core.Tests.Projects;

/// <summary>Compares records property by property, lists item by item: nothing of the document's own description takes part.</summary>
internal static class Same
{
    /// <summary>The path of the first difference; null when there is none.</summary>
    public static string? Difference(object? a, object? b, string path = "")
    {
        if (a is null || b is null)
            return a is null && b is null ? null : $"{path}: {a ?? "nothing"} and {b ?? "nothing"}";
        if (a.GetType() != b.GetType())
            return $"{path}: {a.GetType().Name} and {b.GetType().Name}";
        if (a is IEnumerable first and not string)
            return Lists([.. first.Cast<object?>()], [.. ((IEnumerable)b).Cast<object?>()], path);
        if (a is string || a.GetType().IsValueType && !a.GetType().Name.StartsWith("KeyValuePair", StringComparison.Ordinal))
            return a.Equals(b) ? null : $"{path}: {a} and {b}";
        return a.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.GetIndexParameters().Length == 0)
            .Select(p => Difference(p.GetValue(a), p.GetValue(b), $"{path}.{p.Name}"))
            .FirstOrDefault(d => d is not null);
    }

    private static string? Lists(object?[] a, object?[] b, string path) => a.Length != b.Length
        ? $"{path}: {a.Length} and {b.Length} items"
        : a.Select((item, i) => Difference(item, b[i], $"{path}[{i}]")).FirstOrDefault(d => d is not null);
}
