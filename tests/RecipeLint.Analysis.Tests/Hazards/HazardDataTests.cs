using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Tests.Hazards;

public sealed class HazardDataTests
{
    [Fact]
    public void EverySubstanceOfTheCatalogueNamesARowAndNoRowIsIdle()
    {
        Assert.Equal(
            [.. HazardData.Rows.Select(r => r.Id).Order(StringComparer.Ordinal)],
            SubstanceCatalogue.BuiltIn.Substances.Select(s => s.BehavesAs).Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public void EveryRowHasRolesAReasonAndASource()
    {
        Assert.All(HazardData.Rows, row =>
        {
            Assert.NotEmpty(row.Roles);
            Assert.True(row.Roles.Count == 1 || !row.Roles.Contains(HazardRole.None), row.Why);
            Assert.NotEmpty(row.Why);
            Assert.NotEmpty(row.Source);
        });
    }

    /// <summary>What is told from composition for a shop's own substance must not fall behind the row of the same substance.</summary>
    [Fact]
    public void TheReadingOfCompositionFindsTheDangerousRolesOfTheCatalogue()
    {
        HazardRole[] dangerous =
        [
            HazardRole.Acid, HazardRole.Alkali, HazardRole.Ammonium, HazardRole.Amine, HazardRole.Carbonate, HazardRole.Hypochlorite, HazardRole.Peroxide,
            HazardRole.PeroxideCatalyst, HazardRole.NitricAcid, HazardRole.HydrochloricAcid, HazardRole.AcidSalt, HazardRole.Fermentable,
        ];
        var missed = SubstanceCatalogue.BuiltIn.Substances
            .Where(s => s.Kind != SubstanceKind.Dye)
            .SelectMany(s => dangerous.Where(r => HazardRoles.Of(s).Contains(r) && !Has(HazardRoles.Of(s with { Id = "shop-" + s.Id }), r)).Select(r => $"{s.Id}: {r}"))
            .ToList();

        Assert.True(missed.Count == 0, string.Join('\n', missed));

        static bool Has(IReadOnlySet<HazardRole> roles, HazardRole role) => roles.Contains(role) || (role == HazardRole.AcidSalt && roles.Contains(HazardRole.Acid));
    }

    [Fact]
    public void EveryKindHasWordsWhatToDoAndWhenToCallForHelp()
    {
        Assert.Equal(Enum.GetValues<HazardKind>(), HazardText.All.Select(t => t.Kind).Order());
        Assert.All(HazardText.All, text =>
        {
            Assert.NotEmpty(text.Happens);
            Assert.NotEmpty(text.Notice);
            Assert.EndsWith(".", text.First, StringComparison.Ordinal);
            Assert.EndsWith(".", text.Help, StringComparison.Ordinal);
            Assert.NotEmpty(text.Source);
        });
        Assert.Contains("afety data sheets", HazardText.Deference, StringComparison.Ordinal);
        Assert.Contains("local codes", HazardText.Deference, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryLimitHasAUnitAndASource() => Assert.All(HazardData.Limits, limit =>
    {
        Assert.True(limit.Value > 0, limit.Name);
        Assert.NotEmpty(limit.Unit);
        Assert.NotEmpty(limit.Source);
        Assert.Contains(limit.Confidence, new[] { "found", "memory", "derived", "practice" });
    });
}
