using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>Products as people copy their labels, and strengths as they stand on the bottle.</summary>
public sealed class LabelProductTests
{
    // IUPAC standard atomic weights 2021, abridged: Fe 55.845, Mn 54.938, Zn 65.38, Cu 63.546.
    private const double Iron = 0.003 / 55.845;
    private const double Others = (0.001 / 54.938) + (0.0005 / 65.38) + (0.0004 / 63.546);

    [Fact]
    public void OneFigureBesideAChelatingAgentIsBoundByIt()
    {
        var bag = Product("\"Fe\": \"0.3 %\", \"Mn\": \"0.1 %\", \"Zn\": \"0.05 %\", \"Cu\": \"0.04 %\", \"chelatedWith\": \"EDTA\"");
        Assert.Equal(Iron + Others, Moles(bag, "EDTA-4"), 8);
        Assert.Equal(Iron, Moles(bag, "Fe+3"), 8);
        Assert.Equal(0, Moles(bag, "Fe+2"), 8);
        Assert.Contains("The label names EDTA: Fe, Mn, Zn and Cu, given as one figure, count as bound by it.", bag.Assumption, StringComparison.Ordinal);
    }

    [Fact]
    public void TotalAndChelatedApartCountAsTheLabelSays()
    {
        var bag = Product("\"Fe\": {\"total\": \"0.3 %\", \"chelated\": \"0.2 %\"}, \"Mn\": {\"total\": \"0.1 %\"}, \"chelatedWith\": \"EDTA\"");
        Assert.Equal(0.002 / 55.845, Moles(bag, "EDTA-4"), 8);
        Assert.Equal(0.001 / 55.845, Moles(bag, "Fe+2"), 8);
        Assert.DoesNotContain("names EDTA", bag.Assumption, StringComparison.Ordinal);
    }

