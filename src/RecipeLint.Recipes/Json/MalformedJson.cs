using System.Globalization;
using System.Text.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Json;

/// <summary>How far the reading came before it failed.</summary>
/// <param name="Position">Byte after the last good token (for a key: after its colon).</param>
/// <param name="LastToken">The last good token that was not a comment; None at the start.</param>
/// <param name="LastSpan">Where that token stands.</param>
/// <param name="Comma">True when a comma was already read after it.</param>
/// <param name="Open">Objects and lists not closed yet, the innermost first.</param>
internal readonly record struct MalformedState(
    int Position, JsonTokenType LastToken, ByteSpan LastSpan, bool Comma, IReadOnlyList<JsonItem> Open);

/// <summary>What is wrong, where, and the byte of the bracket it belongs to.</summary>
internal readonly record struct MalformedCause(ByteSpan Span, string Message, int? Opened = null);

/// <summary>
/// Says in plain words why a text stops being JSON. It looks at the one step from the last good token to the failure, so its
/// place is exact, and it knows the slips people make at the keyboard.
/// </summary>
internal sealed class MalformedJson(SourceFile source, MalformedState reached)
{
    private readonly MalformedLexeme _lexeme = new(source);
    private MalformedState _state = reached;
    private int _position = reached.Position;

    private JsonItem? Inner => _state.Open.Count > 0 ? _state.Open[0] : null;

    private bool AtEnd => _position >= source.Bytes.Length;

    private byte Next => source.Bytes[_position];

    public MalformedCause Explain()
    {
        if (SkipSpace() is { } comment)
        {
            return comment;
        }

        var comma = _state.Comma;
        var afterValue = _state.LastToken is not (JsonTokenType.None or JsonTokenType.StartObject or JsonTokenType.StartArray
            or JsonTokenType.PropertyName);
        if (!AtEnd && afterValue && !comma)
        {
            if (Inner is null)
            {
                return AfterDocument();
            }

            if (Next != ',')
            {
                return BetweenEntries();
            }

            _position++;
            comma = true;
            if (SkipSpace() is { } late)
            {
                return late;
            }
        }

        if (AtEnd)
        {
            return CutOff();
        }

        if (Next == ',')
        {
            return new MalformedCause(
                One(), comma ? "Two commas follow each other: remove one." : "A comma stands here with nothing before it: remove it.");
        }

        return Inner is { Kind: JsonKind.Object } && _state.LastToken != JsonTokenType.PropertyName ? Name() : Value();
    }

