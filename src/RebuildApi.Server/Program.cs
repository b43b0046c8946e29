using RebuildApi.PluginHost;
using RebuildApi.Server;
using RebuildApi.Server.Commands;

// The inside of a worker process; the service starts it, nobody else does.
return args is [RebuildApplication.WorkerVerb] ? PluginWorker.RunProcess() : await CommandLine.Run(args);
