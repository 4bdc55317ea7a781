using System.Text;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Chemistry.Tests.Readings;

/// <summary>Every substance of the catalogue, component, kind of extract and oxide as a caller gets it.</summary>
public sealed class CatalogueReadingTests
{
    [Fact]
    public void EverySubstanceIsReadSo()
    {
        var text = new StringBuilder();
        foreach (var substance in SubstanceCatalogue.BuiltIn.Substances) SubstanceText.Write(text, substance);
        Hold.As("catalogue.txt", text);
    }

    [Fact]
    public void EveryComponentIsReadSo()
    {
        var text = new StringBuilder();
        foreach (var c in SolutionComponent.Known)
        {
            text.Append(c.Name).Append(": ").Append(Hold.Line(
                ("charge", c.Charge), ("formula", c.Formula?.Text), ("nitrogen", c.Nitrogen), ("inert", c.IsInert))).Append('\n');
        }

        Hold.As("components.txt", text);
    }

    [Fact]
    public void EveryKindOfExtractIsReadSo()
    {
        var text = new StringBuilder($"carbon of dry matter {Hold.Number(ExtractOrigins.CarbonOfDryMatter)}\n");
        foreach (var origin in ExtractOrigins.All)
        {
            text.Append($"\n{origin.Key}: {origin.Called}, becomes {origin.Becomes}\nwords {string.Join(", ", origin.Words)}\n");
            text.Append($"below pH {SubstanceText.Sourced(origin.FallsOutBelowPh)}\ncalcium {SubstanceText.Sourced(origin.FallsOutFromCalcium)}\n");
            text.Append($"carbon {SubstanceText.Sourced(origin.Carbon)}\neaten {Hold.Number(origin.Eaten)}\n");
            if (origin.Humic is not { } humic) continue;
            text.Append($"{humic.Told}\nguessed charge {Hold.Number(humic.GuessedCharge)}\n{SubstanceText.Yields(humic.Yields)}\n");
        }

        Hold.As("extracts.txt", text);
    }

    /// <summary>Whole words, the special before the general; what is no word of theirs is no extract.</summary>
    [Theory]
    [InlineData("Kelp meal extract", "seaweed")]
    [InlineData("liquid seaweed/fish", "seaweed")]
    [InlineData("fulvic acid", "fulvic")]
    [InlineData("potassium_humate", "humic")]
    [InlineData("humus (soluble)", "humic")]
    [InlineData("lignite.powder", "humic")]
    [InlineData("Fish-hydrolysate", "fish")]
    [InlineData("amino+acids", "amino acids")]
    [InlineData("molasses", "sugar")]
    [InlineData("rice syrup,organic", "sugar")]
    [InlineData("worm tea", "other")]
    [InlineData("plant ferment & brew", "other")]
    [InlineData("steam", null)]
    [InlineData("selfish", null)]
    [InlineData("", null)]
    public void ANameSpeaksOfAnExtract(string name, string? key) => Assert.Equal(key, ExtractOrigins.In(name)?.Key);

    [Fact]
    public void AnExtractHasAKey()
    {
        Assert.Same(ExtractOrigins.Other, ExtractOrigins.Named("other"));
        Assert.Equal("'tar' is no kind of extract", Assert.Throws<FormatException>(() => ExtractOrigins.Named("tar")).Message);
    }

    [Fact]
    public void EveryOxideIsReadSo()
    {
        var text = new StringBuilder();
        foreach (var form in OxideBasis.Forms)
        {
            Assert.True(OxideBasis.TryRead(form, out var element, out var factor));
            text.Append($"{form} holds {Hold.Number(factor)} of {element}\n");
        }

        foreach (var element in AtomicWeights.Elements)
        {
            AtomicWeights.TryGet(element, out var weight);
            text.Append($"{element} {Hold.Number(weight.Value)} ± {Hold.Number(weight.Uncertainty)}");
            text.Append(OxideBasis.TryUsualForm(element, out var usual) ? $" printed as {usual}\n" : "\n");
        }

        Hold.As("elements.txt", text);
    }

    /// <summary>By hand: half of a group with its pK at the pH has lost its proton, a tenth of one a unit above; mol in a gram.</summary>
    [Fact]
    public void HumicGroupsFollowTheirPk()
    {
        var yields = HumicMatter.Yields([1, 2, 0, 0, 0], 0.5, 4.5);
        double strong = 0.5e-3, weak = 1e-3, charge = strong / (1 + 0.01) + weak / 2;
        Assert.Equal(HumicMatter.Groups.Concat([SolutionComponent.ClosingCation, "H+"]), yields.Select(y => y.Component));
        double[] moles = [strong, weak, 0, 0, 0, charge, strong + weak - charge];
        Assert.All(yields.Zip(moles), y => Assert.Equal(y.Second, y.First.MolesPerGram, 1e-15));
        Assert.Equal(0, SolutionComponent.NetChargePerGram(yields), 1e-15);
    }
}
