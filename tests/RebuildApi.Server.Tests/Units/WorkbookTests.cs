using System.IO.Compression;
using System.Text;
using System.Text.Json.Nodes;
using System.Xml.Linq;
using Microsoft.AspNetCore.Http;
using RebuildApi.Server.Demo;
using RebuildApi.Server.Results;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Units;

/// <summary>Workbooks out and in. What was written is read here from the parts of the file itself (ECMA-376), not by the library that wrote it.</summary>
public sealed class WorkbookTests
{
    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    private sealed record Row(string Text, decimal Number);

    [Theory]
    [InlineData("=1+1")]
    [InlineData("=cmd|' /C calc'!A0")]
    [InlineData("+1")]
    [InlineData("@SUM(A1)")]
    [InlineData("$=A1")]
    [InlineData("007")]
    [InlineData("<b>&\"'")]
    public async Task Text_stays_text_whatever_it_begins_with(string text)
    {
        var book = await Written(new Workbook("x.xlsx", WorkbookSheet.Of("One", [new Row(text, 1.51m)])));
        var (cells, formulas) = Cells(book, "sheet1");
        Assert.Empty(formulas);
        Assert.Equal(["text", "number", text, "1.51"], cells.Select(c => c.Text));
        Assert.Equal("n", cells[3].Type);
        Assert.NotEqual("n", cells[2].Type);
    }

