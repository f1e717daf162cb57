using System.CommandLine;
using Dyepath.Web.Backup;
using Dyepath.Web.Serving;

var root = new RootCommand("""
    Serves Dyepath to browsers and keeps its projects.

    Start here:
      dyepath-web serve --open             on this computer alone
      dyepath-web backup projects.jsonl    everything that is stored, as lines of JSON
      dyepath-web restore projects.jsonl   and back again

    Exit codes: 0 success, 2 bad input or a store that cannot be used, 3 a backup of a store with damaged texts, 4 internal fault.
    """)
{
    ServeCommand.Create(),
    BackupCommand.Create(),
    RestoreCommand.Create(),
};
return await CommandLine.RunAsync(root, args);