    private MalformedCause CutOff()
    {
        if (Inner is null)
        {
            return new MalformedCause(new ByteSpan(0, 0), "The file is empty.");
        }

        var end = source.Bytes.Length;
        while (end > 0 && source.Bytes[end - 1] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
        {
            end--;
        }

        var what = Inner.Kind == JsonKind.Object ? "an object" : "a list";
        var more = _state.Open.Count > 1 ? $" {Count(_state.Open.Count)} brackets are still open." : "";
        return new MalformedCause(
            new ByteSpan(end, 0), $"The file ends in the middle of {what} that starts at line {LineOf(Inner.Span.Start)}.{more}",
            Inner.Span.Start);
    }

    private MalformedCause AfterDocument()
    {
        var message = Next switch
        {
            (byte)'}' or (byte)']' => $"There is one '{(char)Next}' too many: everything that was opened is closed already.",
            (byte)',' => "The document ends before this comma: remove it.",
            _ => "The document is complete before this; a file holds one document and nothing after it.",
        };
        return new MalformedCause(One(), message);
    }

    private MalformedCause BetweenEntries()
    {
        var before = new ByteSpan(_state.LastSpan.End, 0);
        if (_state.LastToken == JsonTokenType.Number && _lexeme.IsUnitStart(_position))
        {
            return _lexeme.BareQuantity(_state.LastSpan.Start, _position);
        }

        var gap = source.Bytes[_state.LastSpan.End.._position];
        if (_state.LastToken == JsonTokenType.Number && !gap.Contains((byte)'/') && (Next == '_' || char.IsAsciiDigit((char)Next)))
        {
            return new MalformedCause(
                new ByteSpan(_state.LastSpan.End, _position - _state.LastSpan.End + 1),
                "Nothing stands between the digits of a number; if these are two numbers, a comma is missing between them.");
        }

        return Next switch
        {
            (byte)'}' or (byte)']' => WrongCloser(),
            (byte)'"' or (byte)'{' or (byte)'[' or (byte)'-' or (>= (byte)'0' and <= (byte)'9') =>
                new MalformedCause(before, "A comma is missing here, between two entries."),
            (byte)':' when Inner!.Kind == JsonKind.Array =>
                new MalformedCause(
                    One(), "A list holds values, not keys with values: an object is written in '{' and '}'.", Inner.Span.Start),
            (byte)';' or (byte)':' or (byte)'=' or (byte)'.' => new MalformedCause(One(), $"A comma belongs here, not '{(char)Next}'."),
            _ when _lexeme.IsWordStart(_position) => new MalformedCause(before, "A comma is missing here, between two entries."),
            _ => _lexeme.Unexpected(_position),
        };
    }

    private MalformedCause WrongCloser()
    {
        var (what, closer) = Inner!.Kind == JsonKind.Object ? ("an object", '}') : ("a list", ']');
        return new MalformedCause(
            One(), $"'{(char)Next}' closes nothing here: {what} that starts at line {LineOf(Inner.Span.Start)} is open and ends with "
                + $"'{closer}'.", Inner.Span.Start);
    }

    private MalformedCause Name()
    {
        if (Next == '"')
        {
            var start = _position;
            if (_lexeme.Text(ref _position) is { } wrong)
            {
                return wrong;
            }

            var name = new ByteSpan(start, _position - start);
            if (SkipSpace() is { } comment)
            {
                return comment;
            }

            if (AtEnd)
            {
                return CutOff();
            }

            if (Next == ':')
            {
                return new MalformedCause(
                    new ByteSpan(name.End, _position - name.End),
                    "Nothing may stand between a key and its colon, and JSON has no comments: move the text into a \"note\".");
            }

            return Next == '='
                ? new MalformedCause(One(), "A colon belongs here, not '='.")
                : new MalformedCause(
                    new ByteSpan(name.End, 0), $"A colon and a value are missing after the key {Wording.Shorten(source.Excerpt(name))}.");
        }

        if (Next is (byte)'}' or (byte)']')
        {
            return WrongCloser();
        }

        if (_lexeme.WrongQuote(_position) is { } quote)
        {
            return quote;
        }

        if (_lexeme.IsWordStart(_position) || char.IsAsciiDigit((char)Next))
        {
            var word = _lexeme.Word(_position);
            return new MalformedCause(word, $"A key is written in double quotes: \"{Wording.Shorten(source.Excerpt(word))}\".");
        }

        return Next switch
        {
            (byte)'{' or (byte)'[' =>
                new MalformedCause(One(), "A key in double quotes belongs here: in an object every value has a key.", Inner!.Span.Start),
            (byte)':' => new MalformedCause(One(), "The key before this colon is missing."),
            _ => _lexeme.Unexpected(_position),
        };
    }

    private MalformedCause Value()
    {
        switch (Next)
        {
            case (byte)'{' or (byte)'[' when _state.Open.Count >= JsonReading.DepthLimit:
                return new MalformedCause(
                    One(), $"Objects and lists are nested more than {Count(JsonReading.DepthLimit)} deep here; nothing deeper is read.");
            case (byte)'"':
                return _lexeme.Text(ref _position) ?? _lexeme.Unexpected(_position);
            case (byte)'}' or (byte)']' when _state.LastToken == JsonTokenType.PropertyName:
                return new MalformedCause(_state.LastSpan, "This key has no value.");
            case (byte)'}' or (byte)']':
                return Inner is null ? new MalformedCause(One(), $"'{(char)Next}' closes nothing: nothing is open.") : WrongCloser();
            case (byte)'+' or (byte)'-' or (byte)'.' or (>= (byte)'0' and <= (byte)'9'):
                if (_lexeme.NumberLength(_position) is var length and > 0)
                {
                    // The number is good, what follows it is not.
                    var number = new ByteSpan(_position, length);
                    _position = number.End;
                    _state = _state with { LastToken = JsonTokenType.Number, LastSpan = number, Comma = false };
                    return Explain();
                }

                return _lexeme.Number(_position);
            case (byte)':':
                return new MalformedCause(One(), "A value belongs here, not a colon.");
        }

        return _lexeme.WrongQuote(_position)
            ?? (_lexeme.IsWordStart(_position) ? _lexeme.Literal(_position) : _lexeme.Unexpected(_position));
    }

    /// <summary>Skips white space and comments; a comment that is none is the cause.</summary>
    private MalformedCause? SkipSpace()
    {
        while (!AtEnd)
        {
            if (Next is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
            {
                _position++;
            }
            else if (Next == '/')
            {
                if (_lexeme.Comment(ref _position) is { } wrong)
                {
                    return wrong;
                }
            }
            else
            {
                break;
            }
        }

        return null;
    }

    private ByteSpan One() => _lexeme.Character(_position);

    private string LineOf(int offset) => Count(source.ToPosition(offset).Line);

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);
}
