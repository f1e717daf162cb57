using System.Net;
using System.Text;
using Dyepath.Contracts;

namespace Dyepath.Web.Tests.Protection;

/// <summary>Forms that are not what our own page sends are answered in words, and open nothing.</summary>
public sealed class SignInFormTests(GuardedHost guarded) : IClassFixture<GuardedHost>
{
    private const string Token = GuardedHost.Token;

    private const string Form = "application/x-www-form-urlencoded";

    private readonly RunningHost _host = guarded.Running;

    public static TheoryData<string, string?> Wrong => new()
    {
        { $"token={Token}", "multipart/form-data; boundary=x" },
        { $"token={Token}", "text/plain" },
        { $"token={Token}", "application/json" },
        { $"token={Token}", $"{Form}; charset=utf-7" },
        { $"token={Token}", $"{Form}; charset=utf-16" },
        { $"token={Token}", "x" },
        { $"token={Token}", null },
        { "", Form },
        { "token=", Form },
        { $"Token={Token}&a=b&c=d", Form },
        { $"token={Token}&token={Token}", Form },
        { $"token={new string('x', 1_001)}", Form },
        { $"token={Token}&{new string('k', 21)}=1", Form },
        { $"token={Token}&a=1&b=2", Form },
        { $"token={Token}&a={new string('x', 5_000)}", Form },
        { string.Join('&', Enumerable.Range(0, 900).Select(n => $"{n}=")), Form },
        { $"token={Token}&a={new string('x', 3_000_000)}", Form },
    };

    [Theory, MemberData(nameof(Wrong), DisableDiscoveryEnumeration = true)]
    public async Task A_form_that_is_not_our_page_s_is_refused(string body, string? type)
    {
        var content = new ByteArrayContent(Encoding.UTF8.GetBytes(body));
        if (type is not null)
            content.Headers.TryAddWithoutValidation("Content-Type", type);
        using var answer = await _host.Client.PostAsync(ApiPaths.SignIn, content);
        Assert.Equal((HttpStatusCode.BadRequest, "text/html"), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
        Assert.False(answer.Headers.Contains("Set-Cookie"));
        Assert.Contains("Type the token into this page", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    /// <summary>Without a length the body is counted as it comes; who still sends hears the answer all the same.</summary>
    [Fact]
    public async Task A_form_without_end_is_refused()
    {
        using var answer = await _host.Client.PostAsync(ApiPaths.SignIn, new FormThatGoesOn());
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Theory]
    [InlineData("token=%00%01%e2%80%ae")]
    [InlineData("token=%ff%fe")]
    [InlineData("token=<script>alert(1)</script>")]
    public async Task What_is_typed_is_never_said_again(string body)
    {
        using var answer = await _host.Client.PostAsync(ApiPaths.SignIn, new StringContent(body, Encoding.UTF8, Form));
        Assert.InRange((int)answer.StatusCode, 400, 401);
        Assert.DoesNotContain("alert(", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.False(answer.Headers.Contains("Set-Cookie"));
    }

    [Theory]
    [InlineData(Form)]
    [InlineData(Form + "; charset=UTF-8")]
    public async Task What_our_page_sends_is_taken(string type)
    {
        var content = new ByteArrayContent(Encoding.UTF8.GetBytes($"token=+{Token}+"));
        content.Headers.TryAddWithoutValidation("Content-Type", type);
        using var answer = await _host.Client.PostAsync(ApiPaths.SignIn, content);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
    }

    [Theory]
    [InlineData(ApiPaths.SignIn)]
    [InlineData(ApiPaths.SignOut)]
    [InlineData("sign-in/typo")]
    public async Task The_pages_run_only_their_own_files(string path)
    {
        using var answer = await _host.Client.GetAsync(path);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.StartsWith("default-src 'none'; script-src 'self'; style-src 'self'; ", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("style=", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    /// <summary>A value far over the bound, sent bit by bit.</summary>
    private sealed class FormThatGoesOn : HttpContent
    {
        public FormThatGoesOn() => Headers.ContentType = new(Form);

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            await stream.WriteAsync("a="u8.ToArray());
            for (var part = 0; part < 12; part++)
            {
                await stream.WriteAsync(Encoding.UTF8.GetBytes(new string('x', 8_000)));
                await stream.FlushAsync();
                await Task.Delay(20);
            }
        }

        protected override bool TryComputeLength(out long length)
        {
            length = 0;
            return false;
        }
    }
}
