using RecipeLint.Generators;

namespace RecipeLint.Chemistry.Tests;

/// <summary>What stops the build: a row of the data with a field missing, unknown or twice, by its name.</summary>
public sealed class RowCheckerTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "src", "RecipeLint.Chemistry", "Data");

    private static readonly IReadOnlyList<RowContract> Contracts = RowContract.Read(File.ReadAllText(Path.Combine(Folder, "fields.json")));

    [Fact]
    public void EveryRowOfTheDataIsComplete()
    {
        var held = 0;
        foreach (var path in Directory.GetFiles(Folder, "*.json", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            var name = Path.GetRelativePath(Folder, path).Replace('\\', '/');
            foreach (var contract in Contracts.Where(c => c.IsFor(name)))
            {
                held++;
                Assert.Empty(RowChecker.Faults(name, File.ReadAllText(path), contract));
            }
        }

        Assert.True(held >= 18, $"{held} files are held against what they owe");
    }

    [Theory]
    [InlineData("thermo/solids.json", "\"name\": \"Gypsum\"", "\"owner\": \"calcium-with-sulfate\", ", "", "the row 'Gypsum' has no 'owner'")]
    [InlineData("thermo/solids.json", "\"name\": \"Gypsum\"", "\"look\": \"gypsum\"", "\"look\": \" \"", "the row 'Gypsum' has no 'look'")]
    [InlineData("thermo/solids.json", "\"name\": \"Anhydrite\"", "\"name\": \"Anhydrite\"", "\"name\": \"Gypsum\"", "the row 'Gypsum' stands there twice")]
    [InlineData("thermo/components.json", "\"name\": \"Ca+2\"", "\"rank\": 8", "\"rnak\": 8", "the row 'Ca+2' has no 'rank'")]
    [InlineData("thermo/components.json", "\"name\": \"Ca+2\"", "\"rank\": 8", "\"rank\": 8, \"colour\": \"none\"", "the row 'Ca+2' has a field 'colour' that nothing reads")]
    public void AFaultyRowIsNamedWithItsField(string file, string row, string part, string other, string says)
    {
        var text = File.ReadAllText(Path.Combine(Folder, file));
        var start = text.IndexOf(row, StringComparison.Ordinal);
        var at = text.IndexOf(part, start, StringComparison.Ordinal);
        Assert.True(start >= 0 && at >= start, "The data no longer hold what this test changes.");
        var broken = string.Concat(text.AsSpan(0, at), other, text.AsSpan(at + part.Length));

        var faults = RowChecker.Faults(file, broken, Contracts.Single(c => c.IsFor(file))).ToList();

        Assert.Contains($"{file}: {says}", faults.Select(f => f.Message));
        Assert.All(faults, f => Assert.Equal(Line(broken, start), Line(broken, f.At)));
    }

    [Fact]
    public void ASubstanceWithoutHazardsIsNamed()
    {
        const string text = """{"substances": [{"id": "a-salt", "name": "a salt", "kind": "salt", "behavesAs": "chloride", "formula": "KCl", "dissolves": {"K+": 1}}]}""";
        var fault = Assert.Single(RowChecker.Faults("substances/salts.json", text, Contracts.Single(c => c.IsFor("substances/salts.json"))));
        Assert.Equal("substances/salts.json: the row 'a-salt' has no 'hazards'", fault.Message);
    }

    [Fact]
    public void WhatIsNotJsonIsSaidInOneLine()
    {
        var fault = Assert.Single(RowChecker.Faults("thermo/solids.json", "{", Contracts.Single(c => c.IsFor("thermo/solids.json"))));
        Assert.StartsWith("thermo/solids.json: not JSON", fault.Message, StringComparison.Ordinal);
    }

    private static int Line(string text, int at) => text.AsSpan(0, at).Count('\n');
}
