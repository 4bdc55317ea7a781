using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Json;

/// <summary>
/// One pass of a <see cref="Utf8JsonReader"/> over valid UTF-8: tree, spans, and the problems that do not stop the reading
/// (duplicate keys, comments, trailing commas, halves of surrogate pairs).
/// </summary>
internal sealed class JsonTreeBuilder(string path, byte[] bytes, ProblemList problems)
{
    private const int NameSetThreshold = 8;

    private readonly SourceFile _lines = new(path, bytes);
    private readonly Stack<OpenContainer> _open = new();
    private readonly List<int> _loneSurrogates = [];
    private JsonItem? _root;
    private readonly DecodableCopy _decodable = new(bytes);
    private readonly List<JsonItem> _beyondNumbers = [];

    // Where the last token ended and whether a comma (and where) came after the last one that was not a comment.
    private int _lastEnd;
    private int _comma = -1;
    private JsonTokenType _lastToken = JsonTokenType.None;
    private ByteSpan _lastSpan;

    /// <summary>See <see cref="SourceFile.DecodableBytes"/>.</summary>
    public ReadOnlyMemory<byte> DecodableBytes => _decodable.Bytes;

    /// <summary>See <see cref="SourceFile.BeyondNumbers"/>.</summary>
    public IReadOnlyList<JsonItem> BeyondNumbers => _beyondNumbers;

    /// <summary>Null when the bytes are not JSON; the problem list then says why.</summary>
    public JsonTree? Build()
    {
        var options = new JsonReaderOptions
        {
            CommentHandling = JsonCommentHandling.Allow,
            AllowTrailingCommas = true,
            MaxDepth = JsonReading.DepthLimit,
        };
        var reader = new Utf8JsonReader(bytes, options);
        try
        {
            while (reader.Read())
            {
                if (!Take(ref reader))
                {
                    return null;
                }
            }
        }
        catch (JsonException)
        {
            // Its text and position speak of tokens and bytes; the cause is found again from the last good token.
            AddMalformed();
            return null;
        }

        if (_root is null)
        {
            AddMalformed();
            return null;
        }

        return new JsonTree(_root);
    }

    private void AddMalformed()
    {
        var state = new MalformedState(_lastEnd, _lastToken, _lastSpan, _comma >= 0, [.. _open.Select(c => c.Item)]);
        var (span, message, opened) = new MalformedJson(_lines, state).Explain();
        problems.Add(new Problem(ProblemKind.MalformedFile, At(span), message)
        {
            Related = opened is { } start ? [new RelatedPlace(At(new ByteSpan(start, 1)), "opened here")] : [],
        });
    }

    /// <summary>False when reading cannot go on; the problem list then says why.</summary>
    private bool Take(ref Utf8JsonReader reader)
    {
        var start = (int)reader.TokenStartIndex;
        var end = (int)reader.BytesConsumed;
        var gap = bytes.AsSpan(_lastEnd, Math.Max(0, start - _lastEnd));
        var comma = gap.IndexOf((byte)',');
        var commas = gap.Count((byte)',') + (_comma >= 0 ? 1 : 0);
        var isComment = reader.TokenType == JsonTokenType.Comment;
        if (commas > 1 || (!isComment && !Fits(reader.TokenType, commas == 1)))
        {
            AddMalformed();
            return false;
        }

        _lastEnd = end;
        _comma = comma >= 0 ? start - gap.Length + comma : _comma;
        if (isComment)
        {
            AddComment(ref reader, start, end);
            return true;
        }

        if (!TakeToken(ref reader, start, end))
        {
            return false;
        }

        _comma = -1;
        _lastToken = reader.TokenType;
        _lastSpan = reader.TokenType == JsonTokenType.PropertyName ? _open.Peek().NameSpan : new ByteSpan(start, end - start);
        return true;
    }

