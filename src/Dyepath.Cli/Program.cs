using System.Text;
using Dyepath.Cli;

// Strict, as for files: bytes that are not UTF-8 are refused, not replaced.
var strict = new UTF8Encoding(encoderShouldEmitUTF8Identifier: true, throwOnInvalidBytes: true);
using var input = new StreamReader(Console.OpenStandardInput(), strict, detectEncodingFromByteOrderMarks: false);
return await App.RunAsync(args, input, Console.Out, Console.Error).ConfigureAwait(false);
