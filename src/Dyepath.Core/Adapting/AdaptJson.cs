using System.Text.Json;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Adapting;

/// <summary>An answer as JSON (docs/adapting.md).</summary>
public static class AdaptJson
{
    /// <summary>The verdict as JSON names it.</summary>
    public static string Of(AdaptVerdict verdict) => verdict switch
    {
        AdaptVerdict.AsWritten => "as-written",
        AdaptVerdict.OtherHook => "other-hook",
        AdaptVerdict.ReDerived => "re-derived",
        AdaptVerdict.NotSuited => "not-suited",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "No word for this verdict."),
    };

    /// <summary>
    /// Writes <c>{"verdict", "differs", "why", "plan", "changes", "wouldMake"}</c>, the plan as <see cref="PlanJson"/> does, null where there
    /// is none.
    /// </summary>
    public static void Write(Utf8JsonWriter json, Adaptation adaptation)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(adaptation);
        json.WriteStartObject();
        json.WriteString("verdict", Of(adaptation.Verdict));
        json.WriteString("differs", JsonNamingPolicy.CamelCase.ConvertName(adaptation.Cause.ToString()));
        json.WriteString("why", adaptation.Why);
        json.WritePropertyName("plan");
        if (adaptation.Plan is { } plan)
            PlanJson.Write(json, plan);
        else
            json.WriteNullValue();
        json.WriteStartArray("changes");
        foreach (var change in adaptation.Changes)
        {
            json.WriteStartObject();
            json.WriteString("what", change.What);
            json.WriteString("from", change.From);
            json.WriteString("to", change.To);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("wouldMake");
        foreach (var other in adaptation.Others)
        {
            json.WriteStartObject();
            json.WriteString("garment", other.Garment);
            json.WriteString("title", other.Title);
            json.WriteString("motif", other.Motif);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }
}
