using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Patching;

/// <summary>Over random documents in random layouts: a patch says what it should, and touches nothing else.</summary>
public class PatcherPropertyTests
{
    private const string File = "a.stock.json";

    private static readonly Gen<(RandomDocument Document, int Seed)> Cases = Gen.Select(RandomDocument.Gen, Gen.Int);

    [Fact]
    public void PatchThenParseGivesTheExpectedTree() => Cases.Sample(
        c =>
        {
            var (edit, expected) = RandomEdit(c.Document.Content, new Random(c.Seed));
            var result = Patch(c.Document.Text, edit);
            Assert.Null(result.Refused);
            Assert.Equal(Canonical(expected), Canonical(Read(result.Bytes!).Tree!.Root));
        },
        iter: 20_000);

    [Fact]
    public void EveryByteOutsideTheEditsStaysAndTheReverseGivesTheOriginal() => Cases.Sample(
        c =>
        {
            var (edit, _) = RandomEdit(c.Document.Content, new Random(c.Seed));
            var before = Encoding.UTF8.GetBytes(c.Document.Text);
            var source = Read(before);
            var result = JsonPatcher.Apply(source, [edit]);
            var after = Read(result.Bytes!);
            Assert.Equal(source.HadByteOrderMark, after.HadByteOrderMark);
            Assert.Equal(source.Bytes.ToArray(), JsonPatcher.Join(after.Bytes, result.Reversed()));

            var (old, now) = (0, 0);
            foreach (var text in result.Edits)
            {
                var length = text.Span.Start - old;
                Assert.Equal(source.Bytes.Slice(old, length).ToArray(), after.Bytes.Slice(now, length).ToArray());
                (old, now) = (text.Span.End, now + length + Encoding.UTF8.GetByteCount(text.Text));
            }

            Assert.Equal(source.Bytes[old..].ToArray(), after.Bytes[now..].ToArray());
        },
        iter: 20_000);

    [Fact]
    public void TwoChangesAtOnceGiveBothOrAreRefused() => Gen.Select(RandomDocument.Gen, Gen.Int, Gen.Int).Sample(
        (document, first, second) =>
        {
            var (one, _) = RandomEdit(document.Content, new Random(first));
            var (two, _) = RandomEdit(document.Content, new Random(second));
            var both = JsonPatcher.Apply(Read(Encoding.UTF8.GetBytes(document.Text)), [one, two]);
            Assert.True(both.Refused is not null || Read(both.Bytes!).Tree is not null);
            if (both.Refused is null)
            {
                var ends = both.Edits.Select(e => e.Span.End).ToList();
                Assert.All(both.Edits.Skip(1).Select((e, i) => (e.Span.Start, ends[i])), p => Assert.True(p.Start >= p.Item2));
            }
        },
        iter: 10_000);

    [Fact]
    public void ARemovedInsertionGivesTheOriginalBytes() => Cases.Sample(
        c =>
        {
            // Into a list or object that holds something: what was empty may have held blanks, which are not kept.
            var random = new Random(c.Seed);
            var full = Pointers(c.Document.Content).Where(p => p.Node is JsonObject { Count: > 0 } or JsonArray { Count: > 0 }).ToList();
            if (full.Count == 0 || c.Document.Text.Contains("//", StringComparison.Ordinal) || c.Document.Text.Contains("/*", StringComparison.Ordinal))
            {
                return;
            }

            var (pointer, node) = full[random.Next(full.Count)];
            var place = new Place(File, pointer);
            JsonEdit insert = node is JsonArray array ? new JsonEdit.InsertElement(place, array.Count, JsonDraft.Of("x")) : new JsonEdit.InsertMember(place, "new", JsonDraft.Of("x"));
            var patched = Patch(c.Document.Text, insert);
            var added = node is JsonArray list ? pointer.Child(list.Count) : pointer.Child("new");
            var back = JsonPatcher.Apply(Read(patched.Bytes!), [new JsonEdit.Remove(new Place(File, added))]);
            if (!HasCommaTooMany(c.Document.Text))
            {
                Assert.Equal(c.Document.Text, Encoding.UTF8.GetString(back.Bytes!));
            }
        },
        iter: 10_000);

    private static bool HasCommaTooMany(string text) => JsonReading.Read(File, Encoding.UTF8.GetBytes(text)).Problems.Any(p => p.Kind == ProblemKind.MalformedFile);

    private static PatchResult Patch(string text, JsonEdit edit) => JsonPatcher.Apply(Read(Encoding.UTF8.GetBytes(text)), [edit]);

    private static SourceFile Read(byte[] bytes) => JsonReading.Read(File, bytes).Source;

