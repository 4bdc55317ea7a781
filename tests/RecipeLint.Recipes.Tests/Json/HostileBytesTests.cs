using System.Diagnostics;
using System.Text;
using CsCheck;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Json;

/// <summary>No bytes make reading or the check of shape throw, hang, or point outside the file.</summary>
public sealed class HostileBytesTests
{
    private static readonly byte[][] _documents =
    [
        .. new[] { "stock", "recipe", "water", "substances", "recipelint" }
            .Select(n => File.ReadAllText(Repository.PathOf("schema", n + ".schema.json")))
            .Select(text => System.Text.Json.JsonDocument.Parse(text).RootElement.GetProperty("examples")[0].GetRawText())
            .Select(Encoding.UTF8.GetBytes),
    ];

    private static readonly byte[][] _splinters =
    [
        .. new[]
        {
            "{", "}", "[", "]", ",", ":", "\"", "\\", "\\u", "\\ud800", "//", "/*", "*/", "\n", "\r", "null", "1e999999999", "-", "0", ".", "e",
            "\"steps\":", "\"add\":", "\"pour\":", "\"amount\":", "\"note\":{}", "é", "🌱", "\u2028", "1.0000000000000000000000000000000001e40",
        }.Select(Encoding.UTF8.GetBytes),
        [0], [0xFF], [0xC3], [0xED, 0xA0, 0x80], [0xEF, 0xBB, 0xBF],
    ];

    private static void ReadAndCheck(byte[] bytes)
    {
        var result = JsonReading.Read("a.stock.json", bytes);
        Assert.True(result.Source.Tree is not null || result.Problems.Count > 0);
        Places.AssertAllInside(result);
        foreach (var kind in Enum.GetValues<DocumentKind>())
        {
            Places.AssertAllInside(result.Source, SchemaCheck.Check(kind, result.Source));
        }
    }

    /// <summary>System.Text.Json without options is the judge of what is JSON; duplicates and half pairs pass there.</summary>
    [Fact]
    public void WhatIsReadWithoutAWordIsJsonAndJsonIsRead()
    {
        string[] tokens = ["{", "}", "[", "]", ",", ":", "\"a\"", "\"b\"", "1", "-0.5e3", "true", " ", "/**/", "//\n", "\n"];
        Gen.Int[0, tokens.Length - 1].Array[1, 9].Sample(
            picks =>
            {
                var bytes = Encoding.UTF8.GetBytes(string.Concat(picks.Select(p => tokens[p])));
                var result = JsonReading.Read("a", bytes);
                var isJson = IsJson(bytes, default);
                Assert.Equal(isJson, result.Source.Tree is not null && result.Problems.All(p => p.Kind == ProblemKind.DuplicateKey));
                if (result.Source.Tree is not null && !isJson)
                {
                    Assert.True(IsJson(bytes, new() { CommentHandling = System.Text.Json.JsonCommentHandling.Skip, AllowTrailingCommas = true }));
                }
            },
            iter: 100_000);
    }

    private static bool IsJson(byte[] bytes, System.Text.Json.JsonDocumentOptions options)
    {
        try
        {
            using var document = System.Text.Json.JsonDocument.Parse(bytes, options);
            return true;
        }
        catch (System.Text.Json.JsonException)
        {
            return false;
        }
    }

    [Fact]
    public void RandomBytesNeverThrow() => Gen.Byte.Array[0, 60].Sample(ReadAndCheck, iter: 20_000);

    [Fact]
    public void RandomSplintersOfJsonNeverThrow() =>
        Gen.Int[0, _splinters.Length - 1].Array[1, 25].Sample(picks => ReadAndCheck([.. picks.SelectMany(p => _splinters[p])]), iter: 10_000);

    [Fact]
    public void MutatedDocumentsNeverThrow()
    {
        var mutation = Gen.Select(Gen.Int[0, 2], Gen.Int[0, 100_000], Gen.Int[0, _splinters.Length - 1], Gen.Int[1, 12]);
        Gen.Select(Gen.Int[0, _documents.Length - 1], mutation.Array[1, 4]).Sample(
            (document, mutations) =>
            {
                var bytes = _documents[document].ToList();
                foreach (var (what, where, splinter, length) in mutations)
                {
                    var at = where % (bytes.Count + 1);
                    if (what > 0)
                    {
                        bytes.RemoveRange(at, Math.Min(length, bytes.Count - at));
                    }

                    if (what < 2)
                    {
                        bytes.InsertRange(at, _splinters[splinter]);
                    }
                }

                ReadAndCheck([.. bytes]);
            },
            iter: 20_000);
    }

