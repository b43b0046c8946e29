using RebuildApi.PluginHost;
using RebuildApi.Server;

// The inside of a worker process; the service starts it, nobody else does.
return args is [RebuildApplication.WorkerVerb] ? PluginWorker.RunProcess() : await CommandLine.Run(args);
