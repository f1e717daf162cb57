namespace Dyepath.Core.Instructions;

/// <summary>Words as a reader sees them: a phrase said in an edition's terms, units and sizes.</summary>
/// <param name="Strong">Set apart from the words around it, in bold type or the like.</param>
public readonly record struct TextSpan(string Text, bool Strong);
