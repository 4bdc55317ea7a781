using System.Text.Json;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Chemistry.Tests.Substances;

/// <summary>Every key of a row of the catalogue, read by itself. The rows are invented.</summary>
public sealed class SubstanceRowTests
{
    private const string Least = """
        "id": "a-salt", "name": "a salt", "behavesAs": "salt", "hazards": {"statements": ["H302"], "harmonised": true, "src": "book", "confidence": "found"}
        """;

    private static CatalogueEntry Entry(string members, string rest = Least)
    {
        using var row = JsonDocument.Parse($$"""{ {{rest}}{{(members.Length > 0 && rest.Length > 0 ? ", " : "")}}{{members}} }""");
        using var sources = JsonDocument.Parse("""{"book": "a book of invented salts", "lot": "a certificate"}""");
        return new SubstanceReader("salts.json", sources.RootElement.Clone()).Entry(row.RootElement.Clone());
    }

    private static Substance Read(string members) => Entry(members).Substance;

    private static Substance Salt(string members) => Read($$""" "kind": "salt", "formula": "KCl", "dissolves": {"K+": 1, "Cl-": 1}, {{members}}""");

    private static string Fault(string members, string rest = Least) =>
        Assert.Throws<InvalidOperationException>(() => Entry(members, rest).Substance).Message;

    [Theory]
    [InlineData("salt", SubstanceKind.Salt)]
    [InlineData("chelate", SubstanceKind.Chelate)]
    [InlineData("chelating agent", SubstanceKind.ChelatingAgent)]
    [InlineData("acid", SubstanceKind.Acid)]
    [InlineData("base", SubstanceKind.Base)]
    [InlineData("preservative", SubstanceKind.Preservative)]
    [InlineData("dye", SubstanceKind.Dye)]
    [InlineData("organic", SubstanceKind.Organic)]
    [InlineData("oxidiser", SubstanceKind.Oxidiser)]
    [InlineData("silicate", SubstanceKind.Silicate)]
    [InlineData("product", SubstanceKind.Product)]
    [InlineData("extract", SubstanceKind.Extract)]
    public void EveryKindIsAWord(string word, SubstanceKind kind) => Assert.Equal(kind, Read($"\"kind\": \"{word}\"").Kind);

    [Theory]
    [InlineData("\"kind\": \"Salt\"", "salts.json, substance 'a-salt': 'Salt' is not a kind")]
    [InlineData("\"kind\": \"salt\", \"form\": \"powder\"", "salts.json, substance 'a-salt': 'powder' is not a form")]
    [InlineData("\"formula\": \"KCl\"", "salts.json, substance 'a-salt': 'kind' is missing")]
    [InlineData("\"kind\": \"salt\", \"cas\": {\"value\": \"7447-40-7\", \"src\": \"hearsay\", \"confidence\": \"found\"}", "the source 'hearsay' is not in the table")]
    [InlineData("\"kind\": \"salt\", \"cas\": {\"value\": \"7447-40-7\", \"src\": \"book\", \"confidence\": \"sure\"}", "'sure' is not a confidence")]
    [InlineData("\"kind\": \"salt\", \"strength\": {\"gramsPer100mL\": 5, \"src\": \"book\", \"confidence\": \"found\"}", "a strength by volume needs a density")]
    [InlineData("\"kind\": \"product\", \"label\": {\"percent\": {\"K2O\": 95}, \"src\": \"book\", \"confidence\": \"found\"}", "As salts")]
    [InlineData("\"kind\": \"product\", \"label\": {\"percent\": {\"Fe bound\": 3}, \"src\": \"book\", \"confidence\": \"found\"}", "'bound' is not a share of an element.")]
    public void WhatCannotBeReadIsNamedWithItsRow(string members, string words) => Assert.Contains(words, Fault(members), StringComparison.Ordinal);

    [Theory]
    [InlineData("\"name\": \"x\"", "'id' is missing")]
    [InlineData("\"id\": \"x\"", "'name' is missing")]
    public void ARowHasAnIdAndAName(string members, string words) =>
        Assert.Equal(words, Assert.Throws<InvalidOperationException>(() => Entry(members, "")).Message);

    [Fact]
    public void ARowWithoutBehaviourIsNamed() => Assert.Contains(
        "'behavesAs' is missing",
        Fault("\"kind\": \"salt\"", """ "id": "x", "name": "x", "hazards": {"src": "book", "confidence": "found"} """),
        StringComparison.Ordinal);

    [Fact]
    public void NamesAreKnownBeforeTheRowIsRead()
    {
        var entry = Entry(""" "aliases": ["one", "two"], "family": "salts", "formula": "KCl", "cas": {"value": "7447-40-7"} """);
        Assert.Equal("a-salt", entry.Id);
        Assert.Equal(["a-salt", "a salt", "one", "two", "salts"], entry.Names);
        Assert.Equal(["a-salt", "a salt"], Entry("").Names);
    }

