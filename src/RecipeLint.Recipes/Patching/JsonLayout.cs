using RecipeLint.Recipes.Json;

namespace RecipeLint.Recipes.Patching;

/// <summary>How a file is laid out around a place: line ends, indentation, blanks inside brackets and after colons and commas.</summary>
/// <param name="LineEnd">"\r\n" or "\n".</param>
/// <param name="Indent">One level.</param>
/// <param name="Pad">Inside the braces of an object on one line.</param>
/// <param name="Colon">With the blank behind it, if the file has one.</param>
/// <param name="Comma">Between members on one line.</param>
internal sealed record JsonLayout(string LineEnd, string Indent, string Pad, string Colon, string Comma)
{
    /// <summary>The layout of a file, with the one-line style of the objects nearest to an item.</summary>
    public static JsonLayout Of(SourceFile source, JsonItem near)
    {
        var bytes = source.Bytes;
        var root = source.Tree!.Root;
        var sample = OneLiner(source, near) ?? OneLiner(source, root);
        var pair = Pairs(near).Concat(Pairs(root)).FirstOrDefault();
        return new JsonLayout(
            bytes.IndexOf("\r\n"u8) >= 0 ? "\r\n" : "\n",
            IndentOf(source, root),
            sample is null ? " " : BlanksAfter(bytes, sample.Span.Start + 1),
            pair is null ? ": " : ":" + BlanksAfter(bytes, ColonOf(bytes, pair) + 1),
            "," + (CommaGap(source, sample) ?? (Compact(source) ? "" : " ")));
    }

    /// <summary>Where the run of blanks and line ends before an offset begins.</summary>
    public static int GapStart(ReadOnlySpan<byte> bytes, int offset)
    {
        while (offset > 0 && bytes[offset - 1] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
        {
            offset--;
        }

        return offset;
    }

    /// <summary>
    /// The line end and indentation in front of an offset that begins a line; null when something else stands before it on the line.
    /// </summary>
    public string? LineStart(ReadOnlySpan<byte> bytes, int offset)
    {
        var start = offset;
        while (start > 0 && bytes[start - 1] is (byte)' ' or (byte)'\t')
        {
            start--;
        }

        return start > 0 && bytes[start - 1] is (byte)'\n' or (byte)'\r'
            ? LineEnd + System.Text.Encoding.UTF8.GetString(bytes[start..offset])
            : null;
    }

    /// <summary>The indentation of the line an offset stands on.</summary>
    public static string IndentationAt(ReadOnlySpan<byte> bytes, int offset)
    {
        var line = bytes[..offset].LastIndexOfAny((byte)'\n', (byte)'\r') + 1;
        var end = line;
        while (end < bytes.Length && bytes[end] is (byte)' ' or (byte)'\t')
        {
            end++;
        }

        return System.Text.Encoding.UTF8.GetString(bytes[line..end]);
    }

    public static bool SpansLines(SourceFile source, JsonItem item) =>
        source.Bytes.Slice(item.Span.Start, item.Span.Length).IndexOfAny((byte)'\n', (byte)'\r') >= 0;

    private static bool Compact(SourceFile source) => source.Tree!.Root is { Kind: JsonKind.Object, Members.Count: > 0 } root
        && !SpansLines(source, root) && BlanksAfter(source.Bytes, root.Span.Start + 1).Length == 0;

    private static string IndentOf(SourceFile source, JsonItem root)
    {
        var first = root.Members
            .Select(m => m.Value.KeySpan?.Start)
            .Concat(root.Items.Select(i => (int?)i.Span.Start))
            .OfType<int>()
            .Order()
            .FirstOrDefault(-1);
        if (first < 0 || !SpansLines(source, root))
        {
            return "  ";
        }

        var outer = IndentationAt(source.Bytes, root.Span.Start);
        var inner = IndentationAt(source.Bytes, first);
        return inner.Length > outer.Length && inner.StartsWith(outer, StringComparison.Ordinal) ? inner[outer.Length..] : "  ";
    }

    /// <summary>An object with members on one line: the item, one of its children, or deeper.</summary>
    private static JsonItem? OneLiner(SourceFile source, JsonItem item)
    {
        if (item is { Kind: JsonKind.Object, Members.Count: > 0 } && !SpansLines(source, item))
        {
            return item;
        }

        return item.Members.Select(m => m.Value).Concat(item.Items).Select(i => OneLiner(source, i)).FirstOrDefault(i => i is not null);
    }

    private static IEnumerable<JsonItem> Pairs(JsonItem item) =>
        item.Members.Select(m => m.Value).Where(v => v.KeySpan is not null)
            .Concat(item.Members.Select(m => m.Value).Concat(item.Items).SelectMany(Pairs));

    private static int ColonOf(ReadOnlySpan<byte> bytes, JsonItem value)
    {
        var from = value.KeySpan!.Value.End;
        var colon = bytes[from..value.Span.Start].IndexOf((byte)':');
        return from + Math.Max(0, colon);
    }

    private static string? CommaGap(SourceFile source, JsonItem? sample)
    {
        var members = (sample?.Members ?? []).Select(m => m.Value).OrderBy(v => v.Span.Start).ToList();
        if (members.Count < 2)
        {
            return null;
        }

        var gap = source.Bytes[members[0].Span.End..members[1].KeySpan!.Value.Start];
        var comma = gap.IndexOf((byte)',');
        return comma < 0 ? null : BlanksAfter(gap, comma + 1);
    }

    private static string BlanksAfter(ReadOnlySpan<byte> bytes, int offset)
    {
        var end = offset;
        while (end < bytes.Length && bytes[end] is (byte)' ' or (byte)'\t')
        {
            end++;
        }

        return end < bytes.Length && bytes[end] is (byte)'\r' or (byte)'\n' ? " " : System.Text.Encoding.UTF8.GetString(bytes[offset..end]);
    }
}
