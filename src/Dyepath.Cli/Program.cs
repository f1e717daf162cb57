using System.Text;
using Dyepath.Cli;

// Strict, as for files: bytes that are not UTF-8 are refused, not replaced.
using var input = new StreamReader(
    Console.OpenStandardInput(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: true, throwOnInvalidBytes: true), detectEncodingFromByteOrderMarks: false);
return await App.RunAsync(args, input, Console.Out, Console.Error).ConfigureAwait(false);
