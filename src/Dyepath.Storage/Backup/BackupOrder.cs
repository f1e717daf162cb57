using Dyepath.Contracts;

namespace Dyepath.Storage.Backup;

/// <summary>What a line of a backup may say, after the lines before it.</summary>
internal sealed class BackupOrder(StoredForms forms)
{
    private const int HashDigits = 64;

    private readonly HashSet<string> _projects = [];
    /// <summary>The project of each.</summary>
    private readonly Dictionary<string, string> _handovers = [];
    private readonly HashSet<string> _keys = [];
    private readonly HashSet<string> _logs = [];
    private readonly HashSet<(string? Handover, string Making)> _sent = [];
    private readonly HashSet<string> _makings = [];

    private BackupProject? _project;
    private int _lastVersion;

    /// <summary>What is wrong with the line, as the rest of a sentence; null where nothing is.</summary>
    public string? Fault(BackupLine line) => line switch
    {
        { Project: { } project } => FaultOf(project),
        { Making: { } making } => FaultOf(making),
        _ when _project is null => "belongs to a project, and there is none above it",
        { Version: { } version } => FaultOf(version),
        { Handover: { } handover } => FaultOf(handover),
        { Log: { } log } => FaultOf(log),
        _ => "is not what belongs there: the file was cut short or changed",
    };

    private string? FaultOf(BackupProject project)
    {
        (_project, _lastVersion) = (project, 0);
        if (!forms.IsId(project.Id))
            return "names a project by what is no id";
        if (!_projects.Add(project.Id))
            return $"holds {ShownName.Of(project.Name)} a second time";
        return project.LastVersion < 0 ? "counts fewer than no versions" : FaultOf(project.Document);
    }

    private string? FaultOf(BackupVersion version)
    {
        var isNext = version.Number > _lastVersion && version.Number <= _project!.LastVersion;
        _lastVersion = version.Number;
        return isNext ? FaultOf(version.Document) : $"holds version {version.Number}, which cannot come there";
    }

    private string? FaultOf(BackupHandover handover)
    {
        if (!forms.IsId(handover.Id))
            return "names a handover by what is no id";
        if (handover.KeyHash.Length != HashDigits || !handover.KeyHash.All(char.IsAsciiHexDigitLower))
            return "holds no hash of a key";
        return _handovers.TryAdd(handover.Id, _project!.Id) && _keys.Add(handover.KeyHash) ? FaultOf(handover.Document) : "holds a handover a second time";
    }

    private string? FaultOf(BackupLog log)
    {
        if (!forms.IsId(log.Id) || !forms.IsId(log.MakingId))
            return "names a log by what is no id";
        if (log.HandoverId is not null && _handovers.GetValueOrDefault(log.HandoverId) != _project!.Id)
            return "holds a log of a handover that its project does not have above it";
        if (log.Entries < 0)
            return "counts fewer than no entries";
        return _logs.Add(log.Id) && (log.HandoverId is null || _sent.Add((log.HandoverId, log.MakingId)))
            ? FaultOf(log.Document)
            : "holds a log a second time";
    }

    private string? FaultOf(BackupMaking making)
    {
        _project = null;
        if (!forms.IsId(making.Id) || (making.ProjectId is not null && !forms.IsId(making.ProjectId)))
            return "names a making or its project by what is no id";
        if (!_makings.Add(making.Id))
            return $"holds the making of {ShownName.Of(making.Title)} a second time";
        return making.Entries < 0 ? "counts fewer than no entries" : FaultOf(making.Document);
    }

    private string? FaultOf(string document) =>
        forms.IsDocument(BackupRows.Bytes(document)) ? null : "holds a text that is no document: no JSON object { … } of at most 2 MB";
}
