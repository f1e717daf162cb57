using System.Security.Cryptography;
using System.Text;
using Dyepath.Contracts;

namespace Dyepath.Web.Protection;

/// <summary>
/// The one secret that opens this host. A program sends it as a bearer token; a browser gives it once and has a session from
/// then on.
/// </summary>
internal sealed class AccessToken(string token, TimeProvider clock)
{
    /// <summary>Slow enough that a stored mark is of little use for guessing a token of sixteen letters and more.</summary>
    private const int Rounds = 100_000;

    private readonly byte[] _hash = SHA256.HashData(Encoding.UTF8.GetBytes(token));

    private readonly FailureLimit _failures = new(clock);

    private readonly SlowLane _lane = new(clock);

    private readonly Lock _judging = new();

    /// <summary>What came of looking at a token.</summary>
    public enum Verdict
    {
        /// <summary>It is this host's.</summary>
        Right,

        /// <summary>It is not, and was counted.</summary>
        Wrong,

        /// <summary>Not looked at: too many wrong ones came from there.</summary>
        TooManyWrong,

        /// <summary>Not looked at: wrong ones come from everywhere, and too many wait to be looked at.</summary>
        TooManyWaiting,
    }

    /// <summary>
    /// What sessions remember of the token: the same on every host that has it, another one for another token.
    /// </summary>
    public string Mark { get; } = Convert.ToHexStringLower(
        Rfc2898DeriveBytes.Pbkdf2(token, "dyepath sessions"u8, Rounds, HashAlgorithmName.SHA256, 32));

    /// <summary>Looks at a token, unless too many wrong ones came before; may wait for its turn.</summary>
    public async ValueTask<Verdict> JudgeAsync(string given, HttpContext context)
    {
        if (_failures.IsReached(context))
            return Verdict.TooManyWrong;
        if (!await _lane.PassAsync(context))
            return Verdict.TooManyWaiting;
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(given));
        // One at a time, so that guesses sent together are counted before the next is looked at.
        lock (_judging)
        {
            if (_failures.IsReached(context))
                return Verdict.TooManyWrong;
            if (CryptographicOperations.FixedTimeEquals(hash, _hash))
                return Verdict.Right;
            _failures.Count(context);
        }
        _lane.Count();
        return Verdict.Wrong;
    }

    /// <summary>Why a token was not looked at.</summary>
    public Problem Refusal(Verdict verdict, HttpContext context) =>
        verdict == Verdict.TooManyWaiting ? SlowLane.Refusal(context) : _failures.Refusal(context, "tokens");
}
