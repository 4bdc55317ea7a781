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

    /// <summary>
    /// What is told of a bottle adds to what its contents say (<see cref="Hazard.IsNoticed"/>), so a suspicion is held against the possible
    /// alone; where the contents themselves are for leaving, it may forbid no more than they do.
    /// </summary>
    [Fact]
    public void AHigherGradeForbidsNoLess()
    {
        var less = new List<string>();
        foreach (var kind in Enum.GetValues<HazardKind>())
        {
            var (possible, suspected, present, grave) =
                (Of(kind, HazardGrade.Possible), Of(kind, HazardGrade.Suspected), Of(kind, HazardGrade.Present), Of(kind, HazardGrade.Grave));

            less.AddRange(possible.Except(present).Select(a => $"{kind}: present allows {a}, possible does not"));
            less.AddRange(present.Except(grave).Select(a => $"{kind}: grave allows {a}, present does not"));
            if (suspected.Count > 0)
            {
                less.AddRange(possible.Except(suspected).Select(a => $"{kind}: suspected allows {a}, possible does not"));
            }

            if (present.IsSupersetOf(["put", "Filter"]))
            {
                less.AddRange(suspected.Except(present).Select(a => $"{kind}: present allows {a}, suspected does not"));
            }
        }

        Assert.True(less.Count == 0, string.Join('\n', less));

        static HashSet<string> Of(HazardKind kind, HazardGrade grade)
        {
            var hazard = new Hazard(kind, grade, null, null, "", 0, 0, "");
            return [.. Enum.GetValues<VesselAction>().Where(hazard.Forbids).Select(a => a.ToString()), .. hazard.ForbidsPutting ? ["put"] : Array.Empty<string>()];
        }
    }

    /// <summary>A sentence that many texts share is written out wherever it is named.</summary>
    [Fact]
    public void NoTextShowsTheNameOfASharedSentence() => Assert.All(
        HazardText.All, t => Assert.DoesNotContain('{', string.Concat(t.Name, t.Happens, t.Notice, t.First, t.Help, t.When, t.Instead)));

    /// <summary>Who fled a gas is not sent back by a nose that no longer smells it.</summary>
    [Fact]
    public void NoGasLetsAnybodyBackInByTheNose() => Assert.All(
        HazardText.All.Where(t => t.First.Contains("do not cap, shake, move or dilute it", StringComparison.Ordinal)),
        t => Assert.Contains("Nobody goes back in until", t.First, StringComparison.Ordinal));

    [Fact]
    public void EveryLimitHasAUnitAndASource() => Assert.All(HazardData.Limits, limit =>
    {
        Assert.True(limit.Value > 0, limit.Name);
        Assert.NotEmpty(limit.Unit);
        Assert.NotEmpty(limit.Source);
        Assert.Contains(limit.Confidence, new[] { "found", "memory", "derived", "practice" });
    });
}
