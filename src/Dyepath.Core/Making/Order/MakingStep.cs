using System.Collections.Immutable;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Making.Order;

/// <summary>One thing to do, finished with one tap.</summary>
/// <param name="Label">Such as <c>Row 12 (WS)</c>.</param>
/// <param name="Text">How it is done.</param>
public record MakingStep(Phrase Label, Phrase Text);

/// <summary>One row or round.</summary>
/// <param name="Row">From 0, within its part.</param>
/// <param name="Notes">What else is done in this row, such as a mark.</param>
public sealed record RowStep(int Row, Phrase Label, Phrase Text, ImmutableArray<Phrase> Notes) : MakingStep(Label, Text);
