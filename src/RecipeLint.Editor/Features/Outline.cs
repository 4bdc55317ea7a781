using System.Globalization;
using System.Text.Json.Nodes;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Editor.Documents;
using RecipeLint.Editor.Sessions;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Editor.Features;

/// <summary>The outline of a document, and the verdict above it.</summary>
internal static class Outline
{
    // Kinds of the protocol (SymbolKind).
    private const int Field = 8, List = 18, Entry = 19;

    private const int LongestDetail = 60;

    public static JsonNode Symbols(View view) =>
        view.Source?.Tree?.Root is { Kind: JsonKind.Object } root ? Lsp.Array(root.Members.Select(m => Symbol(view, m.Name, m.Value)))
            : new JsonArray();

    /// <summary>How many findings, and the pH and EC of a stock or recipe.</summary>
    public static JsonNode Lenses(View view)
    {
        if (view.Source is null)
        {
            return new JsonArray();
        }

        var title = Verdicts.Words(view.Findings);
        if (view.Stock is { } stock)
        {
            title += Stated(stock.Chemistry.Mixing, "when mixed") + Stated(stock.Chemistry.Coldest, "at its coldest");
        }
        else if (view.Recipe is { } recipe)
        {
            title += Stated(recipe.Chemistry.Final, "in the tank");
        }

        return new JsonArray(new JsonObject
        {
            ["range"] = Lsp.Node(new TextRange(default, default)),
            ["command"] = new JsonObject { ["title"] = title, ["command"] = "" },
        });
    }

    private static string Stated(SolutionState state, string when)
    {
        if (!state.IsSolved)
        {
            return $" · pH {when} not known";
        }

        var ec = state.Conductivity.At25 is { } known ? $", EC {Figures.Of(known.MillisiemensPerCentimetre)} mS/cm" : "";
        return $" · pH {Say.PhShown(state.Ph)}{ec} {when}";
    }

    private static JsonObject Symbol(View view, string name, JsonItem item)
    {
        var symbol = new JsonObject
        {
            ["name"] = name.Length == 0 ? "\"\"" : name,
            ["detail"] = Detail(item),
            ["kind"] = item.Kind == JsonKind.Array ? List : item.Kind == JsonKind.Object ? Entry : Field,
            ["range"] = Lsp.Node(view.RangeOf(view.File, Whole(item))),
            ["selectionRange"] = Lsp.Node(view.RangeOf(view.File, item.KeySpan ?? item.Span)),
        };
        var children = item.Kind switch
        {
            JsonKind.Array => item.Items.Where(i => i.Kind == JsonKind.Object).Select(i => Symbol(view, Called(i), i)),
            JsonKind.Object when item.KeySpan is not null => item.Members.Select(m => Symbol(view, m.Name, m.Value)),
            _ => [],
        };
        symbol["children"] = Lsp.Array(children);
        return symbol;
    }

    private static ByteSpan Whole(JsonItem item) =>
        item.KeySpan is { } key ? new ByteSpan(key.Start, item.Span.End - key.Start) : item.Span;

    /// <summary>"add calcium-nitrate": the first two words of an entry.</summary>
    private static string Called(JsonItem entry) => entry.Members.Count == 0 ? "{}"
        : $"{entry.Members[0].Name} {Short(entry.Members[0].Value.Text)}".TrimEnd();

    private static string Detail(JsonItem item) => item.Kind switch
    {
        JsonKind.Array => string.Create(CultureInfo.InvariantCulture, $"{item.Items.Count}"),
        JsonKind.Object => string.Join(", ", item.Members.Skip(1).Where(m => m.Value.Text.Length > 0).Take(2)
            .Select(m => Short(m.Value.Text))),
        _ => Short(item.Text),
    };

    private static string Short(string text) => text.Length <= LongestDetail ? text : text[..LongestDetail] + "...";
}