    [Fact]
    public void AnAgentMadeForIronLeavesTheOtherMetalsAlone()
    {
        var bag = Product("\"Fe\": \"0.3 %\", \"Mn\": \"0.1 %\", \"chelatedWith\": \"EDDHA\"");
        Assert.Equal(Iron, Moles(bag, "EDDHA-4"), 8);
        Assert.Contains("The label names EDDHA: Fe, given as one figure, counts as bound by it.", bag.Assumption, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutAnAgentMetalsAreSalts()
    {
        var bag = Product("\"Fe\": \"0.3 %\"");
        Assert.Equal(Iron, Moles(bag, "Fe+2"), 8);
    }

    /// <summary>15 % of nitrogen, two thirds of it as nitrate, in every way that is read.</summary>
    [Theory]
    [InlineData("\"nitrogen\": {\"nitrate\": \"10 %\", \"ammonium\": \"5 %\"}")]
    [InlineData("\"nitrogen\": {\"total\": \"15 %\", \"nitrate\": \"10 %\", \"ammonium\": \"5 %\"}")]
    [InlineData("\"N\": {\"total\": \"15 %\", \"nitrate\": \"10 %\", \"ammonium\": \"5 %\"}")]
    [InlineData("\"N\": \"15 %\", \"nitrogen\": {\"nitrate\": \"10 %\", \"ammonium\": \"5 %\"}")]
    [InlineData("\"N\": \"15 %\", \"NO3-N\": \"10 %\", \"NH4-N\": \"5 %\"")]
    [InlineData("\"NO3-N\": \"120 g/L\", \"NH4-N\": \"6 % w/v\"")]
    [InlineData("\"percent\": \"w/v\", \"NO3-N\": \"12 %\", \"NH4-N\": \"5 % w/w\"")]
    public void NitrogenIsReadTheWayLabelsPrintIt(string nitrogen)
    {
        var shop = InMemoryShop.Of(
            ("bag.substances.json",
            $$"""{"format": 1, "substances": [{"id": "bag", "form": "liquid", "density": "1.2 g/mL", "label": {"basis": "element", {{nitrogen}} } }]}"""));
        var workspace = shop.Load();
        Assert.Empty(workspace.Problems);
        var bag = Assert.Single(workspace.SubstanceFiles.Single().Substances).Substance;
        Assert.Equal(0.1 / 14.007, Moles(bag, "NO3-"), 7);
        Assert.Equal(0.05 / 14.007, Moles(bag, "NH4+"), 7);
    }

    [Theory]
    [InlineData("\"N\": \"15 %\", \"NO3-N\": \"10 %\"", "5 % of it is left without a form")]
    [InlineData("\"Ca\": \"12 % w/v\"", "\"density\": \"1.2 g/mL\"")]
    [InlineData("\"of which nitrate\": \"10 %\"", "Did you mean \"NO3-N\"?")]
    [InlineData("\"Total Nitrogen (N)\": \"10 %\"", "Did you mean \"N\"?")]
    [InlineData("\"ammoniacal nitrogen\": \"10 %\"", "Did you mean \"NH4-N\"?")]
    [InlineData("\"Ureic Nitrogen (N)\": \"10 %\"", "Did you mean \"urea-N\"?")]
    [InlineData("\"water soluble potash (K2O)\": \"10 %\"", "Did you mean \"K2O\"?")]
    [InlineData("\"Phosphorus pentoxide (P2O5) soluble in water\": \"10 %\"", "Did you mean \"P2O5\"?")]
    [InlineData("\"Iron (Fe)\": \"1 %\"", "Did you mean \"Fe\"?")]
    [InlineData("\"Iron (Fe) chelated by EDTA\": \"1 %\"", "write \"Fe\": \"1 %\" and \"chelatedWith\": \"EDTA\"")]
    [InlineData("\"FeDTPA\": \"1 %\"", "write \"Fe\": \"1 %\" and \"chelatedWith\": \"DTPA\"")]
    [InlineData("\"NO3\": \"10 %\"", "0.226 times")]
    [InlineData("\"N-P-K\": \"15-5-30\"", "\"N\": \"15 %\", \"P2O5\": \"5 %\", \"K2O\": \"30 %\"")]
    public void ALineThatIsNoKeyIsToldWhatHoldsIt(string line, string told)
    {
        var shop = InMemoryShop.Of(
            ("bag.substances.json", $$"""{"format": 1, "substances": [{"id": "bag", "label": {"basis": "element", {{line}} } }]}"""));
        Assert.Contains(told, Assert.Single(shop.Load().Problems).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("vinegar", "3.5 %", "vinegar-3.5", 0.035)]
    [InlineData("white vinegar", "7 % w/w", "vinegar-7", 0.07)]
    [InlineData("HNO3", "42 %", "nitric-42", 0.42)]
    [InlineData("phosphoric acid", "81 %", "phosphoric-81", 0.81)]
    [InlineData("nitric-60", "53 %", "nitric-53", 0.53)]
    [InlineData("bleach", "4 %", "sodium-hypochlorite-4", 0.04)]
    public void AStrengthStandsBesideTheAcid(string add, string strength, string id, double share)
    {
        var shop = InMemoryShop.Of(("a.stock.json", $$"""{"format": 1, "makes": "1 L", "steps": [{"add": "{{add}}", "amount": "10 mL", "strength": "{{strength}}"}]}"""));
        var workspace = shop.Load();
        Assert.Empty(workspace.Problems);
        var substance = Assert.IsType<Recipes.Documents.AddStep>(Assert.Single(workspace.Stocks.Single().Steps)).Substance!;
        Assert.Equal(id, substance.Id);
        Assert.Equal(share, substance.Strength.Value, 6);
        Assert.False(substance.NeedsAssay);
    }

    /// <summary>CRC Handbook, Concentrative Properties of Aqueous Solutions, 20 °C: nitric acid 40 % by mass 1.2466 g/mL, 7.913 mol/L.</summary>
    [Theory]
    [InlineData("40 %", 0.40)]
    [InlineData("7.913 mol/L", 0.40)]
    public void DensityAndMolesFollowTheHandbook(string strength, double share)
    {
        var shop = InMemoryShop.Of(("a.stock.json", $$"""{"format": 1, "makes": "1 L", "steps": [{"add": "nitric acid", "amount": "10 mL", "strength": "{{strength}}"}]}"""));
        var substance = ((Recipes.Documents.AddStep)shop.Load().Stocks.Single().Steps[0]).Substance!;
        Assert.Equal(share, substance.Strength.Value, 4);
        Assert.Equal(1.2466, substance.Density!.Value.GramsPerMillilitre, 3);
        Assert.Equal(substance.Strength.Value / 63.013, substance.Dissolves.Single(d => d.Component == "NO3-").MolesPerGram, 6);
    }

    [Fact]
    public void AStrengthStandsBesideTheReagentOfAnAdjustment()
    {
        var shop = InMemoryShop.Of(
            ("a.recipe.json", """{"format": 1, "final": "10 L", "doses": [{"add": "KNO3", "amount": "10 g"}], "adjust": {"pH": "5.8", "using": "nitric acid", "strength": "42 %"} }"""),
            ("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "KNO3", "amount": "10 g"}, {"adjust": "pH 5.8", "using": "nitric acid", "strength": "42 %"}]}"""));
        var workspace = shop.Load();
        Assert.Empty(workspace.Problems);
        Assert.All(
            [workspace.Recipes.Single().Adjust!.Reagent!, workspace.Stocks.Single().Steps.OfType<Recipes.Documents.AdjustStep>().Single().Reagent!],
            reagent => Assert.Equal(("nitric-42", 0.42), (reagent.Id, Math.Round(reagent.Strength.Value, 6))));
    }

    [Theory]
    [InlineData("potassium-nitrate", "\"strength\": \"50 %\"", ProblemKind.WrongShape)]
    [InlineData("vinegar", "\"strength\": \"140 %\"", ProblemKind.ImpossibleAnalysis)]
    [InlineData("vinegar", "\"strength\": \"5\"", ProblemKind.NumberWithoutUnit)]
    [InlineData("vinegar", "\"strength\": \"5 %\", \"assay\": \"99 %\"", ProblemKind.WrongShape)]
    [InlineData("vinegar", "\"note\": \"none\"", ProblemKind.AmbiguousSubstance)]
    public void AStrengthThatSaysNothingIsReported(string add, string rest, ProblemKind kind)
    {
        var shop = InMemoryShop.Of(("a.stock.json", $$"""{"format": 1, "makes": "1 L", "steps": [{"add": "{{add}}", "amount": "10 g", {{rest}}}]}"""));
        Assert.Contains(shop.Load().Problems, p => p.Kind == kind);
    }

    [Theory]
    [InlineData("MgSO4")]
    [InlineData("CuSO4")]
    [InlineData("Ca(NO3)2")]
    [InlineData("FeSO4")]
    [InlineData("CaCl2")]
    public void AFormulaWithoutWaterIsAskedAboutWhereHydratesAreSold(string formula)
    {
        var shop = InMemoryShop.Of(("a.stock.json", $$"""{"format": 1, "makes": "1 L", "steps": [{"add": "{{formula}}", "amount": "10 g"}]}"""));
        var problem = Assert.Single(shop.Load().Problems);
        Assert.Equal(ProblemKind.AmbiguousSubstance, problem.Kind);
        Assert.True(problem.Suggestions.Count >= 2);
        Assert.NotEmpty(problem.Values);
    }

    /// <summary>Every unit and basis under every key of targets and of a water: read or reported, never thrown.</summary>
    [Fact]
    public void TargetsOfAnyUnitAreReadOrReported()
    {
        string[] keys = ["N", "NO3-N", "NH4-N", "P", "K", "Ca", "Mg", "S", "Fe", "B", "Si", "Cl", "Na", "Ni", "pH", "EC"];
        string[] units = ["mg/L", "mmol/L", "meq/L", "grains/gal", "gpg", "°dH", "°fH", "ppm", "mS/cm", "dS/m", "%", "% w/v", "M", "g/100 mL", "oz/100 US gal", "drops/L", "tbsp/L", "", "mol", "eq/L", "lb", "°C", "µg/L", "mg/kg", "1:100"];
        string[] tails = ["", " as CaCO3", " as P2O5", " ± 5 %", "..7 mg/L"];
        var members = keys.SelectMany(k => units.SelectMany(u => tails.SelectMany(t => new[] { (k, $"\"5 {u}{t}\""), (k, $"\"-1{u}{t}\"") }))).Concat(keys.SelectMany(k => new[] { (k, "5"), (k, "1e400"), (k, "null"), (k, "[]"), (k, "\"\"") }));
        foreach (var (key, value) in members)
        {
            var shop = InMemoryShop.Of(
                ("r.recipe.json", $$"""{"format": 1, "final": "10 L", "volume": "made up", "doses": [{"add": "KNO3", "amount": "1 g"}], "targets": {"{{key}}": {{value}} } }"""),
                ("p.profile.json", $$"""{"format": 1, "name": "p", "elements": {"{{key}}": {"sufficient": {{value}} } } }"""),
                ("w.water.json", $$"""{"format": 1, "hardness": {{value}}, "alkalinity": {{value}}, "ions": {"{{key}}": {{value}} } }"""));
            Assert.NotNull(shop.Load());
        }
    }

    private static Substance Product(string label)
    {
        var shop = InMemoryShop.Of(("bag.substances.json", $$"""{"format": 1, "substances": [{"id": "bag", "label": {"basis": "oxide", "nitrogen": {"nitrate": "5 %"}, "K2O": "20 %", {{label}} } }]}"""));
        var workspace = shop.Load();
        Assert.Empty(workspace.Problems);
        return workspace.SubstanceFiles.Single().Substances.Single().Substance;
    }

    private static double Moles(Substance substance, string component) => substance.Dissolves.Where(d => d.Component == component).Sum(d => d.MolesPerGram);
}