    [Fact]
    public void WhatIsStatedIsRead()
    {
        var salt = Salt("""
            "form": "liquid", "family": "salts", "aliases": ["one"], "needsAssay": true, "feedsMicrobes": true, "colour": "white",
            "cas": {"value": "7447-40-7", "src": "book", "confidence": "memory"}, "assay": {"value": "99 %", "src": "lot", "confidence": "found"},
            "density20C": {"value": 1.98, "src": "book", "confidence": "derived"}, "note": {"value": "keeps dry", "src": "book", "confidence": "found"},
            "assumes": {"value": "Taken as pure.", "src": "book", "confidence": "found"},
            "impurities": [{"element": "Cd", "percent": 0.01, "src": "lot", "confidence": "found"}],
            "keepApart": {"from": ["acids", "calcium stocks"], "src": "book", "confidence": "found"}
            """);
        Assert.Equal((PhysicalForm.Liquid, "salts", "white", true, true), (salt.Form, salt.HydrateFamily, salt.Colour, salt.NeedsAssay, salt.FeedsMicrobes));
        Assert.Equal(["one"], salt.Aliases);
        Assert.Equal("7447-40-7", salt.Cas);
        Assert.Equal(new Sourced<string>("7447-40-7", "a book of invented salts", Confidence.Memory), salt.CasRecord);
        Assert.Equal(new Sourced<string>("99 %", "a certificate", Confidence.Found), salt.TypicalAssay);
        Assert.Equal((1.98, Confidence.Derived), (salt.Density!.Value.GramsPerMillilitre, salt.Density.Confidence));
        Assert.Equal(("keeps dry", "Taken as pure."), (salt.Note!.Value, salt.Assumption));
        Assert.Equal(("Cd", 0.0001), (Assert.Single(salt.Impurities).Element.Symbol, salt.Impurities[0].Content.Value.Value));
        Assert.Equal([KeepApart.Acids, KeepApart.CalciumStocks], salt.KeepApartFrom!.Value);
        Assert.Equal(["H302"], salt.Hazards!.Statements);
        Assert.Equal((true, "salt"), (salt.Hazards.Harmonised, salt.BehavesAs));
        Assert.Empty(salt.Hazards.SupplierAdds);
    }

    [Fact]
    public void WhatIsNotStatedIsNothing()
    {
        var bare = Read("\"kind\": \"dye\"");
        Assert.Equal((PhysicalForm.Solid, false, false), (bare.Form, bare.NeedsAssay, bare.FeedsMicrobes));
        Assert.Empty(bare.Dissolves);
        Assert.Empty(bare.Content.Elements);
        Assert.Equal(1, bare.Strength.Value);
        Assert.True(bare is { Cas: null, CasRecord: null, Density: null, Formula: null, StrengthRecord: null, KeepApartFrom: null, Solubility: null, Assumption: null, Extract: null });
    }

    /// <summary>By hand: 10 g in 100 mL of 1.25 g/mL are 8 % by mass.</summary>
    [Fact]
    public void AStrengthIsByMassOrByVolume()
    {
        var byMass = Salt(""" "strength": {"percent": 40, "src": "book", "confidence": "found"} """);
        Assert.Equal((0.4, "40 % w/w"), (byMass.Strength.Value, byMass.StrengthRecord!.Value));
        Assert.Equal(0.4 * 39.098 / (39.098 + 35.45), byMass.Content[Element.K], 1e-12);
        Assert.Equal(0.4 / (39.098 + 35.45), byMass.Dissolves.Single(d => d.Component == "K+").MolesPerGram, 1e-12);
        var byVolume = Salt(""" "density20C": {"value": 1.25, "src": "book", "confidence": "found"}, "strength": {"gramsPer100mL": 10, "src": "book", "confidence": "found"} """);
        Assert.Equal(0.08, byVolume.Strength.Value, 1e-12);
        Assert.Equal("10 g/100 mL", byVolume.StrengthRecord!.Value);
    }

    /// <summary>By hand: 20 % of the salt itself are 25 g in 100 g of water; points come in the order of their temperature.</summary>
    [Fact]
    public void ASolubilityIsForAHundredGramsOfWater()
    {
        var points = Salt(""" "solubility": {"of": "KCl", "massPercent": {"40": 50, "0": 20, "100": 100}, "src": "book", "confidence": "found"} """).Solubility!.Value;
        Assert.Equal([0, 40], points.Select(p => p.Temperature.Celsius));
        Assert.Equal(25, points[0].GramsPer100GramsWater, 1e-9);
        Assert.Equal(100, points[1].GramsPer100GramsWater, 1e-9);
    }

    [Fact]
    public void ALabelIsReadAsDeclared()
    {
        var product = Read(""" "kind": "product", "label": {"agent": "EDTA", "percent": {"Fe total": 6, "Fe chelated": 5}, "src": "lot", "confidence": "found"} """);
        Assert.Equal((0.06, 0.05, "EDTA"), (product.Iron!.Total.Value, product.Iron.Chelated!.Value.Value, product.Iron.Agent));
        Assert.Equal(new Sourced<string>("guaranteed analysis", "a certificate", Confidence.Found), product.StrengthRecord);
        var closed = Read(""" "kind": "product", "label": {"counterIon": "NO3-", "percent": {"K2O": 10}, "src": "lot", "confidence": "found"} """);
        Assert.EndsWith("it is closed with NO3- as declared.", closed.Assumption, StringComparison.Ordinal);
    }
}
