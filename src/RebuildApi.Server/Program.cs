var builder = WebApplication.CreateSlimBuilder(args);
var app = builder.Build();
app.Run();
