using System.Text.Json.Nodes;
using RecipeLint.Editor.Documents;
using RecipeLint.Editor.Sessions;
using RecipeLint.Recipes.Text;
using RecipeLint.Reports;

namespace RecipeLint.Editor.Features;

/// <summary>Shapes of the protocol (Language Server Protocol 3.17).</summary>
internal static class Lsp
{
    private const string Markup = "\\`*_{}[]<>#|!&~";

    public static JsonObject Node(TextPosition position) => new() { ["line"] = position.Line, ["character"] = position.Character };

    public static JsonObject Node(TextRange range) => new() { ["start"] = Node(range.Start), ["end"] = Node(range.End) };

    public static JsonObject Location(View view, Place place) =>
        new() { ["uri"] = view.UriOf(place.File), ["range"] = Node(view.RangeOf(place)) };

    public static JsonObject Markdown(string text) => new() { ["kind"] = "markdown", ["value"] = text };

    public static JsonObject Edit(TextRange range, string text) => new() { ["range"] = Node(range), ["newText"] = text };

    public static JsonArray Array(IEnumerable<JsonNode?> items) => new([.. items]);

    /// <summary>A text of a file inside Markdown: nothing in it can become markup or a link.</summary>
    public static string Plain(string text) =>
        string.Concat(Printable.Show(text).Select(c => Markup.Contains(c, StringComparison.Ordinal) ? $"\\{c}" : $"{c}"));
}
