using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace RecipeLint.Fuzz;

/// <summary>A few files that belong together, by path from their folder.</summary>
internal sealed record FuzzShop(string Name, IReadOnlyList<(string Path, byte[] Bytes)> Files);

/// <summary>What mutation starts from: example shops and rule examples, and every value and key that stands in them.</summary>
internal sealed class Corpus
{
    private Corpus(IReadOnlyList<FuzzShop> shops)
    {
        Shops = shops;
        foreach (var file in shops.SelectMany(s => s.Files))
        {
            try
            {
                Gather(JsonNode.Parse(file.Bytes, null, Lenient), "");
            }
            catch (Exception e) when (e is JsonException or ArgumentException)
            {
                // Some examples are files that are no JSON, or name a member twice.
            }
        }

        Keys = [.. Values.Keys.Order(StringComparer.Ordinal)];
        Strings = [.. Values.Values.SelectMany(v => v).Where(v => v.StartsWith('"')).Distinct().Order(StringComparer.Ordinal)];
    }

    public static Corpus Instance { get; } = new([.. Load()]);

    public static JsonDocumentOptions Lenient { get; } = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    public IReadOnlyList<FuzzShop> Shops { get; }

    /// <summary>Those of them that bring rules of their own.</summary>
    public IReadOnlyList<FuzzShop> HouseRuled => [.. Shops.Where(s => s.Files.Any(f => f.Path.EndsWith(".rule.json", StringComparison.Ordinal)))];

    /// <summary>Those with records of batches.</summary>
    public IReadOnlyList<FuzzShop> Batched => [.. Shops.Where(s => s.Files.Any(f => f.Path.EndsWith(".batch.json", StringComparison.Ordinal)))];

    /// <summary>JSON texts of values by the key they stand under.</summary>
    public Dictionary<string, List<string>> Values { get; } = new(StringComparer.Ordinal);

    public IReadOnlyList<string> Keys { get; }

    /// <summary>JSON texts of all strings.</summary>
    public IReadOnlyList<string> Strings { get; }

    private static IEnumerable<FuzzShop> Load()
    {
        var root = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(root, "RecipeLint.sln")))
        {
            root = Path.GetDirectoryName(root) ?? throw new InvalidOperationException("The harness runs inside the repository.");
        }

        var folders = Directory.EnumerateDirectories(Path.Combine(root, "examples"))
            .Concat(Directory.EnumerateDirectories(Path.Combine(root, "rules")).SelectMany(Directory.EnumerateDirectories).SelectMany(Directory.EnumerateDirectories));
        foreach (var folder in folders.Order(StringComparer.Ordinal))
        {
            var files = Directory.EnumerateFiles(folder, "*.json", SearchOption.AllDirectories)
                .Where(f => !f.EndsWith("expected.json", StringComparison.Ordinal) && new FileInfo(f) is { LinkTarget: null, Length: < 60_000 })
                .Order(StringComparer.Ordinal)
                .Select(f => (Path.GetRelativePath(folder, f).Replace('\\', '/'), File.ReadAllBytes(f)))
                .ToList();
            if (files.Count > 0)
            {
                yield return new FuzzShop(Path.GetRelativePath(root, folder), files);
            }
        }
    }

    private void Gather(JsonNode? node, string key)
    {
        if (key.Length > 0)
        {
            if (!Values.TryGetValue(key, out var list))
            {
                Values[key] = list = [];
            }

            var text = node?.ToJsonString() ?? "null";
            if (list.Count < 400 && text.Length < 2000)
            {
                list.Add(text);
            }
        }

        switch (node)
        {
            case JsonObject members:
                foreach (var (name, value) in members)
                {
                    Gather(value, name);
                }

                break;
            case JsonArray items:
                foreach (var item in items)
                {
                    Gather(item, key);
                }

                break;
        }
    }

    public static string Text(byte[] bytes) => Encoding.UTF8.GetString(bytes);
}
