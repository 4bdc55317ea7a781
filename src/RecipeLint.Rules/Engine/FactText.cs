using System.Globalization;
using System.Text;
using System.Text.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>Puts facts into the message of a house rule.</summary>
internal static class FactText
{
    private const int LongestValue = 80;

    /// <summary>
    /// "{/pointer}" becomes the fact there, "{0}" the value the path leads to, "{1/key}" one in the object around it (a relative JSON
    /// pointer). What is not there is told as "nothing"; other braces stay.
    /// </summary>
    public static string Fill(string message, JsonElement root, FactPath path)
    {
        var text = new StringBuilder();
        for (var at = 0; at < message.Length;)
        {
            var open = message.IndexOf('{', at);
            var close = open < 0 ? -1 : message.IndexOf('}', open);
            if (close < 0)
            {
                text.Append(message, at, message.Length - at);
                break;
            }

            text.Append(message, at, open - at);
            var pointer = message[(open + 1)..close];
            text.Append(IsPointer(pointer) ? Show(Resolve(pointer, root, path)) : message[open..(close + 1)]);
            at = close + 1;
        }

        return text.ToString();
    }

    private static bool IsPointer(string text) => text.Length > 0 && (text[0] == '/' || char.IsAsciiDigit(text[0]));

    private static JsonElement? Resolve(string pointer, JsonElement root, FactPath path)
    {
        var from = root;
        if (pointer[0] != '/')
        {
            var digits = pointer.TakeWhile(char.IsAsciiDigit).Count();
            if (!int.TryParse(pointer[..digits], NumberStyles.None, CultureInfo.InvariantCulture, out var up) || up >= path.Steps.Count)
            {
                return null;
            }

            from = path.Steps[path.Steps.Count - 1 - up];
            pointer = pointer[digits..];
            if (pointer.Length > 0 && pointer[0] != '/')
            {
                return null;
            }
        }

        JsonElement? at = from;
        foreach (var token in new JsonPointer(pointer).Tokens)
        {
            at = at is { } here ? FactPath.Child(here, token) : null;
        }

        return at;
    }

    private static string Show(JsonElement? value)
    {
        switch (value)
        {
            case { ValueKind: JsonValueKind.String } text:
                return Short(text.GetString()!);
            case { ValueKind: JsonValueKind.Number } number:
                return number.TryGetDouble(out var read) && double.IsFinite(read) ? read.ToString("G4", CultureInfo.InvariantCulture)
                    : Short(number.GetRawText());
            case { ValueKind: JsonValueKind.True or JsonValueKind.False } word:
                return word.GetBoolean() ? "yes" : "no";
            case { ValueKind: JsonValueKind.Array or JsonValueKind.Object } whole:
                return Short(whole.GetRawText());
            default:
                return "nothing";
        }
    }

    private static string Short(string text) => text.Length <= LongestValue ? text : text[..LongestValue] + "...";
}
