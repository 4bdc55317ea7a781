using System.Text;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Tests.Support;

/// <summary>
/// A pair of substances as it comes to meet in a batch record: planned together, the second taken by mistake for a plain salt, or left out and
/// still to be put in.
/// </summary>
internal sealed class PairRecorded
{
    /// <summary>What the second of the pair was taken for; it is dangerous with nothing.</summary>
    private const string Plain = "potassium-sulfate";

    private readonly MemoryFileTree _files;

    public PairRecorded(string one, string other)
    {
        _files = new MemoryFileTree("/shop").AddFolder("/shop/.git");
        Add("pair.stock.json", Stock(one, other));
        Add("plain.stock.json", Stock(one, Plain));
        Add("together.batch.json", Record("pair", ""));
        // A step is known by its id, which holds no full stop.
        Add("left-out.batch.json", Record("pair", $$"""{"step": "{{other.Replace('.', '-')}}", "amount": "0 g"}"""));
        Add("mistaken.batch.json", Record("plain", $$"""{"step": "{{Plain}}", "add": "{{other}}", "amount": "50 g"}"""));
    }

    /// <summary>What is answered to each record, by how the two met.</summary>
    public IEnumerable<(string Met, Answer Answer)> Answers() =>
    [
        ("planned", Ask("pair.stock.json", "together.batch.json")),
        ("left out", Ask("pair.stock.json", "left-out.batch.json")),
        ("mistaken", Ask("plain.stock.json", "mistaken.batch.json")),
    ];

    /// <summary>What is answered to a reading of the bottle, which fits the recipe or does not.</summary>
    public Answer Measured(string reading) => Cli.RunOver(_files, "diagnose", "pair.stock.json", "--measured", reading);

    public Answer Label() => Cli.RunOver(_files, "label", "pair.stock.json");

    private Answer Ask(string stock, string record) => Cli.RunOver(_files, "bench-sheet", stock, "--actual", record, "--width", "400");

    private void Add(string name, string text) => _files.Add(name, Encoding.UTF8.GetBytes(text));

    private static string Stock(string one, string other) => $$"""
        {"format": 1, "name": "Pair", "makes": "1 L", "dose": "10 mL/L", "keep": {"at": "8..25 °C", "for": "3 months"},
        "steps": [{"pour": "700 mL", "of": "distilled"}, {"add": "{{one}}", "amount": "50 g"}, {"add": "{{other}}", "amount": "50 g"},
        {"topUp": "1 L", "of": "distilled"}]}
        """;

    private static string Record(string stock, string step) =>
        $$"""{"format": 1, "stock": "{{stock}}.stock.json", "made": "2026-03-01", "steps": [{{step}}]}""";
}
