using RebuildApi.PluginHost;
using RebuildApi.Server;
using RebuildApi.Server.Authoring;
using RebuildApi.Server.Checks;
using RebuildApi.Server.Demo;

// The inside of a worker process; the service starts it, nobody else does.
if (args is [RebuildApplication.WorkerVerb])
    return PluginWorker.RunProcess();
if (args is ["demo", .. var rest])
    return await DemoCommand.Run(rest);
if (args is ["family" or "new", ..])
    return await FamilyCommand.Run(args, Console.Out, Console.Error);
if (args is ["check", .. var asked])
    return await CheckCommand.Run(asked);
await RebuildApplication.Create(args).RunAsync();
return 0;