    /// <summary>A change somewhere in a document, with what the document says afterwards.</summary>
    private static (JsonEdit Edit, JsonNode Expected) RandomEdit(JsonNode content, Random random)
    {
        var copy = content.DeepClone();
        var all = Pointers(copy).ToList();
        for (; ; )
        {
            var (pointer, node) = all[random.Next(all.Count)];
            var place = new Place(File, pointer);
            var draft = RandomDocument.Value(random, 2);
            switch (random.Next(7))
            {
                case 0 when node.Parent is not null:
                    node.ReplaceWith(draft);
                    return (new JsonEdit.ReplaceValue(place, Draft(draft)), copy);
                case 1 when node.Parent is JsonObject parent:
                    var entries = parent.ToList();
                    parent.Clear();
                    foreach (var (name, value) in entries)
                    {
                        parent.Add(ReferenceEquals(value, node) ? "renamed" : name, value);
                    }

                    return (new JsonEdit.RenameKey(place, "renamed"), copy);
                case 2 when node is JsonObject item:
                    var at = random.Next(item.Count + 1);
                    var after = at == 0 ? "" : at == item.Count && random.Next(2) == 0 ? null : item.ElementAt(at - 1).Key;
                    item.Insert(at, "new \\", draft);
                    return (new JsonEdit.InsertMember(place, "new \\", Draft(draft), after), copy);
                case 3 when node is JsonArray list:
                    var index = random.Next(list.Count + 1);
                    list.Insert(index, draft);
                    return (new JsonEdit.InsertElement(place, index, Draft(draft)), copy);
                case 4 when node.Parent is JsonObject parent:
                    parent.Remove(node.GetPropertyName());
                    return (new JsonEdit.Remove(place), copy);
                case 5 when node.Parent is JsonArray parent:
                    parent.Remove(node);
                    return (new JsonEdit.Remove(place), copy);
                case 6 when node is JsonArray { Count: > 1 } list:
                    var (from, to) = (random.Next(list.Count), random.Next(list.Count));
                    var count = list.Count;
                    var moved = list[from];
                    list.RemoveAt(from);
                    list.Insert(to, moved);
                    return (JsonEdit.Move(place, from, to, count), copy);
                case 0 or 2:
                    // Every document has a root object to insert into.
                    ((JsonObject)copy).Add("new", draft);
                    return (new JsonEdit.InsertMember(new Place(File, JsonPointer.Root), "new", Draft(draft)), copy);
            }
        }
    }

    private static IEnumerable<(JsonPointer Pointer, JsonNode Node)> Pointers(JsonNode node, JsonPointer? at = null)
    {
        var pointer = at ?? JsonPointer.Root;
        yield return (pointer, node);
        var children = node switch
        {
            JsonObject item => item.Select(p => (pointer.Child(p.Key), p.Value!)),
            JsonArray list => list.Select((v, i) => (pointer.Child(i), v!)),
            _ => [],
        };
        foreach (var found in children.SelectMany(c => Pointers(c.Item2, c.Item1)))
        {
            yield return found;
        }
    }

    private static JsonDraft Draft(JsonNode node) => node switch
    {
        JsonObject item => new JsonDraft.Object([.. item.Select(p => new DraftMember(p.Key, Draft(p.Value!)))]),
        JsonArray list => new JsonDraft.List([.. list.Select(v => Draft(v!))]),
        _ => node.GetValueKind() == System.Text.Json.JsonValueKind.String ? JsonDraft.Of(node.GetValue<string>()) : new JsonDraft.Literal(node.ToJsonString()),
    };

    private static string Canonical(JsonNode node) => node switch
    {
        JsonObject item => $"{{{string.Join(',', item.Select(p => JsonValue.Create(p.Key).ToJsonString() + ":" + Canonical(p.Value!)))}}}",
        JsonArray list => $"[{string.Join(',', list.Select(v => Canonical(v!)))}]",
        _ => node.ToJsonString(),
    };

    private static string Canonical(JsonItem item) => item.Kind switch
    {
        JsonKind.Object => $"{{{string.Join(',', item.Members.OrderBy(m => m.Value.Span.Start).Select(m => JsonValue.Create(m.Name).ToJsonString() + ":" + Canonical(m.Value)))}}}",
        JsonKind.Array => $"[{string.Join(',', item.Items.Select(Canonical))}]",
        JsonKind.Text => JsonValue.Create(item.Text).ToJsonString(),
        JsonKind.Number => item.Text,
        JsonKind.True => "true",
        JsonKind.False => "false",
        _ => "null",
    };
}
