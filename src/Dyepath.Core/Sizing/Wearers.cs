namespace Dyepath.Core.Sizing;

/// <summary>Whom a chart or a rule is for. A baby is up to two years here, a child up to ten, a youth up to sixteen.</summary>
[Flags]
public enum Wearers
{
    None = 0,
    Baby = 1,
    Child = 2,
    Youth = 4,
    Adult = 8,
    Everyone = Baby | Child | Youth | Adult,
}
