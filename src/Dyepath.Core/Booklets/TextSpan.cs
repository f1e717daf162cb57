namespace Dyepath.Core.Booklets;

/// <summary>Words as one reader sees them.</summary>
public readonly record struct TextSpan(string Text, bool Strong);
