using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Chemistry.Tests.Substances;

public sealed class BuiltInCatalogueTests
{
    public static TheoryData<string> Ids => [.. SubstanceCatalogue.BuiltIn.Substances.Select(s => s.Id)];

    [Fact]
    public void TheCatalogueIsAsLargeAsPromised() => Assert.True(SubstanceCatalogue.BuiltIn.Substances.Count >= 95);

    [Theory]
    [MemberData(nameof(Ids))]
    public void ChargeClosesAndAtomsAddUp(string id)
    {
        var substance = SubstanceCatalogue.BuiltIn.ById(id)!;
        if (substance.Formula is { } formula)
        {
            var perMole = formula.MolarMass.GramsPerMole / substance.Strength.Value;
            var moles = substance.Dissolves.Select(d => KeyValuePair.Create(d.Component, Math.Round(d.MolesPerGram * perMole, 9)));
            Assert.Empty(Dissolution.Check(formula, moles));
        }

        Assert.All(substance.Dissolves, d => Assert.True(SolutionComponent.TryParse(d.Component, out _), d.Component));
        Assert.Equal(0, SolutionComponent.NetChargePerGram(substance.Dissolves), 1e-12);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void ContentsFollowFromTheFormulaAndAddUpToTheStrength(string id)
    {
        var substance = SubstanceCatalogue.BuiltIn.ById(id)!;
        if (substance.Formula is not { } formula)
        {
            return;
        }

        Assert.Equal(substance.Strength.Value, substance.Content.Elements.Sum(e => substance.Content[e]), 1e-9);
        Assert.All(formula.Atoms.Keys, e => Assert.Equal(formula.FractionOf(e).Value * substance.Strength.Value, substance.Content[e], 1e-12));
        var byForm = Enum.GetValues<NitrogenForm>().Sum(f => substance.Content[f]);
        Assert.Equal(substance.Content[Element.N], byForm, 1e-12);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void EveryValueNamesItsSource(string id)
    {
        var substance = SubstanceCatalogue.BuiltIn.ById(id)!;

        Assert.All(
            new[]
            {
                substance.CasRecord?.Source, substance.TypicalAssay?.Source, substance.Density?.Source, substance.Solubility?.Source,
                substance.KeepApartFrom?.Source, substance.Note?.Source, substance.StrengthRecord?.Source, substance.Hazards?.Source,
            },
            source => Assert.True(source is null || source.Length > 10, source));
        Assert.All(substance.Impurities, i => Assert.NotEmpty(i.Content.Source));
        Assert.Equal(substance.Cas, substance.CasRecord?.Value);
        Assert.Equal(substance.Strength.Value < 1, substance.Formula is not null && substance.StrengthRecord is not null);
        Assert.NotNull(substance.Hazards);
        if (substance.Form == PhysicalForm.Liquid)
        {
            Assert.InRange(substance.Density!.Value.GramsPerMillilitre, 0.88, 1.9);
        }

        Assert.Equal(id is "food-colour" || substance.Extract is { Humic: null }, substance.Dissolves.Count == 0);
        Assert.Equal(substance.Kind == SubstanceKind.Extract, substance.Extract is not null);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void CasNumbersHaveARightCheckDigit(string id)
    {
        var cas = SubstanceCatalogue.BuiltIn.ById(id)!.Cas;
        Assert.True(cas is null || CasNumber.IsValid(cas), cas);
    }

    [Fact]
    public void OneCasNumberMeansOneCompound()
    {
        Assert.All(SubstanceCatalogue.BuiltIn.Substances.Where(s => s.Cas is not null).GroupBy(s => s.Cas), group =>
            Assert.Single(group.Select(s => s.Formula!.Hill).Distinct()));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void HazardCodesHaveTheShapeOfGHS(string id)
    {
        var hazards = SubstanceCatalogue.BuiltIn.ById(id)!.Hazards!;
        Assert.All(hazards.Statements.Concat(hazards.SupplierAdds), h => Assert.Matches("^(H[2-4][0-9]{2}(i|F|D|FD)?|EUH[0-9]{3})$", h));
        Assert.Equal(hazards.Statements, hazards.Statements.OrderBy(h => h.StartsWith('E')).ThenBy(h => h, StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void TheIdTheNameAndTheFormulaFindTheSubstance(string id)
    {
        var catalogue = SubstanceCatalogue.BuiltIn;
        var substance = catalogue.ById(id)!;

        Assert.Equal(substance, Assert.IsType<SubstanceLookup.Found>(catalogue.Find(id)).Substance);
        Assert.Equal(substance, Assert.IsType<SubstanceLookup.Found>(catalogue.Find(id.ToUpperInvariant().Replace('-', ' '))).Substance);
        Assert.Contains(substance, Candidates(catalogue.Find(substance.Name)));
        Assert.All(substance.Aliases, alias => Assert.Contains(substance, Candidates(catalogue.Find(alias))));
        if (substance.Formula is { } formula && substance.Strength.Value >= 1)
        {
            Assert.Contains(substance, Candidates(catalogue.Find(formula.Text)));
            Assert.Contains(substance, Candidates(catalogue.Find(formula.Text.Replace('·', '.'))));
            Assert.Contains(substance, Candidates(catalogue.Find(formula.Text.Replace('·', '*'))));
        }

        if (substance.Cas is { } cas)
        {
            Assert.NotEmpty(Candidates(catalogue.Find(cas)));
        }
    }

    [Fact]
    public void EveryComponentNamedByTheDataIsChargeChecked()
    {
        Assert.All(SolutionComponent.Known, c =>
        {
            Assert.True(c.Formula is null || c.Formula.Charge == c.Charge, c.Name);
            var digits = c.Name.AsSpan().TrimEnd("0123456789");
            var spelt = c.Name.EndsWith('+') ? 1 : c.Name.EndsWith('-') ? -1 : digits.Length > 0 && digits[^1] is '+' or '-' ? int.Parse(c.Name.AsSpan(digits.Length - 1)) : 0;
            Assert.True(spelt == c.Charge, c.Name);
            Assert.Equal(c.Nitrogen is not null, c.Formula?.Atoms.ContainsKey(Element.N) ?? false);
        });
    }

    private static IReadOnlyList<Substance> Candidates(SubstanceLookup lookup) => lookup switch
    {
        SubstanceLookup.Found found => [found.Substance],
        SubstanceLookup.Ambiguous several => several.Candidates,
        _ => [],
    };
}
