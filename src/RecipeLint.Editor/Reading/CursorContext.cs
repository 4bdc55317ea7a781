namespace RecipeLint.Editor.Reading;

/// <summary>
/// Where a cursor stands in a text that need not be whole: the way to the object or list around it, whether a key or a value is due, and
/// what
/// of it is written. Only what stands before the cursor is looked at, and nothing that is wrong there stops it.
/// </summary>
/// <param name="Tokens">The way to the key that a value is due for, or to the object that a key is due in.</param>
/// <param name="IsKey">A key is due.</param>
/// <param name="Start">Index in the text from which on the written part is replaced, its quote included.</param>
/// <param name="Written">What is written between the quote and the cursor.</param>
/// <param name="IsQuoted">A quote stands open before the cursor.</param>
/// <param name="Present">Keys of the object around it that stand before the cursor.</param>
internal sealed record CursorContext(IReadOnlyList<string> Tokens, bool IsKey, int Start, string Written, bool IsQuoted,
    IReadOnlyList<string> Present)
{
    /// <summary>Null inside a list, where an object is due.</summary>
    public static CursorContext? At(string text, int cursor)
    {
        var frames = new Stack<Frame>();
        var quote = -1;
        for (var i = 0; i < cursor; i++)
        {
            var c = text[i];
            if (quote >= 0)
            {
                if (c == '\\')
                {
                    i++;
                }
                else if (c is '"' or '\n')
                {
                    if (frames.TryPeek(out var holder) && c == '"')
                    {
                        holder.Take(text[(quote + 1)..i]);
                    }

                    quote = -1;
                }

                continue;
            }

            switch (c)
            {
                case '"':
                    quote = i;
                    break;
                case '{' or '[':
                    frames.Push(new Frame(c == '{'));
                    break;
                case '}' or ']':
                    frames.TryPop(out _);
                    break;
                case ':' when frames.TryPeek(out var frame):
                    frame.IsValue = true;
                    break;
                case ',' when frames.TryPeek(out var frame):
                    frame.Next();
                    break;
            }
        }

        return frames.Count == 0 || !frames.Peek().IsObject ? null : Of(frames, text, quote, cursor);
    }

    private static CursorContext Of(Stack<Frame> frames, string text, int quote, int cursor)
    {
        var inner = frames.Peek();
        var start = quote >= 0 ? quote : cursor;
        while (quote < 0 && start > 0 && (char.IsLetterOrDigit(text[start - 1]) || text[start - 1] is '-' or '_' or '.'))
        {
            start--;
        }

        var outer = frames.Skip(1).Reverse().Select(f => f.Token);
        var written = quote >= 0 ? text[(quote + 1)..cursor] : text[start..cursor];
        IReadOnlyList<string> tokens = inner.IsValue ? [.. outer, inner.Key] : [.. outer];
        return new CursorContext(tokens, !inner.IsValue, start, written, quote >= 0, inner.Keys);
    }

    private sealed class Frame(bool isObject)
    {
        private int _index;

        public bool IsObject { get; } = isObject;

        public bool IsValue { get; set; }

        public string Key { get; private set; } = "";

        public List<string> Keys { get; } = [];

        public string Token => IsObject ? Key : _index.ToString(System.Globalization.CultureInfo.InvariantCulture);

        public void Take(string text)
        {
            if (IsObject && !IsValue)
            {
                Key = text;
                Keys.Add(text);
            }
        }

        public void Next()
        {
            _index++;
            IsValue = false;
        }
    }
}
