namespace Dyepath.Core.Sizing;

/// <summary>Whom a chart or a rule is for. A baby is up to two years here, a child up to ten, a youth up to sixteen.</summary>
[Flags]
public enum Wearers
{
    /// <summary>Nobody.</summary>
    None = 0,

    /// <summary>Up to two years.</summary>
    Baby = 1,

    /// <summary>Over two, up to ten years.</summary>
    Child = 2,

    /// <summary>Over ten, up to sixteen years.</summary>
    Youth = 4,

    /// <summary>Over sixteen years.</summary>
    Adult = 8,

    /// <summary>Of any age.</summary>
    Everyone = Baby | Child | Youth | Adult,
}
