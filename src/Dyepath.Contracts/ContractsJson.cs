using System.Text.Json;
using System.Text.Json.Serialization;

namespace Dyepath.Contracts;

/// <summary>How contracts are written as JSON, without reflection.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web)]
[JsonSerializable(typeof(ProjectSummary))]
[JsonSerializable(typeof(ProjectSummary[]))]
[JsonSerializable(typeof(SwatchPicture))]
[JsonSerializable(typeof(VersionSummary))]
[JsonSerializable(typeof(VersionSummary[]))]
[JsonSerializable(typeof(MakingSummary))]
[JsonSerializable(typeof(MakingSummary[]))]
[JsonSerializable(typeof(NewHandover))]
[JsonSerializable(typeof(Handover))]
[JsonSerializable(typeof(HandoverSummary[]))]
[JsonSerializable(typeof(ReceivedLog[]))]
[JsonSerializable(typeof(DeviceSession))]
[JsonSerializable(typeof(Problem))]
[JsonSerializable(typeof(Readiness))]
public sealed partial class ContractsJson : JsonSerializerContext;
