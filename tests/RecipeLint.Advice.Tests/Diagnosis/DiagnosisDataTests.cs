using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Advice.Tests.Diagnosis;

public sealed class DiagnosisDataTests
{
    [Fact]
    public void EveryCauseHasASourceALookAndAWayOut() => Assert.All(DiagnosisData.Causes, c =>
    {
        Assert.NotEmpty(c.Source);
        Assert.NotEmpty(c.Often);
        Assert.NotEmpty(c.RescueSay);
        Assert.NotEmpty(c.Change);
        Assert.Empty(c.Often.Intersect(c.Sometimes).Concat(c.Often.Intersect(c.Never)).Concat(c.Sometimes.Intersect(c.Never)));
    });

    [Fact]
    public void EverySolidOfACauseIsInTheConstantsAndHasOneCause()
    {
        Assert.All(DiagnosisData.Causes.SelectMany(c => c.Solids), s => Assert.NotNull(ConstantSet.Product.FindSolid(s)));
        Assert.All(DiagnosisData.Causes.SelectMany(c => c.Solids).GroupBy(s => s), g => Assert.Single(g));
    }

    /// <summary>A stock must not drop something the diagnosis has never heard of.</summary>
    [Fact]
    public void EverySolidThatFormsReadilyHasACause()
    {
        string[] notInNutrientStocks = ["Co(OH)2", "Ni(OH)2", "Al(OH)3 (amorphous)", "Ca2P2O7", "Antarcticite", "Bischofite", "Kalicinite", "Glycine",
            "Calcium lactate pentahydrate", "Sulfamic acid"];
        var owned = DiagnosisData.Causes.SelectMany(c => c.Solids).ToHashSet(StringComparer.Ordinal);

        var missing = ConstantSet.Product.Solids
            .Where(s => s.Role is SolidRole.FormsReadily or SolidRole.SolubleSalt && !owned.Contains(s.Name))
            .Select(s => s.Name)
            .Except(notInNutrientStocks);

        Assert.Empty(missing);
    }

    [Fact]
    public void KinAreSigns() => Assert.All(Vocabulary.Signs.SelectMany(s => s.Kin), k => Assert.True(Vocabulary.Signs.Any(s => s.Id == k), k));
}
