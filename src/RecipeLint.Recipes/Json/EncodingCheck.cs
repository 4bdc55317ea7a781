using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Unicode;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Json;

/// <summary>Whether bytes are UTF-8 text, and if not what they most likely are.</summary>
internal static class EncodingCheck
{
    public const int Utf8MarkLength = 3;

    // The characters of a recipe that differ between UTF-8 and the Windows code page 1252, by their byte there.
    private const string BenchCharacters = "°±²³µ·½¼×ßäöüÄÖÜéèêàáâçñóòôúùûíìîå";

    public static bool StartsWithUtf8Mark(ReadOnlySpan<byte> bytes) => bytes is [0xEF, 0xBB, 0xBF, ..];

    public static Problem ByteOrderMark(string path) => At(
        path,
        new ByteSpan(0, 0),
        "The file starts with a byte order mark, three invisible bytes that many JSON readers refuse. It is read here all the same; save "
            + "it as UTF-8 without one before it goes elsewhere.") with
    {
        IsHarmless = true,
    };

    /// <summary>The first thing that keeps the bytes from being UTF-8 text; null when they are.</summary>
    public static Problem? FindProblem(string path, ReadOnlySpan<byte> bytes)
    {
        if (WideEncoding(bytes) is { } wide)
        {
            return At(
                path,
                new ByteSpan(0, Math.Min(2, bytes.Length)),
                $"The file is written in {wide}. Save it as UTF-8; nothing in it could be read.");
        }

        if (!Utf8.IsValid(bytes))
        {
            return NotUtf8(path, bytes);
        }

        var zero = bytes.IndexOf((byte)0);
        return zero < 0
            ? null
            : At(path, new ByteSpan(
                zero, 1), "A zero byte stands here. The file is damaged or not plain text; nothing in it could be read.");
    }

    /// <summary>
    /// By mark, else by where the zero bytes of the first two characters stand: JSON starts with ASCII (RFC 4627 section 3).
    /// </summary>
    private static string? WideEncoding(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0xFF, 0xFE, 0, 0, ..] => "UTF-32",
        [0, 0, 0xFE, 0xFF, ..] => "UTF-32",
        [0xFF, 0xFE, ..] => "UTF-16",
        [0xFE, 0xFF, ..] => "UTF-16",
        [0, 0, 0, not 0, ..] => "UTF-32",
        [not 0, 0, 0, 0, ..] => "UTF-32",
        [0, not 0, 0, not 0, ..] => "UTF-16",
        [not 0, 0, not 0, 0, ..] => "UTF-16",
        [0, not 0] => "UTF-16",
        [not 0, 0] => "UTF-16",
        _ => null,
    };

    private static Problem NotUtf8(string path, ReadOnlySpan<byte> bytes)
    {
        var offset = 0;
        var length = 1;
        while (offset < bytes.Length)
        {
            if (Rune.DecodeFromUtf8(bytes[offset..], out _, out var consumed) != OperationStatus.Done)
            {
                length = Math.Max(1, consumed);
                break;
            }

            offset += consumed;
        }

        var first = bytes[offset];
        var code = first.ToString("X2", CultureInfo.InvariantCulture);
        var latin = (char)first;
        var guess = BenchCharacters.Contains(latin, StringComparison.Ordinal)
            ? $" In the older Windows encoding it is '{latin}'."
            : "";
        return At(
            path,
            new ByteSpan(offset, length),
            $"The byte {code} here is not UTF-8.{guess} Save the file as UTF-8; nothing in it could be read.");
    }

    private static Problem At(string path, ByteSpan span, string message) =>
        new(ProblemKind.WrongEncoding, Place.Whole(path) with { Range = span }, message);
}
