using System.Text.Json;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Tests.Hazards;

/// <summary>
/// What people say they poured and what they write into a file are the same words: a name that the diagnosis takes for bleach is bleach to
/// the gate as well.
/// </summary>
public sealed class EverydayNameTests
{
    /// <summary>What decides over people; that a phosphoric acid is no nitric acid too does not.</summary>
    private static readonly HazardRole[] Deciding =
    [
        HazardRole.Hypochlorite, HazardRole.Peroxide, HazardRole.Acid, HazardRole.Alkali, HazardRole.AmmoniaWater, HazardRole.Ammonium,
        HazardRole.Sulfide, HazardRole.StrongOxidiser, HazardRole.Nitrite, HazardRole.Sulfite, HazardRole.Cyanide,
    ];

    /// <summary>Words that stand inside too many others to be looked for in a name; alone in a file they are contents nobody can name.</summary>
    private static readonly string[] TooShort = ["ash", "cement", "silica", "silicate"];

    public static TheoryData<string, string> Words()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "RecipeLint.sln")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        using var data = JsonDocument.Parse(File.ReadAllText(
            Path.Combine(folder, "src/RecipeLint.Analysis/Observations/Data/interventions.json")));
        var rows = new TheoryData<string, string>();
        foreach (var row in data.RootElement.GetProperty("reagents").EnumerateArray())
        {
            var stands = row.TryGetProperty("substance", out var id) ? id.GetString()! : row.GetProperty("product").GetString()!;
            foreach (var word in (stands.Length > 0 ? row.GetProperty("words").EnumerateArray() : default).Select(w => w.GetString()!)
                .Except(TooShort))
            {
                rows.Add(word, stands);
            }
        }

        return rows;
    }

    /// <summary>Names abroad, formulas and things of metal that nobody catalogues: what a file says of them is heard.</summary>
    [Theory]
    [InlineData("KMnO4", HazardRole.StrongOxidiser)]
    [InlineData("KCN", HazardRole.Cyanide)]
    [InlineData("Na2S", HazardRole.Sulfide)]
    [InlineData("NaClO3", HazardRole.StrongOxidiser)]
    [InlineData("NaN3", HazardRole.Azide)]
    [InlineData("CaC2", HazardRole.WaterReactive)]
    [InlineData("Chlorreiniger", HazardRole.Hypochlorite)]
    [InlineData("Essigessenz", HazardRole.Acid)]
    [InlineData("Salmiakgeist", HazardRole.Ammonium)]
    [InlineData("Harnstoff", HazardRole.Amine)]
    [InlineData("Abflussreiniger", HazardRole.Alkali)]
    [InlineData("Entkalker", HazardRole.Acid)]
    [InlineData("Natriumsulfid", HazardRole.Sulfide)]
    [InlineData("potassium monopersulfate", HazardRole.StrongOxidiser)]
    [InlineData("zinc granules", HazardRole.BareMetal)]
    [InlineData("aluminium can", HazardRole.BareMetal)]
    [InlineData("steel nails", HazardRole.BareMetal)]
    [InlineData("copper wire", HazardRole.Reductant)]
    public void ANameThatNobodyCataloguesTellsWhatItDoes(string name, HazardRole role)
    {
        var named = HazardRoles.Named(name);
        Assert.NotNull(named);
        Assert.Contains(role, HazardRoles.Of(named));
        Assert.Contains(HazardRole.Unknown, HazardRoles.Of(named));
    }

    [Theory]
    [InlineData("zinc sulfate granules")]
    [InlineData("iron chelate powder")]
    [InlineData("copper sulfate")]
    [InlineData("magnesium flakes")]
    [InlineData("PK 13-14")]
    [InlineData("Messing")]
    public void AHarmlessNameTellsNothingOfMetal(string name) =>
        Assert.True(HazardRoles.Named(name) is not { } named || !HazardRoles.Of(named).Overlaps([HazardRole.BareMetal, HazardRole.Acid]));

    [Theory]
    [MemberData(nameof(Words))]
    public void WhatTheDiagnosisUnderstandsTheGateUnderstands(string word, string stands)
    {
        var meant = SubstanceCatalogue.BuiltIn.ById(stands) ?? HazardRoles.Named(stands)!;
        var wanted = HazardRoles.Of(meant).Intersect(Deciding).ToHashSet();
        IEnumerable<Substance> read = SubstanceCatalogue.BuiltIn.Find(word) switch
        {
            SubstanceLookup.Found found => [found.Substance],
            SubstanceLookup.Ambiguous several => several.Candidates,
            _ => HazardRoles.Named(word) is { } named ? [named] : [],
        };

        Assert.True(wanted.Count == 0 || read.Any(r => wanted.Overlaps(HazardRoles.Of(r))), $"'{word}' does not read as '{stands}'");
    }
}
