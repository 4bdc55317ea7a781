using System.Globalization;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Json;

/// <summary>What became of the bytes of one file.</summary>
/// <param name="Source">Its tree is null when the bytes cannot be read as JSON; a problem then says why.</param>
/// <param name="Problems">In the order of the file.</param>
public sealed record JsonReadResult(SourceFile Source, IReadOnlyList<Problem> Problems);

/// <summary>Bytes to tree with a place for everything. No bytes make it throw; time and memory grow with the size only.</summary>
public static class JsonReading
{
    /// <summary>The largest file that is read unless asked otherwise, in bytes (1 MB).</summary>
    public const int DefaultSizeLimit = 1_000_000;

    /// <summary>Objects and lists inside each other, the outermost counted.</summary>
    public const int DepthLimit = 64;

    /// <summary>The longest key, in UTF-16 code units. Every pointer repeats the keys above it; no key of the formats comes near.</summary>
    public const int KeyLengthLimit = 200;

    /// <param name="path">Relative to the workspace root, forward slashes.</param>
    /// <param name="bytes">The whole file as it is on disk.</param>
    /// <param name="sizeLimit">In bytes.</param>
    public static JsonReadResult Read(string path, byte[] bytes, int sizeLimit = DefaultSizeLimit)
    {
        if (bytes.Length > sizeLimit)
        {
            return new JsonReadResult(new SourceFile(path, bytes), [TooLarge(path, bytes.Length, sizeLimit)]);
        }

        var problems = new ProblemList();
        var hadMark = EncodingCheck.StartsWithUtf8Mark(bytes);
        if (hadMark)
        {
            bytes = bytes[EncodingCheck.Utf8MarkLength..];
            problems.Add(EncodingCheck.ByteOrderMark(path));
        }

        if (EncodingCheck.FindProblem(path, bytes) is { } unreadable)
        {
            problems.Add(unreadable);
            return new JsonReadResult(new SourceFile(path, bytes) { HadByteOrderMark = hadMark }, problems.Close());
        }

        var builder = new JsonTreeBuilder(path, bytes, problems);
        var tree = builder.Build();
        var told = problems.Close();
        var source = new SourceFile(path, bytes)
        {
            Tree = tree,
            HadByteOrderMark = hadMark,
            DecodableBytes = builder.DecodableBytes,
            BeyondNumbers = builder.BeyondNumbers,
            IsPlain = told.Count == 0 && builder.BeyondNumbers.Count == 0,
        };
        return new JsonReadResult(source, told);
    }

    /// <summary>For a caller that knows the size before it reads.</summary>
    public static Problem TooLarge(string path, long size, int sizeLimit = DefaultSizeLimit)
    {
        var actual = size.ToString("N0", CultureInfo.InvariantCulture);
        var limit = sizeLimit.ToString("N0", CultureInfo.InvariantCulture);
        return new Problem(
            ProblemKind.FileTooLarge,
            Place.Whole(path) with { Range = new ByteSpan(0, 0) },
            $"The file has {actual} bytes; files up to {limit} bytes are read. A recipe is a few thousand bytes: this is probably "
                + "something else.")
        {
            Values = [new NamedValue("size", size, "bytes"), new NamedValue("limit", sizeLimit, "bytes")],
        };
    }
}
