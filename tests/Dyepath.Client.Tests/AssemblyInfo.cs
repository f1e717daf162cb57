using System.Runtime.Versioning;

[assembly: SupportedOSPlatform("browser")]
