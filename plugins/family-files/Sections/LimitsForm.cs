using FamilyFiles.Forms;
using FamilyFiles.Values;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>Limits in short, with the file's usual source of numbers, or as an entry that names another source.</summary>
internal sealed class LimitsForm : Form<Limits>
{
    private static readonly Form<Window> s_window = new ScalarForm<Window>("limits-form", LimitsText.Wanted, ["string"], LimitsText.Read);

    private readonly EitherForm<Limits> _either = new(new Brief(), new Full());

    public static LimitsForm All { get; } = new();

    /// <inheritdoc/>
    public override Limits? Read(Node node, Place place, FileReading reading) => _either.Read(node, place, reading);

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => book.Refer("limits", () => _either.Schema(book));

    private static Limits? Made(Window window, Source source, Node node, Place place, FileReading reading)
    {
        try
        {
            return new Limits(window.Low, window.High, window.Target, source);
        }
        catch (ArgumentException)
        {
            reading.Error(node, place, "window-upside-down", "Limits go from the lower to the higher end, in one unit, and the target lies between: turn them round.");
            return null;
        }
    }

    private sealed class Brief : Form<Limits>
    {
        public override Limits? Read(Node node, Place place, FileReading reading) =>
            s_window.Read(node, place, reading) is { } window && reading.Usual("numbers", node, place) is { } source ? Made(window, source, node, place, reading) : null;

        public override JsonObject Schema(SchemaBook book) => s_window.Schema(book);
    }

    private sealed class Full : ObjectForm<Limits>
    {
        private readonly Field<Window> _is;
        private readonly Field<Source> _source;

        public Full()
            : base("limits-with-source", "Limits that do not come from the usual source.")
        {
            _is = Need("is", s_window, "The limits.", "");
            _source = Need("source", new SourceNameForm(), "Name of the source.");
        }

        protected override Limits? Make(Got got, Node node, Place place, FileReading reading) => Made(got.Of(_is), got.Of(_source), node, place, reading);
    }
}
