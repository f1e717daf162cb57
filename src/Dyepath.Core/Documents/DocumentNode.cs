using System.Collections.Immutable;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Documents;

/// <summary>A JSON value between text and meaning: read from a document with its line, or about to be printed.</summary>
internal abstract record DocumentNode
{
    /// <summary>Line on which the value begins, from 1; 0 for a value that was not read.</summary>
    public int Line { get; init; }
}

/// <param name="Remarks">Printed before the closing brace; a parsed node has none.</param>
internal sealed record ObjectNode(ImmutableArray<Member> Members, ImmutableArray<Remark> Remarks) : DocumentNode
{
    public static ObjectNode Of(params IEnumerable<(string Name, DocumentNode Value)> members) =>
        new([.. members.Select(m => new Member(m.Name, m.Value))], []);

    public Member? Find(string name) => Members.FirstOrDefault(m => m.Name == name);
}

/// <param name="Comment">Printed above the member; a parsed member has none.</param>
internal sealed record Member(string Name, DocumentNode Value, string? Comment = null);

/// <summary>A member that is commented out.</summary>
internal sealed record Remark(string Name, string Comment, DocumentNode Value);

internal sealed record ListNode(ImmutableArray<DocumentNode> Items) : DocumentNode;

internal sealed record TextNode(string Text) : DocumentNode;

/// <param name="Raw">As it is written, by the grammar of JSON.</param>
internal sealed record NumberNode(string Raw) : DocumentNode
{
    public static NumberNode Of(int value) => new(FormattableString.Invariant($"{value}"));

    /// <summary>The shortest text that reads back as the same number.</summary>
    public static NumberNode Of(double value) => new(FormattableString.Invariant($"{value:R}"));
}

internal sealed record FlagNode(bool Value) : DocumentNode;

internal sealed record NullNode : DocumentNode;

/// <summary>Stands for a picture that was read and checked before.</summary>
internal sealed record PictureNode(JpegPicture Picture) : DocumentNode;
