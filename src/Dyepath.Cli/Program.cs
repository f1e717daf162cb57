using Dyepath.Cli;

return await App.RunAsync(args, Console.In, Console.Out, Console.Error).ConfigureAwait(false);
