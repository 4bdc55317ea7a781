using System.Buffers;
using System.Text;
using System.Text.Json;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Stocks;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>
/// The computed facts of one file as JSON: raw numbers with the unit in the key, objects keyed by element, a locator on everything that
/// stands in a file. The shape is schema/facts.schema.json; the order of keys is fixed and the numbers read back to the same doubles.
/// </summary>
public static class FactsWriter
{
    /// <summary>Version of the document's shape; a key may be added without a new version, none is renamed or removed.</summary>
    public const int FormatVersion = 1;

    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>
    /// Writes the facts of a stock or recipe file as UTF-8 without a byte order mark, ending in a line feed. Returns false, and writes
    /// nothing, when there are no facts for the file: it is neither, or its volume could not be read.
    /// </summary>
    /// <param name="file">Path relative to the workspace root, forward slashes.</param>
    /// <param name="full">Lists every dissolved species of every state too.</param>
    /// <param name="mixings">So many times a stock is mixed in thought; 0 for not at all.</param>
    public static bool TryWrite(Facts facts, string file, IBufferWriter<byte> output, bool full = false, int mixings = 0)
    {
        var stock = facts.FindStock(file);
        var recipe = facts.FindRecipe(file);
        if (stock is null && recipe is null)
        {
            return false;
        }

        using (var json = new Utf8JsonWriter(output, Options))
        {
            var writer = new FactsJson(json, facts.Workspace);
            json.WriteStartObject();
            json.WriteNumber("formatVersion", FormatVersion);
            if (stock is not null)
            {
                StockFactsJson.Write(writer, stock, full);
                UncertaintyJson.Write(writer, stock, facts.FindStock);
                if (mixings > 0)
                {
                    TrialsJson.Write(writer, ShopTrials.Of(facts, stock, mixings));
                }

                CostJson.Write(writer, CostFacts.Of(stock));
                writer.Sources(FactSources.Of(stock));
            }
            else
            {
                RecipeFactsJson.Write(writer, recipe!, full);
                UncertaintyJson.Write(writer, recipe!, facts.FindStock);
                CostJson.Write(writer, CostFacts.Of(recipe!));
                writer.Sources(FactSources.Of(recipe!));
            }

            json.WriteEndObject();
        }

        output.Write("\n"u8);
        return true;
    }

    /// <summary>The same as text that is safe to show: what would move a cursor or reorder text stands as \uXXXX.</summary>
    public static bool TryWrite(Facts facts, string file, TextWriter writer, bool full, int mixings)
    {
        var buffer = new ArrayBufferWriter<byte>();
        if (!TryWrite(facts, file, buffer, full, mixings))
        {
            return false;
        }

        using var safe = new JsonSafeWriter(writer);
        safe.Write(Encoding.UTF8.GetString(buffer.WrittenSpan));
        safe.Flush();
        return true;
    }
}
