using System.Buffers.Binary;
using System.Net.Sockets;

namespace Dyepath.Web.Tests.Protection;

/// <summary>
/// The first message of a TLS client (RFC 5246, 7.4.1.2), written out, so that no library here refuses first what the host is
/// to refuse.
/// </summary>
internal static class ClientHello
{
    public const ushort Tls10 = 0x0301;
    public const ushort Tls11 = 0x0302;
    public const ushort Tls12 = 0x0303;

    private const byte Alert = 21;
    private const byte Handshake = 22;
    private const byte ServerHello = 2;

    /// <returns>The suite that the host chose; null where it refused.</returns>
    public static async Task<ushort?> OfferAsync(Uri host, ushort version, params ushort[] suites)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(host.Host, host.Port);
        var stream = socket.GetStream();
        await stream.WriteAsync(Write(version, suites));
        var record = new byte[5];
        if (await stream.ReadAtLeastAsync(record, record.Length, throwOnEndOfStream: false) < record.Length)
            return null;
        if (record[0] == Alert)
            return null;
        var message = new byte[BinaryPrimitives.ReadUInt16BigEndian(record.AsSpan(3))];
        await stream.ReadExactlyAsync(message);
        Assert.Equal((Handshake, ServerHello), (record[0], message[0]));
        // Type 1, length 3, version 2, random 32, then the session with its length before the suite.
        return BinaryPrimitives.ReadUInt16BigEndian(message.AsSpan(38 + 1 + message[38]));
    }

    private static byte[] Write(ushort version, ushort[] suites)
    {
        byte[] extensions =
        [
            .. Extension(0x0000, Sized(2, [0, .. Sized(2, "localhost"u8)])),
            .. Extension(0x000a, Sized(2, Words(0x001d, 0x0017, 0x0018))),
            .. Extension(0x000b, [1, 0]),
            .. Extension(0x000d, Sized(2, Words(0x0403, 0x0503, 0x0804, 0x0401, 0x0501, 0x0203, 0x0201))),
        ];
        byte[] body = [.. Words(version), .. new byte[32], 0, .. Sized(2, Words(suites)), 1, 0, .. Sized(2, extensions)];
        byte[] message = [1, .. Sized(3, body)];
        return [Handshake, .. Words(0x0301), .. Sized(2, message)];
    }

    private static byte[] Extension(ushort type, byte[] data) => [.. Words(type), .. Sized(2, data)];

    private static byte[] Sized(int bytes, ReadOnlySpan<byte> data)
    {
        var length = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(length, data.Length);
        return [.. length[(4 - bytes)..], .. data];
    }

    private static byte[] Words(params ushort[] words) => [.. words.SelectMany(word => new[] { (byte)(word >> 8), (byte)word })];
}