    /// <summary>Puts a token that may stand where it does into the tree.</summary>
    /// <returns>False when nothing after it can be read.</returns>
    private bool TakeToken(ref Utf8JsonReader reader, int start, int end)
    {
        var span = new ByteSpan(start, end - start);
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                Open(JsonKind.Object, span);
                break;
            case JsonTokenType.StartArray:
                Open(JsonKind.Array, span);
                break;
            case JsonTokenType.EndObject:
            case JsonTokenType.EndArray:
                Close(end);
                break;
            case JsonTokenType.PropertyName:
                return TakeName(ref reader, start);
            case JsonTokenType.String:
                Attach(JsonKind.Text, span, TextOf(ref reader, start));
                break;
            case JsonTokenType.Number:
                TakeNumber(span, Encoding.UTF8.GetString(reader.ValueSpan));
                break;
            case JsonTokenType.True:
                Attach(JsonKind.True, span, "");
                break;
            case JsonTokenType.False:
                Attach(JsonKind.False, span, "");
                break;
            default:
                Attach(JsonKind.Null, span, "");
                break;
        }

        return true;
    }

    /// <summary>
    /// Whether a token may stand where it does (RFC 8259). After a comment the reader forgets to ask: it lets a missing comma, a
    /// missing value and the wrong bracket pass.
    /// </summary>
    private bool Fits(JsonTokenType token, bool comma)
    {
        var isEnd = token is JsonTokenType.EndObject or JsonTokenType.EndArray;
        if (_open.Count == 0)
        {
            return _root is null && !isEnd && token != JsonTokenType.PropertyName && !comma;
        }

        var isObject = _open.Peek().Item.Kind == JsonKind.Object;
        if (isEnd && isObject != (token == JsonTokenType.EndObject))
        {
            return false;
        }

        return _lastToken switch
        {
            JsonTokenType.PropertyName => !comma && !isEnd && token != JsonTokenType.PropertyName,
            JsonTokenType.StartObject or JsonTokenType.StartArray => !comma && (isEnd || isObject == (token == JsonTokenType.PropertyName)),
            _ => isEnd || (comma && isObject == (token == JsonTokenType.PropertyName)),
        };
    }

    private void Open(JsonKind kind, ByteSpan span) => _open.Push(new OpenContainer(Attach(kind, span, "")));

    private void Close(int end)
    {
        var container = _open.Pop();
        if (_comma >= 0)
        {
            _decodable.Blank(new ByteSpan(_comma, 1));
            var closer = container.Item.Kind == JsonKind.Object ? "}" : "]";
            problems.Add(new Problem(
                ProblemKind.MalformedFile,
                At(new ByteSpan(_comma, 1)),
                $"A comma stands before '{closer}' with nothing after it. JSON allows commas only between two entries: remove it."));
        }

        container.Item.Close(end, container.Members, container.Items);
    }

    private bool TakeName(ref Utf8JsonReader reader, int start)
    {
        // The colon is already consumed: the name ends with its own quote.
        var span = new ByteSpan(start, reader.ValueSpan.Length + 2);
        var name = TextOf(ref reader, start);
        if (name.Length > JsonReading.KeyLengthLimit)
        {
            var length = name.Length.ToString(CultureInfo.InvariantCulture);
            var limit = JsonReading.KeyLengthLimit.ToString(CultureInfo.InvariantCulture);
            problems.Add(new Problem(
                ProblemKind.WrongShape,
                At(span),
                $"This key is {length} characters long; keys have at most {limit}. Reading stopped here."));
            return false;
        }

        _open.Peek().Name = name;
        _open.Peek().NameSpan = span;
        return true;
    }

    private void TakeNumber(ByteSpan span, string literal)
    {
        var item = Attach(JsonKind.Number, span, literal);
        if (!_decodable.TameNumber(span.Start, literal))
        {
            _beyondNumbers.Add(item);
        }
    }

    private JsonItem Attach(JsonKind kind, ByteSpan span, string text)
    {
        if (_open.Count == 0)
        {
            return _root = new JsonItem(kind, null, null, 0, span) { Text = text };
        }

        var parent = _open.Peek();
        if (parent.Item.Kind == JsonKind.Array)
        {
            var element = new JsonItem(kind, parent.Item, null, parent.Items.Count, span) { Text = text };
            parent.Items.Add(element);
            return element;
        }

        var name = parent.Name;
        var item = new JsonItem(kind, parent.Item, name, 0, span) { Text = text, KeySpan = parent.NameSpan };
        var earlier = parent.IndexOf(name);
        if (earlier < 0)
        {
            parent.Add(new JsonMember(name, item));
        }
        else
        {
            AddDuplicate(name, item, parent.Members[earlier].Value, parent.FirstSpanOf(name));
            parent.Members[earlier] = new JsonMember(name, item);
        }

        return item;
    }

    private void AddDuplicate(string name, JsonItem item, JsonItem previous, ByteSpan? first)
    {
        if (problems.IsFull(ProblemKind.DuplicateKey))
        {
            problems.Skip(ProblemKind.DuplicateKey, () => KeyPlace(item, item.KeySpan));
            return;
        }

        problems.Add(new Problem(
            ProblemKind.DuplicateKey,
            KeyPlace(item, item.KeySpan),
            $"The key \"{Wording.Shorten(name)}\" stands twice in one object, and only the last one would count. Keep one of them.")
        {
            Related = [new RelatedPlace(KeyPlace(item, first ?? previous.KeySpan), "first written here")],
        });
    }

    private Place KeyPlace(JsonItem item, ByteSpan? span) => new(path, item.Pointer, PlacePart.Key, span);

    private void AddComment(ref Utf8JsonReader reader, int start, int end)
    {
        var length = end - start;
        while (length > 0 && bytes[start + length - 1] is (byte)'\n' or (byte)'\r')
        {
            length--;
        }

        _decodable.Blank(new ByteSpan(start, length));
        var place = At(new ByteSpan(start, length));
        if (problems.IsFull(ProblemKind.CommentInFile))
        {
            problems.Skip(ProblemKind.CommentInFile, () => place);
            return;
        }

        var text = Encoding.UTF8.GetString(reader.ValueSpan).Trim();
        var note = JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping).Value;
        problems.Add(new Problem(
            ProblemKind.CommentInFile,
            place,
            "JSON has no comments. Every object here takes a \"note\": move the text there.")
        {
            Suggestions = text.Length is > 0 and <= 500 ? [$"\"note\": \"{note}\""] : [],
        });
    }

    private string TextOf(ref Utf8JsonReader reader, int start)
    {
        if (!reader.ValueIsEscaped)
        {
            return Encoding.UTF8.GetString(reader.ValueSpan);
        }

        _loneSurrogates.Clear();
        var text = JsonText.Unescape(reader.ValueSpan, _loneSurrogates);
        foreach (var offset in _loneSurrogates)
        {
            AddLoneSurrogate(start + 1 + offset);
        }

        return text;
    }

    private void AddLoneSurrogate(int offset)
    {
        _decodable.ReplaceSurrogate(offset);
        var span = new ByteSpan(offset, JsonText.UnicodeEscapeLength);
        problems.Add(new Problem(
            ProblemKind.WrongEncoding,
            At(span),
            $"{_lines.Excerpt(span)} is half of a pair and no character on its own. Write the character itself."));
    }

    private Place At(ByteSpan span) => Place.Whole(path) with { Range = span };

    /// <summary>An object or list whose end has not been read yet.</summary>
    private sealed class OpenContainer(JsonItem item)
    {
        private Dictionary<string, int>? _indexes;
        private Dictionary<string, ByteSpan?>? _firstSpans;

        public JsonItem Item { get; } = item;

        public List<JsonMember> Members { get; } = [];

        public List<JsonItem> Items { get; } = [];

        public string Name { get; set; } = "";

        public ByteSpan NameSpan { get; set; }

        public int IndexOf(string name)
        {
            if (_indexes is not null)
            {
                return _indexes.GetValueOrDefault(name, -1);
            }

            for (var i = 0; i < Members.Count; i++)
            {
                if (Members[i].Name == name)
                {
                    return i;
                }
            }

            return -1;
        }

        public void Add(JsonMember member)
        {
            Members.Add(member);
            if (_indexes is not null)
            {
                _indexes[member.Name] = Members.Count - 1;
            }
            else if (Members.Count > NameSetThreshold)
            {
                _indexes = new Dictionary<string, int>(StringComparer.Ordinal);
                for (var i = 0; i < Members.Count; i++)
                {
                    _indexes[Members[i].Name] = i;
                }
            }
        }

        /// <summary>Where a name that is there already was written first; the list keeps only the last.</summary>
        public ByteSpan? FirstSpanOf(string name)
        {
            _firstSpans ??= new Dictionary<string, ByteSpan?>(StringComparer.Ordinal);
            if (!_firstSpans.TryGetValue(name, out var span))
            {
                span = Members[IndexOf(name)].Value.KeySpan;
                _firstSpans[name] = span;
            }

            return span;
        }
    }
}
