using System.Text.Json;

namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// Sentences that many texts of the embedded data share, each written once: "{leave}" in a text stands for the sentence of that name. A
/// name that nothing stands for is a fault of the build and throws.
/// </summary>
public sealed class SharedSentences
{
    private readonly Dictionary<string, string> byName;

    private SharedSentences(Dictionary<string, string> byName) => this.byName = byName;

    /// <summary>The 'sentences' of a file of data, beside those of a file below it.</summary>
    public static SharedSentences Of(JsonElement root, SharedSentences? below = null)
    {
        var all = new SharedSentences(below is null
            ? new(StringComparer.Ordinal) : new(below.byName, StringComparer.Ordinal));
        foreach (var sentence in root.GetProperty("sentences").EnumerateObject())
        {
            // One may hold others that stand before it.
            all.byName.Add(sentence.Name, all.In(sentence.Value.GetString()!));
        }

        return all;
    }

    /// <summary>The sentence of a name.</summary>
    public string this[string name] =>
        byName.GetValueOrDefault(name) ?? throw new InvalidOperationException($"There is no sentence '{name}'.");

    /// <summary>A text with its sentences written out.</summary>
    public string In(string text)
    {
        while (text.IndexOf('{', StringComparison.Ordinal) is >= 0 and var from)
        {
            var to = text.IndexOf('}', from);
            text = text[..from] + this[text[(from + 1)..to]] + text[(to + 1)..];
        }

        return text;
    }
}
