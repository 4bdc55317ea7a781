using System.Globalization;
using System.Text;
using System.Text.Json;

namespace RecipeLint.Editor.Protocol;

/// <summary>Reads what a request carries; what is missing or of another kind is an error of the request.</summary>
internal static class Params
{
    /// <exception cref="RpcException">There is no such member.</exception>
    public static JsonElement Need(this JsonElement item, string name) =>
        item.Maybe(name) ?? throw RpcException.Invalid($"'{name}' is missing.");

    public static JsonElement? Maybe(this JsonElement item, string name) =>
        item.Member(name) is { ValueKind: not JsonValueKind.Null } value ? value : null;

    /// <summary>The member of an object, null among the values it may have; nothing where there is none, or no object.</summary>
    public static JsonElement? Member(this JsonElement item, string name)
    {
        try
        {
            return item.ValueKind == JsonValueKind.Object && item.TryGetProperty(name, out var value) ? value : null;
        }
        catch (InvalidOperationException)
        {
            // Half a surrogate pair in the name of a member: one after the other, since looking it up met that name.
            return item.EnumerateObject().Where(m => IsCalled(m, name)).Select(m => (JsonElement?)m.Value).LastOrDefault();
        }
    }

    /// <exception cref="RpcException">It is no text.</exception>
    public static string NeedText(this JsonElement item, string name) =>
        item.Need(name) is { ValueKind: JsonValueKind.String } text
            ? text.AnyText()
            : throw RpcException.Invalid($"'{name}' must be a text.");

    /// <exception cref="RpcException">It is no whole number.</exception>
    public static int NeedInteger(this JsonElement item, string name) =>
        item.Need(name) is { ValueKind: JsonValueKind.Number } number && number.TryGetInt32(out var value)
            ? value
            : throw RpcException.Invalid($"'{name}' must be a whole number.");

    /// <summary>The elements of a list; none where there is no list.</summary>
    public static IEnumerable<JsonElement> Items(this JsonElement item, string name) =>
        item.Maybe(name) is { ValueKind: JsonValueKind.Array } list ? list.EnumerateArray() : [];

    /// <summary>
    /// The text of a string, whatever it holds: half a surrogate pair, as an editor sends it while a character is put together, becomes the
    /// replacement character and is no reason to lose the document.
    /// </summary>
    public static string AnyText(this JsonElement text)
    {
        try
        {
            return text.GetString() ?? "";
        }
        catch (InvalidOperationException)
        {
            return Unescape(text.GetRawText());
        }
    }

    private static bool IsCalled(JsonProperty member, string name)
    {
        try
        {
            return member.NameEquals(name);
        }
        catch (InvalidOperationException)
        {
            return false;
        }
    }

    private static string Unescape(string raw)
    {
        var text = new StringBuilder(raw.Length);
        for (var i = 1; i < raw.Length - 1; i++)
        {
            if (raw[i] != '\\')
            {
                text.Append(raw[i]);
                continue;
            }

            i++;
            text.Append(raw[i] switch
            {
                'n' => '\n',
                'r' => '\r',
                't' => '\t',
                'b' => '\b',
                'f' => '\f',
                'u' => (char)int.Parse(raw.AsSpan(i + 1, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture),
                var other => other,
            });
            i += raw[i] == 'u' ? 4 : 0;
        }

        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                i++;
            }
            else if (char.IsSurrogate(text[i]))
            {
                text[i] = '\uFFFD';
            }
        }

        return text.ToString();
    }
}
