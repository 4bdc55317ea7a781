using System.Text;
using System.Text.Json.Nodes;
using CsCheck;

namespace RecipeLint.Recipes.Tests.Patching;

/// <summary>A random JSON document in a random layout, together with what it says.</summary>
internal sealed record RandomDocument(JsonNode Content, string Text)
{
    private static readonly string[] Names = ["a", "note", "steps", "amount", "ü", "with space", "q\"uote"];

    private static readonly string[] Texts = ["", "24 g", "4..30 °C", "// no comment", "/* nor this */", "a, b", "}", "]", "tab\tline\n", "µ😀"];

    public static Gen<RandomDocument> Gen { get; } =
        from seed in CsCheck.Gen.Int
        from layout in Layout.Gen
        select Make(new Random(seed), layout);

    private static RandomDocument Make(Random random, Layout layout)
    {
        var content = Object(random, 3);
        var text = new StringBuilder(layout.Mark ? "\uFEFF" : "");
        Write(content, text, layout, random, 0);
        return new RandomDocument(content, text.Append(layout.Final).ToString());
    }

    public static JsonNode Value(Random random, int depth) => random.Next(depth <= 0 ? 3 : 5) switch
    {
        0 => JsonValue.Create(random.Next(-5, 2000)),
        1 => JsonValue.Create(random.Next(2) == 0),
        2 => JsonValue.Create(Texts[random.Next(Texts.Length)]),
        3 => Object(random, depth - 1),
        _ => new JsonArray([.. Enumerable.Range(0, random.Next(4)).Select(_ => Value(random, depth - 1))]),
    };

    private static JsonObject Object(Random random, int depth) =>
        new(Names.OrderBy(_ => random.Next()).Take(random.Next(5)).Select(n => KeyValuePair.Create(n, (JsonNode?)Value(random, depth))));

    private static void Write(JsonNode node, StringBuilder text, Layout layout, Random random, int level)
    {
        if (node is not (JsonObject or JsonArray))
        {
            text.Append(node.ToJsonString());
            return;
        }

        var isObject = node is JsonObject;
        var entries = node is JsonObject o ? o.Select(p => (Key: (string?)p.Key, Value: p.Value!)).ToList() : [.. ((JsonArray)node).Select(v => (Key: (string?)null, Value: v!))];
        var lines = layout.Lines && (level < 1 || random.Next(2) == 0);
        text.Append(isObject ? '{' : '[');
        for (var i = 0; i < entries.Count; i++)
        {
            Gap(lines, level + 1, i == 0 && isObject ? layout.Pad : i == 0 ? "" : layout.Blank);
            if (entries[i].Key is { } key)
            {
                text.Append(JsonValue.Create(key).ToJsonString()).Append(layout.BeforeColon).Append(':').Append(layout.Blank);
            }

            Write(entries[i].Value, text, layout, random, level + 1);
            Comment();
            if (i < entries.Count - 1 || (layout.Sloppy && random.Next(3) == 0))
            {
                text.Append(',');
                Comment();
            }
        }

        if (entries.Count > 0 || random.Next(3) == 0)
        {
            Gap(lines, level, isObject && entries.Count > 0 ? layout.Pad : "");
        }

        text.Append(isObject ? '}' : ']');

        void Gap(bool asLines, int depth, string otherwise)
        {
            text.Append(asLines ? layout.LineEnd : otherwise);
            if (asLines)
            {
                text.Insert(text.Length, layout.Indent, depth);
            }
        }

        void Comment()
        {
            if (layout.Sloppy && random.Next(6) == 0)
            {
                text.Append(random.Next(2) == 0 ? " /* , } ] */" : " // why, \"so\"" + layout.LineEnd);
            }
        }
    }

    /// <param name="Sloppy">With comments and commas too many.</param>
    private sealed record Layout(bool Lines, string LineEnd, string Indent, string Pad, string Blank, string BeforeColon, bool Mark, bool Sloppy, string Final)
    {
        public static Gen<Layout> Gen { get; } =
            from lines in CsCheck.Gen.Bool
            from end in CsCheck.Gen.OneOf("\n", "\r\n")
            from indent in CsCheck.Gen.OneOf("  ", "    ", "\t")
            from pad in CsCheck.Gen.OneOf("", " ")
            from blank in CsCheck.Gen.OneOf("", " ")
            from colon in CsCheck.Gen.OneOf("", "", "", " ")
            from mark in CsCheck.Gen.OneOf(false, false, true)
            from sloppy in CsCheck.Gen.OneOf(false, false, true)
            from final in CsCheck.Gen.OneOf("", "\n", "\r\n")
            select new Layout(lines, end, indent, pad, blank, colon, mark, sloppy, final);
    }
}
