using System.Text.Json;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Chemistry.Tests.Substances;

/// <summary>A row that lacks a field is named with file, row and field, and not by a bare null reference.</summary>
public sealed class MissingFieldTests
{
    [Theory]
    [InlineData("""{"id": "a-salt", "name": "a salt", "kind": "salt", "formula": "KCl", "dissolves": {"K+": 1, "Cl-": 1}}""", "hazards")]
    [InlineData("""{"id": "a-salt", "name": "a salt", "formula": "KCl", "dissolves": {"K+": 1, "Cl-": 1}}""", "kind")]
    public void TheRowAndTheFieldAreNamed(string row, string field)
    {
        using var document = JsonDocument.Parse(row);
        using var sources = JsonDocument.Parse("{}");
        var entry = new SubstanceReader("salts.json", sources.RootElement).Entry(document.RootElement);

        var thrown = Assert.Throws<InvalidOperationException>(() => entry.Substance);

        Assert.Contains("salts.json", thrown.Message, StringComparison.Ordinal);
        Assert.Contains("'a-salt'", thrown.Message, StringComparison.Ordinal);
        Assert.Contains($"'{field}' is missing", thrown.Message, StringComparison.Ordinal);
    }
}