    [Fact]
    public void ValuesOfAnyKindInAnyPlaceOfADocumentNeverThrow()
    {
        string[] values = ["null", "true", "-0", "1e999", "\"\"", "\"\\ud800\"", "[]", "{}", "[[{}]]", "{\"note\": {\"note\": 1}}", "{\"add\": {\"add\": []}}"];
        foreach (var document in _documents)
        {
            var source = JsonReading.Read("a", document).Source;
            var items = new Stack<JsonItem>([source.Tree!.Root]);
            while (items.TryPop(out var item))
            {
                item.Members.Select(m => m.Value).Concat(item.Items).ToList().ForEach(items.Push);
                foreach (var value in values)
                {
                    ReadAndCheck([.. document[..item.Span.Start], .. Encoding.UTF8.GetBytes(value), .. document[item.Span.End..]]);
                }
            }
        }
    }

    public static TheoryData<string> Floods() => ["list", "object", "duplicates", "unknown", "comments", "commas", "surrogates", "steps", "long key", "deep keys", "numbers", "rules", "entries"];

    /// <summary>
    /// Files of the full megabyte. quadratic work on them would take minutes.
    /// </summary>
    [Theory]
    [MemberData(nameof(Floods))]
    public void AMegabyteOfOneThingIsReadInLinearTime(string flood)
    {
        var bytes = Encoding.UTF8.GetBytes(flood switch
        {
            "list" => "[" + Repeat("0,", 490_000) + "0]",
            "object" => "{" + string.Join(",", Enumerable.Range(0, 70_000).Select(i => $"\"k{i}\": 0")) + "}",
            "duplicates" => "{" + Repeat("\"a\":0,", 150_000) + "\"a\":0}",
            "unknown" => "{\"format\":1,\"steps\":[" + Repeat("{\"ad\":1},", 90_000) + "1]}",
            "comments" => Repeat("/**/", 240_000) + "{}",
            "commas" => "[" + Repeat("[0,],", 190_000) + "0]",
            "surrogates" => "[\"" + Repeat("\\ud800", 160_000) + "\"]",
            "steps" => "{\"format\":1,\"makes\":\"1 L\",\"steps\":[" + Repeat("{},", 300_000) + "1]}",
            "long key" => "{\"" + new string('k', 500_000) + "\":[" + Repeat("0,", 200_000) + "0]}",
            "deep keys" => Repeat("{\"" + new string('k', 200) + "\":", 60) + "[" + Repeat("0,", 400_000) + "0]" + Repeat("}", 60),
            "numbers" => "{\"format\":1,\"steps\":{" + string.Join(",", Enumerable.Range(0, 40_000).Select(i => $"\"k{i}\": 1e999999999")) + "}}",
            "rules" => "{\"rules\":{" + string.Join(",", Enumerable.Range(0, 40_000).Select(i => $"\"k{i}\": {{\"level\": 1}}")) + "}}",
            _ => "{\"substances\":[" + Repeat("{\"label\":{" + string.Join(",", Enumerable.Range(0, 90).Select(i => $"\"k{i}\":0")) + "}},", 999) + "0]}",
        });
        Assert.InRange(bytes.Length, 400_000, JsonReading.DefaultSizeLimit);
        var watch = Stopwatch.StartNew();
        var result = JsonReading.Read("a", bytes);
        var kind = flood switch { "rules" => DocumentKind.Settings, "entries" => DocumentKind.Substances, _ => DocumentKind.Stock };
        var shape = SchemaCheck.Check(kind, result.Source);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(20), $"{flood} took {watch.Elapsed}.");
        Assert.InRange(result.Problems.Count + shape.Count, 1, 5 * (ProblemsPerKind + 1));
        Places.AssertAllInside(result);
        Places.AssertAllInside(result.Source, shape);
    }

    [Fact]
    public void AKindThatFloodsIsCountedInsteadOfListed()
    {
        var result = JsonReading.Read("a", Encoding.UTF8.GetBytes("{" + Repeat("\"a\":0,", 250) + "\"a\":0}"));
        Assert.Equal(ProblemsPerKind + 1, result.Problems.Count);
        Assert.Contains("150 more", result.Problems[^1].Message, StringComparison.Ordinal);
        Assert.Equal(ProblemKind.DuplicateKey, result.Problems[^1].Kind);
    }

    private const int ProblemsPerKind = 100;

    private static string Repeat(string text, int count) => string.Concat(Enumerable.Repeat(text, count));
}
