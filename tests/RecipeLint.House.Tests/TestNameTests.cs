using System.Text.RegularExpressions;
using RecipeLint.House.Tests.Reading;

namespace RecipeLint.House.Tests;

/// <summary>Tests are called one way throughout the house: in the spelling of every other method, without underscores.</summary>
public sealed partial class TestNameTests
{
    [Fact]
    public void TestsAreNamedLikeOtherMethods()
    {
        var files = Directory.EnumerateFiles(Path.Combine(Checkout.Here.Root, "tests"), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .ToList();
        var methods = files.SelectMany(f => Methods().Matches(File.ReadAllText(f)).Select(m => (File: f, Name: m.Groups["name"].Value))).ToList();
        Assert.True(methods.Count > 500, $"Only {methods.Count} tests were found: the pattern no longer fits.");
        Assert.Empty(methods.Where(m => m.Name.Contains('_', StringComparison.Ordinal)).Select(m => $"{Path.GetRelativePath(Checkout.Here.Root, m.File)}: {m.Name}"));
    }

    [GeneratedRegex(@"\[(Fact|Theory)[^\n]*\](\s*\[[^\n]*\])*\s*public (async )?(void|Task) (?<name>\w+)\(")]
    private static partial Regex Methods();
}
