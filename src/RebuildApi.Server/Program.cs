using RebuildApi.Server;
using RebuildApi.Server.Demo;

if (args is ["demo", .. var rest])
    return await DemoCommand.Run(rest);
await RebuildApplication.Create(args).RunAsync();
return 0;
