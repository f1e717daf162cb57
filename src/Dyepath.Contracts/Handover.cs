namespace Dyepath.Contracts;

/// <summary>Asks for a handover.</summary>
/// <param name="Size">Name of the size that is to be made.</param>
public sealed record NewHandover(string Size);

/// <summary>A piece handed over to whoever has the key: the project as it was at that moment, for one size.</summary>
/// <param name="Id">Names the handover to its designer; it opens nothing.</param>
/// <param name="Size">Name of the size that is to be made.</param>
/// <param name="CreatedAt">When it was made; the project is as it was then.</param>
/// <param name="Key">43 letters, digits, - and _; told this once, and stored nowhere.</param>
public sealed record Handover(string Id, string Size, DateTimeOffset CreatedAt, string Key);

/// <summary>A handover that stands.</summary>
/// <param name="Id">As in <see cref="Handover"/>.</param>
/// <param name="Size">Name of the size that is to be made.</param>
/// <param name="CreatedAt">When it was made.</param>
/// <param name="Logs">How many makers have sent their logs.</param>
public sealed record HandoverSummary(string Id, string Size, DateTimeOffset CreatedAt, int Logs);

/// <summary>What a maker to whom the project was handed over has done so far.</summary>
/// <param name="Id">Of the piece that she makes.</param>
/// <param name="Size">Name of the size that she makes.</param>
/// <param name="ReceivedAt">When she last sent it; in whole milliseconds.</param>
/// <param name="Entries">Length of her log.</param>
public sealed record ReceivedLog(string Id, string Size, DateTimeOffset ReceivedAt, int Entries);
