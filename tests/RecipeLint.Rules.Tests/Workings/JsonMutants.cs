using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace RecipeLint.Rules.Tests.Workings;

/// <summary>
/// Files as slips of the hand leave them, whatever they hold: a member or a line gone, written twice or out of order, a number far off, a word
/// from another place. Each number gives one mutant, always the same.
/// </summary>
internal sealed class JsonMutants
{
    private static readonly double[] _factors = [0, 0.001, 0.1, 0.5, 2, 10, 1000];

    private readonly List<(string File, string Text)> _files;
    private readonly List<string> _words;

    internal JsonMutants(IEnumerable<(string File, string Text)> files)
    {
        _files = [.. files.Where(f => Parse(f.Text) is JsonObject)];
        _words = [.. _files.SelectMany(f => Nodes(Parse(f.Text)!)).OfType<JsonValue>().Where(v => v.GetValueKind() == JsonValueKind.String).Select(v => v.GetValue<string>()).Distinct()];
    }

    /// <summary>One of the files with one slip in it; null where the number fits nothing.</summary>
    internal (string File, byte[] Bytes, string Slip)? Of(int number)
    {
        if (_files.Count == 0)
        {
            return null;
        }

        var dice = new Dice(number);
        var (file, text) = _files[dice.Next(_files.Count)];
        var root = Parse(text)!;
        var nodes = Nodes(root).Where(n => n.Parent is not null).ToList();
        if (nodes.Count == 0)
        {
            return null;
        }

        var node = nodes[dice.Next(nodes.Count)];
        var path = node.GetPath();
        return Slip(node, dice) is { } slip ? (file, Encoding.UTF8.GetBytes(root.ToJsonString()), $"{file} {path}: {slip}") : null;
    }

    private string? Slip(JsonNode node, Dice dice) => (node, node.Parent) switch
    {
        (JsonValue value, _) when dice.Next(3) > 0 && value.GetValueKind() == JsonValueKind.String => Word(value, dice),
        (JsonValue value, _) when dice.Next(3) > 0 && value.GetValueKind() == JsonValueKind.Number && Math.Abs(value.GetValue<double>()) < 1e12 => Exchange(value, JsonValue.Create(value.GetValue<double>() * _factors[dice.Next(_factors.Length)])),
        (_, JsonArray list) => Line(node, list, dice),
        (_, JsonObject parent) => parent.Remove(node.GetPropertyName()) ? "left out" : null,
        _ => null,
    };

    private string Word(JsonValue value, Dice dice)
    {
        var text = value.GetValue<string>();
        var digits = text.TakeWhile(c => char.IsAsciiDigit(c) || c == '.').Count();
        return digits > 0 && dice.Next(3) > 0 && double.TryParse(text[..digits], System.Globalization.CultureInfo.InvariantCulture, out var number)
            ? Exchange(value, JsonValue.Create(Mutations.Operators.Slips.Number(number * _factors[dice.Next(_factors.Length)]) + text[digits..]))
            : Exchange(value, JsonValue.Create(_words[dice.Next(_words.Count)]));
    }

    private static string Exchange(JsonValue value, JsonValue other)
    {
        value.ReplaceWith(other);
        return $"{value.ToJsonString()} as {other.ToJsonString()}";
    }

    private static string Line(JsonNode node, JsonArray list, Dice dice)
    {
        var at = node.GetElementIndex();
        switch (dice.Next(4))
        {
            case 0:
                list.Insert(at, node.DeepClone());
                return "written twice";
            case 1 when list.Count > 1:
                list.RemoveAt(at);
                list.Insert(dice.Next(list.Count), node);
                return "moved";
            case 2 when list.Count > 1:
                list.RemoveAt(at);
                list.Insert(0, node);
                return "first";
            default:
                list.RemoveAt(at);
                return "left out";
        }
    }

    private static IEnumerable<JsonNode> Nodes(JsonNode node)
    {
        yield return node;
        var inner = node switch
        {
            JsonObject o => o.Select(m => m.Value),
            JsonArray a => a,
            _ => [],
        };
        foreach (var child in inner.OfType<JsonNode>().SelectMany(Nodes))
        {
            yield return child;
        }
    }

    private static JsonNode? Parse(string text)
    {
        try
        {
            // A key that is there twice only shows when the members are read.
            var root = JsonNode.Parse(text);
            return root is not null && Nodes(root).ToList().Count > 0 ? root : null;
        }
        catch (JsonException)
        {
            return null;
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    /// <summary>The same throws for the same number on every machine (SplitMix64, Steele, Lea and Flood 2014, recalled).</summary>
    private sealed class Dice(int seed)
    {
        private ulong _state = unchecked((ulong)seed * 0x9E3779B97F4A7C15UL);

        internal int Next(int count)
        {
            var z = _state = unchecked(_state + 0x9E3779B97F4A7C15UL);
            z = unchecked((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL);
            z = unchecked((z ^ (z >> 27)) * 0x94D049BB133111EBUL);
            return (int)((z ^ (z >> 31)) % (ulong)count);
        }
    }
}
