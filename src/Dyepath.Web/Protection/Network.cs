using System.Buffers.Binary;
using System.Net;
using System.Net.Sockets;

namespace Dyepath.Web.Protection;

/// <summary>Where a request comes from: an IPv4 address, or the first bits of an IPv6 address.</summary>
/// <param name="Prefix">The address, or its first bits and zeros.</param>
/// <param name="Bits">How many bits of <paramref name="Prefix"/> count.</param>
internal readonly record struct Network(UInt128 Prefix, int Bits)
{
    private const int AddressBits = 128;

    /// <summary>Whether it is of IPv6, where a network is more than an address.</summary>
    public bool IsWide => Bits < AddressBits;

    /// <param name="bits">That count of an IPv6 address.</param>
    public static Network Of(HttpContext context, int bits)
    {
        var address = context.Connection.RemoteIpAddress ?? IPAddress.IPv6None;
        var isOld = address.AddressFamily == AddressFamily.InterNetwork || address.IsIPv4MappedToIPv6;
        Span<byte> bytes = stackalloc byte[AddressBits / 8];
        address.MapToIPv6().TryWriteBytes(bytes, out _);
        var whole = BinaryPrimitives.ReadUInt128BigEndian(bytes);
        return isOld ? new(whole, AddressBits) : new(whole >> (AddressBits - bits), bits);
    }

    /// <summary>Whether a request comes over the loopback.</summary>
    public static bool IsThisComputer(HttpContext context) =>
        context.Connection.RemoteIpAddress is { } address
            && IPAddress.IsLoopback(address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address);
}
