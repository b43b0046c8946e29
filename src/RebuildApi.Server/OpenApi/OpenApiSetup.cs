using Microsoft.OpenApi;
using RebuildApi.Contracts;
using RebuildApi.Server.Access;
using RebuildApi.Server.Requests;
using Swashbuckle.AspNetCore.Swagger;
using Swashbuckle.AspNetCore.SwaggerUI;

namespace RebuildApi.Server.OpenApi;

/// <summary>The OpenAPI document at <c>/openapi/v1.json</c> and the reference page at <c>/docs</c>, both without a network.</summary>
public static class OpenApiSetup
{
    /// <summary>Name of the way in.</summary>
    public const string TokenScheme = "token";

    /// <summary>Registers the generator.</summary>
    public static void AddDocument(this IServiceCollection services)
    {
        services.AddEndpointsApiExplorer();
        services.Configure<SwaggerOptions>(o => o.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1);
        services.AddSwaggerGen(o =>
        {
            o.SwaggerDoc("v1", Info());
            o.AddSecurityDefinition(TokenScheme, new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.Http,
                Scheme = "bearer",
                Description = "Authorization: Bearer and the token. " + string.Join(" ", Scopes.All.Select(s => $"`{s.Scope.Word()}`: {s.May}.")) + " Each scope includes those before it.",
            });
            o.MapType<SentNumber>(() => new OpenApiSchema { Type = JsonSchemaType.Number, Description = "A number, kept as it was sent." });
            o.SupportNonNullableReferenceTypes();
            o.IncludeXmlComments(Path.Combine(AppContext.BaseDirectory, "RebuildApi.Server.xml"));
            o.IncludeXmlComments(typeof(Outcome).Assembly);
            o.CustomSchemaIds(SchemaNames.Of);
            o.SchemaFilter<RequestRules>();
            o.OperationFilter<OperationWords>();
            o.OperationFilter<OperationAnswers>();
            o.DocumentFilter<DocumentWords>();
        });
    }

    /// <summary>Serves the document and the page.</summary>
    public static void UseDocument(this IApplicationBuilder app)
    {
        app.UseSwagger(o => o.RouteTemplate = "openapi/{documentName}.json");
        app.UseSwaggerUI(o =>
        {
            o.RoutePrefix = "docs";
            o.DocumentTitle = "Rebuild API";
            o.SwaggerEndpoint("/openapi/v1.json", "Rebuild API v1");
            o.DocExpansion(DocExpansion.None);
        });
    }

    private static OpenApiInfo Info() => new()
    {
        Title = "Rebuild API",
        Version = "v1",
        Description = """
            Takes in manual gearboxes, findings and measurements from the benches of a rebuild shop, and answers with reasons: is this part good, will
            these clearances come right, may these parts run together.

            The service advises; a person decides and signs. The maker's data, local codes and licensed practice stand before anything said here.

            It listens on this machine only, unless the shop lets its network in, and asks for a token of the scope that each operation names. Every quantity carries its unit. Every error is problem details (RFC 9457) whose type is
            a page of this service.
            """,
        Contact = new OpenApiContact { Name = "The workshop that runs this service" },
        License = new OpenApiLicense { Name = "As given with the source" },
    };
}
