using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Patching;

/// <summary>A file in memory, patched.</summary>
internal static class Bench
{
    public const string Name = "a.stock.json";

    public static Place At(string pointer) => new(Name, new JsonPointer(pointer));

    /// <summary>The place of a run of bytes.</summary>
    public static Place Bytes(int start, int length) => At("") with { Range = new ByteSpan(start, length) };

    /// <summary>The place of the first occurrence of a word; the text has to be ASCII up to there.</summary>
    public static Place Word(string text, string word) =>
        Bytes(text.IndexOf(word, StringComparison.Ordinal), Encoding.UTF8.GetByteCount(word));

    public static SourceFile Source(string text) => JsonReading.Read(Name, Encoding.UTF8.GetBytes(text)).Source;

    public static PatchResult Apply(string text, params JsonEdit[] edits) => JsonPatcher.Apply(Source(text), edits);

    public static string Patched(string text, params JsonEdit[] edits)
    {
        var result = Apply(text, edits);
        Assert.Null(result.Refused);
        return Encoding.UTF8.GetString(result.Bytes!);
    }

    public static string Refusal(string text, params JsonEdit[] edits)
    {
        var result = Apply(text, edits);
        Assert.Null(result.Bytes);
        Assert.Empty(result.Edits);
        return result.Refused!;
    }

    public static JsonDraft Number(string word) => new JsonDraft.Literal(word);

    public static JsonDraft Pair { get; } = JsonDraft.Of(("x", new JsonDraft.Literal("1")), ("y", new JsonDraft.Literal("2")));
}
