namespace Dyepath.Core.Booklets;

/// <summary>Words as one reader sees them.</summary>
/// <param name="Text">In the reader's terms, units and hand.</param>
/// <param name="Strong">Printed in bold.</param>
public readonly record struct TextSpan(string Text, bool Strong);