    [Fact]
    public async Task The_sheet_of_a_family_is_a_workbook_with_the_rows_of_its_table()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var book = await http.GetByteArrayAsync("/v1/families/brackenmere-4/sheet.xlsx?units=in");
        var table = (await http.GetStringAsync("/v1/families/brackenmere-4/sheet.csv?units=in")).Split("\r\n");
        var (cells, _) = Cells(book, "sheet1");
        Assert.Equal(table[0].Split(','), cells.Where(c => c.At.TrimStart([.. "ABCDEFGHIJKLMNOPQRSTUVWXYZ"]) == "1").Select(c => c.Text));
        Assert.Equal(table.Length - 3, cells.Count(c => c.At[0] == 'A' && char.IsDigit(c.At[1])) - 1);
    }

    [Fact]
    public async Task A_workbook_filled_in_by_another_program_gives_the_same_readings_as_the_table()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units", """{ "id": "u2", "tag": "T-2", "family": "brackenmere-4", "person": "Ada" }""");
        var book = Book(["position", "what", "id", "unit", "value1", "value2", "person", "bench"], ["third-gear", "reading", "length", "in", 1.5101, 1.51, "Ada", "b"]);
        using (var taken = await http.Send(HttpMethod.Post, "/v1/units/u1/measurements", book, Workbook.MediaType, ("Idempotency-Key", "k")))
            Assert.True(taken.IsSuccessStatusCode, await taken.Content.ReadAsStringAsync());
        const string Table = "position,what,id,unit,value1,value2,person,bench\r\nthird-gear,reading,length,in,1.5101,1.51,Ada,b\r\n";
        using (var taken = await http.Send(HttpMethod.Post, "/v1/units/u2/measurements", Encoding.UTF8.GetBytes(Table), "text/csv", ("Idempotency-Key", "l")))
            Assert.True(taken.IsSuccessStatusCode);
        Assert.Equal(await Readings(http, "u2"), await Readings(http, "u1"));
    }

    [Fact]
    public async Task A_cell_that_can_t_be_read_is_named_by_row_and_column()
    {
        var problem = await Refused(Book(["position", "what", "id", "unit", "value1", "person", "bench"], ["third-gear", "reading", "length", "in", 1.51, "Ada", "b"], ["third-gear", "reading", "length", "in", "1,51", "", ""]));
        Assert.Equal("row/3/value1", (string)problem["errors"]![0]!["pointer"]!);
    }

    [Theory]
    [InlineData("nothing")]
    [InlineData("no zip")]
    [InlineData("an empty zip")]
    [InlineData("unfolds to 64 MiB")]
    [InlineData("a thousand parts")]
    [InlineData("an entity bomb")]
    [InlineData("ten thousand columns")]
    [InlineData("the last row of all")]
    [InlineData("cut off")]
    public async Task A_file_that_is_no_workbook_or_a_bomb_is_refused(string what) =>
        Assert.True((string)(await Refused(Bad(what)))["code"]! is "malformed-workbook" or "invalid-body");

    [Fact]
    public async Task The_kit_is_a_workbook_with_a_sheet_for_each_who_needs_one()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        Assert.True(await new TeardownPlayer(http, TextWriter.Null).Play(Teardown.Load()));
        Assert.True(await new TeardownPlayer(http, TextWriter.Null).Play(Teardown.Shop()));
        await http.Make("/v1/units/sl-1047/plans", """{ "person": "Wren" }""");
        var kit = await http.Read("/v1/units/sl-1047/kit");
        var book = await http.GetByteArrayAsync("/v1/units/sl-1047/kit.xlsx");
        Assert.Equal(["Order", "Take from the shelf", "Ask for", "Work", "Assembly", "Tightening", "Oil", "Conditions", "Cautions"], Part(book, "xl/workbook.xml").Descendants(Main + "sheet").Select(s => (string)s.Attribute("name")!));
        Assert.Equal(kit["assembly"]!.AsArray().Count, Part(book, "xl/worksheets/sheet5.xml").Descendants(Main + "row").Count() - 1);
        Assert.Equal(kit["tightening"]!.AsArray().Count, Part(book, "xl/worksheets/sheet6.xml").Descendants(Main + "row").Count() - 1);
        Assert.Equal(kit["lubricants"]!.AsArray().Count, Part(book, "xl/worksheets/sheet7.xml").Descendants(Main + "row").Count() - 1);
        Assert.Equal(kit["picks"]!.AsArray().Count, Part(book, "xl/worksheets/sheet2.xml").Descendants(Main + "row").Count() - 1);
    }

    private static async Task<JsonObject> Refused(byte[] book)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/measurements", book, Workbook.MediaType, ("Idempotency-Key", "k"));
        var problem = await answer.Problem();
        Assert.Empty((await http.Read("/v1/units/u1/measurements"))["items"]!.AsArray());
        return problem;
    }

    private static byte[] Bad(string what) => what switch
    {
        "nothing" => [],
        "no zip" => "position,what\r\n"u8.ToArray(),
        "an empty zip" => Zip(),
        "unfolds to 64 MiB" => Zip([.. Around("<row r=\"1\"><c r=\"A1\"/></row>"), ("xl/media/image1.png", new string('\0', 64 << 20))]),
        "a thousand parts" => Zip([.. Enumerable.Range(0, 1000).Select(i => ($"xl/{i}.xml", "<x/>"))]),
        "an entity bomb" => Zip(Around("<row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>&b;</t></is></c></row>", "<!DOCTYPE x [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]>")),
        "ten thousand columns" => Zip(Around("<row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>position</t></is></c><c r=\"NTP1\"><v>1</v></c></row>")),
        "the last row of all" => Zip(Around("<row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>position</t></is></c></row><row r=\"1048576\"><c r=\"A1048576\"><v>1</v></c></row>")),
        _ => Book(["position"], ["third-gear"])[..^40],
    };

    private static async Task<string> Readings(HttpClient http, string unit) =>
        string.Join(' ', (await http.Read($"/v1/units/{unit}/measurements"))["items"]!.AsArray().Select(m => m!["readings"]!.ToJsonString()));

    private static async Task<byte[]> Written(Workbook book)
    {
        var http = new DefaultHttpContext { Response = { Body = new MemoryStream() } };
        await book.ExecuteAsync(http);
        return ((MemoryStream)http.Response.Body).ToArray();
    }

    // A workbook as another program may write it: shared and inline strings, numbers in full, no size of the sheet.
    private static byte[] Book(params object[][] rows) => Zip(Around(string.Concat(rows.Select((row, r) =>
        $"<row r=\"{r + 1}\">{string.Concat(row.Select((cell, c) => Cell($"{(char)('A' + c)}{r + 1}", cell)))}</row>"))));

    private static string Cell(string at, object value) => value is double number
        ? FormattableString.Invariant($"<c r=\"{at}\"><v>{number:G17}</v></c>")
        : $"<c r=\"{at}\" t=\"inlineStr\"><is><t>{value}</t></is></c>";

    private static (string Name, string Text)[] Around(string rows, string doctype = "") =>
    [
        ("[Content_Types].xml", """<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>"""),
        ("_rels/.rels", """<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>"""),
        ("xl/workbook.xml", """<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>"""),
        ("xl/_rels/workbook.xml.rels", """<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>"""),
        ("xl/worksheets/sheet1.xml", $"""{doctype}<worksheet xmlns="{Main}"><sheetData>{rows}</sheetData></worksheet>"""),
    ];

    private static byte[] Zip(params (string Name, string Text)[] parts)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in parts)
            {
                using var part = zip.CreateEntry(name, CompressionLevel.Fastest).Open();
                part.Write(Encoding.UTF8.GetBytes(text));
            }
        }

        return bytes.ToArray();
    }

    private static XDocument Part(byte[] book, string name)
    {
        using var zip = new ZipArchive(new MemoryStream(book));
        using var part = zip.GetEntry(name)!.Open();
        return XDocument.Load(part);
    }

    private static ((string At, string Type, string Text)[] Cells, XElement[] Formulas) Cells(byte[] book, string sheet)
    {
        var xml = Part(book, $"xl/worksheets/{sheet}.xml");
        var cells = xml.Descendants(Main + "c").Select(c => ((string)c.Attribute("r")!, (string?)c.Attribute("t") ?? "n", c.Value)).ToArray();
        return (cells, [.. xml.Descendants(Main + "f")]);
    }
}
