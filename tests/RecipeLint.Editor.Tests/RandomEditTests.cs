using System.Text;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Editor.Documents;
using RecipeLint.Editor.Features;
using RecipeLint.Editor.Sessions;
using RecipeLint.Editor.Tests.Support;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Editor.Tests;

/// <summary>
/// A thousand edits as nobody would make them: after each wave what the editor shows is what a run from scratch finds in the same texts, in
/// every open document. So nothing that is kept between edits goes stale, and nothing ends the server.
/// </summary>
public sealed class RandomEditTests
{
    private const int Edits = 1000;
    private const int Seed = 20261129;

    private static readonly string[] _bits =
    [
        "\"", "{", "}", "[", "]", ",", ":", "\n", "\r\n", " ", "🌱", "é", "1", "0 g", "\"amount\": \"3 g\"", "{ \"add\": \"KNO3\", \"amount\": \"5 g\" },",
        "\"10 mL/L\"", "mL", "\\u0041", "null", "//x", "\t", "part-b", "-", "°", "\uFEFF", "magnesium-sulfate-7h2o", "{ \"stir\": \"until clear\" },",
    ];

    [Fact]
    public void AThousandEditsLeaveNothingStale()
    {
        var disk = Shop.InMemory();
        using var client = Client.InProcess(disk);
        client.Initialize();
        var random = new Random(Seed);
        var texts = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var uri in new[] { Shop.Lettuce, Shop.PartA, "file:///quillmere/recipelint.json", "file:///quillmere/stocks/trace.stock.json" })
        {
            texts[uri] = Shop.Text(uri);
            client.Open(uri, texts[uri]);
        }

        var original = new Dictionary<string, string>(texts, StringComparer.Ordinal);
        var versions = texts.Keys.ToDictionary(u => u, _ => 1, StringComparer.Ordinal);
        var compared = 0;
        for (var edit = 1; edit <= Edits; edit++)
        {
            var uri = texts.Keys.ElementAt(random.Next(texts.Count));
            var text = texts[uri];

            // Most documents are whole most of the time, as in life: every few edits one is as it was.
            if (random.Next(4) == 0)
            {
                texts[uri] = original[uri];
                client.Replace(uri, ++versions[uri], texts[uri]);
            }
            else
            {
                var (from, to, inserted) = Splice(random, text);
                texts[uri] = text[..from] + inserted + text[to..];
                client.Edit(uri, ++versions[uri], At(text, from), At(text, to), inserted);
            }

            if (edit % 25 == 0)
            {
                compared += Compare(client, disk, texts, versions, $"seed {Seed}, edit {edit}");
            }
        }

        Assert.Equal(Edits / 25 * texts.Count, compared);
        Assert.Equal(0, client.End());
    }

    private static int Compare(Client client, IFileTree disk, SortedDictionary<string, string> texts, Dictionary<string, int> versions, string when)
    {
        // An edit that changes nothing gives every document a version whose diagnostics are awaited.
        foreach (var uri in texts.Keys)
        {
            client.Edit(uri, ++versions[uri], (0, 0), (0, 0), "");
        }

        var fresh = Fresh(disk, texts);
        foreach (var uri in texts.Keys)
        {
            var shown = client.Diagnostics(uri, versions[uri]).Select(d => d.ToJsonString()).Order(StringComparer.Ordinal);
            Assert.True(fresh[uri].SequenceEqual(shown), $"{when}: {uri} shows\n{string.Join('\n', shown)}\nfresh is\n{string.Join('\n', fresh[uri])}\n{texts[uri]}");
        }

        return texts.Count;
    }

    /// <summary>The whole way through with nothing kept.</summary>
    private static Dictionary<string, List<string>> Fresh(IFileTree disk, SortedDictionary<string, string> texts)
    {
        var documents = new DocumentStore(disk);
        foreach (var (uri, text) in texts)
        {
            documents.Add(uri, 0, text);
        }

        var judged = Judged.Of(
            documents.Files, [Shop.Root], new LoadOptions { Profiles = ProfileLibrary.AllNames }, new EngineOptions { Today = new DateOnly(2026, 3, 1), Rules = RuleList.All });
        return texts.Keys.ToDictionary(
            u => u,
            u => Diagnostics.Of(new View(u["file:///quillmere/".Length..], judged, documents)).Select(d => d!.ToJsonString()).Order(StringComparer.Ordinal).ToList(),
            StringComparer.Ordinal);
    }

    private static (int From, int To, string Inserted) Splice(Random random, string text)
    {
        var from = Whole(text, random.Next(text.Length + 1));
        var to = random.Next(3) == 0 ? Whole(text, Math.Min(text.Length, from + random.Next(12))) : from;
        var inserted = new StringBuilder();
        for (var i = random.Next(3); i > 0; i--)
        {
            inserted.Append(_bits[random.Next(_bits.Length)]);
        }

        return (from, Math.Max(from, to), inserted.ToString());
    }

    /// <summary>Editors do not cut a character or a line end in two.</summary>
    private static int Whole(string text, int at) =>
        at > 0 && at < text.Length && (char.IsLowSurrogate(text[at]) || (text[at - 1] == '\r' && text[at] == '\n')) ? at - 1 : at;

    private static (int Line, int Character) At(string text, int offset)
    {
        var lines = text[..offset].Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n').Split('\n');
        return (lines.Length - 1, lines[^1].Length);
    }
}
