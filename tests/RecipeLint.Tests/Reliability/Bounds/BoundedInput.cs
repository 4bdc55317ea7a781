using RecipeLint.Recipes.Files;

namespace RecipeLint.Tests.Reliability.Bounds;

/// <summary>One input at its bound: a list of thousands, a text of 100 kB or an extreme number, and the command that reads it.</summary>
/// <param name="Format">"stock", "workbook".</param>
/// <param name="Place">The list, text or number in it, as a path without indices.</param>
/// <param name="Variant">What is put there.</param>
/// <param name="Kind">List, text or number.</param>
internal sealed record BoundedInput(
    string Format, string Place, string Variant, BoundKind Kind, IReadOnlyDictionary<string, byte[]> Files, params string[] Arguments)
{
    /// <summary>Entries of lists, where a file of so many stays below the limit for files.</summary>
    public const int Entries = 10_000;

    public const int TextLength = 100_000;

    /// <summary>Largest file of ours that is read.</summary>
    public const int LargestDocument = 1_000_000;

    public static IReadOnlyList<(string Name, string Text)> Texts { get; } =
    [
        ("letters", new string('x', TextLength)), ("digits", new string('9', TextLength - 2) + " g"), ("brackets", new string('(', TextLength)),
        ("words", string.Concat(Enumerable.Repeat("not white ", TextLength / 10))), ("ranges", string.Concat(Enumerable.Repeat("1..", TextLength / 3)) + "2 g"),
        ("separators", string.Concat(Enumerable.Repeat("../", TextLength / 3))),
    ];

    public static IReadOnlyList<string> Numbers { get; } =
    [
        "0", "-0", "-1", "1e308", "-1e308", "1e-320", "1e-400", "1e400", "-1e400", "2147483647", "2147483648", "9223372036854775808", "1.00000000000000000000000000001", new string('9', 400),
    ];

    public string Title => $"{Format} {Place}: {Variant}";

    public MemoryFileTree Tree()
    {
        var tree = new MemoryFileTree("/shop").AddFolder("/shop/.git");
        foreach (var (path, bytes) in Files)
        {
            tree.Add(path, bytes);
        }

        return tree;
    }
}

internal enum BoundKind
{
    List,
    Text,
    Number,
}
