namespace Dyepath.Cli.Tests;

public sealed class PicturesCommandTests : IDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), $"dyepath-{Guid.NewGuid():N}");

    public void Dispose()
    {
        if (Directory.Exists(_folder))
            Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task Every_picture_has_its_text_beside_it()
    {
        var told = await Run.Json($"pictures --demo --out {_folder} --size L");
        string[] files = [.. told.GetProperty("files").EnumerateArray().Select(f => f.GetString()!)];
        Assert.Equal(18, files.Length);
        Assert.Equal(files.Order(), Directory.GetFiles(_folder).Order());
        Assert.Contains("size L", await File.ReadAllTextAsync(Path.Combine(_folder, "cover-tall.txt"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("pictures --demo", "--out")]
    [InlineData("pictures --demo --out x --size Q", "--size: There is no size Q in this pattern: ")]
    [InlineData("pictures --demo --out /dev/null/x", "--out: The folder cannot be written: ")]
    public async Task What_cannot_be_is_refused_where_it_stands(string command, string words)
    {
        var (code, _, errors) = await Run.Dyepath(command);
        Assert.Equal(2, code);
        Assert.StartsWith(words, errors, StringComparison.Ordinal);
    }
}
