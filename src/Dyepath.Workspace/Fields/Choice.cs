namespace Dyepath.Workspace.Fields;

/// <param name="Value">As the document says it.</param>
/// <param name="Words">As the form shows it.</param>
public sealed record Choice(string Value, string Words)
{
    public Choice(string value)
        : this(value, value)
    {
    }
}
