using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Tests;

/// <summary>A shop's own *.profile.json: read, laid over a built-in profile, found by name or file.</summary>
public sealed class ShopProfileTests
{
    private const string Own = """
        {"format": 1, "name": "winter-lettuce", "extends": "lettuce", "source": "own trials",
         "EC": "1.1..1.6 mS/cm",
         "elements": {"N": {"range": "110..160 mg/L"}, "P": {"range": "60..120 mg/L as P2O5"}, "Cu": {"toxicAbove": "0.2 mg/L", "source": "leaf analysis"}},
         "ratios": [{"of": "K", "to": "Ca", "range": "1.0..2.0"}],
         "stages": {"Heading": {"pH": "5.5..5.9", "elements": {"K": {"range": "200..300 mg/L"}}}}}
        """;

    [Fact]
    public void WhatTheFileSaysHoldsAndTheRestComesFromTheBase()
    {
        var profile = Recipe("\"crop\": \"winter-lettuce\"", ("profiles/w.profile.json", Own), ("recipelint.json", "{}")).Profile;
        var lettuce = ProfileLibrary.Find("lettuce")!;

        Assert.Equal("winter-lettuce", profile.Name);
        Assert.Equal((1.1, 1.6), profile.Ec);
        Assert.Equal(lettuce.Ph, profile.Ph);
        Assert.Equal((110, 160), (profile.Find("N")!.SufficientLow, profile.Find("N")!.SufficientHigh));
        Assert.Equal("own trials", profile.Find("N")!.Bounds["low"].Source);
        Assert.True(profile.Find("N")!.IsPractice);
        Assert.Equal(0.2, profile.Find("Cu")!.ToxicAbove);
        Assert.Equal("leaf analysis", profile.Find("Cu")!.Bounds["toxicAbove"].Source);
        Assert.Equal(lettuce.Find("Cu")!.SufficientHigh, profile.Find("Cu")!.SufficientHigh);
        Assert.Equal(lettuce.Find("Mg")!.SufficientLow, profile.Find("Mg")!.SufficientLow);
        Assert.Equal((1.0, 2.0), profile.Ratios.Where(r => r is { Numerator: "K", Denominator: "Ca" }).Select(r => (r.Low, r.High)).Single());
    }

    // P2O5 holds 2 x 30.974 of 141.943 g/mol phosphorus: 60 mg/L of it are 26.186 mg/L P (CIAAW weights).
    [Fact]
    public void ABasisIsTurnedIntoTheElement() =>
        Assert.Equal(26.186, Recipe("\"crop\": \"winter-lettuce\"", ("w.profile.json", Own)).Profile.Find("P")!.SufficientLow!.Value, 3);

    [Fact]
    public void AStageChangesItsOwnRowsAndWindowsOnly()
    {
        var profile = Recipe("\"crop\": \"winter-lettuce\", \"stage\": \"heading\"", ("w.profile.json", Own)).Profile;

        Assert.Equal("Heading", profile.Stage);
        Assert.Equal((5.5, 5.9), profile.Ph);
        Assert.Equal((1.1, 1.6), profile.Ec);
        Assert.Equal(200, profile.Find("K")!.SufficientLow);
        Assert.Equal(110, profile.Find("N")!.SufficientLow);
    }

    /// <summary>Bounds of the base that a range of its own leaves out of order are dropped: plants of this shop do not go short at what it gives them.</summary>
    [Fact]
    public void NoBoundOfTheBaseIsLeftOutOfOrder()
    {
        const string low = """{"format": 1, "name": "w", "elements": {"K": {"range": "20..40 mg/L"}}}""";
        var potassium = Recipe("\"crop\": \"w\"", ("w.profile.json", low)).Profile.Find("K")!;

        Assert.True(ProfileLibrary.Generic.Find("K")!.DeficientBelow > 20);
        Assert.Null(potassium.DeficientBelow);
        Assert.Null(potassium.Upper);
        Assert.Equal((20, 40), (potassium.SufficientLow, potassium.SufficientHigh));
    }

    [Fact]
    public void ItIsFoundByItsFileAsWell() =>
        Assert.Equal("winter-lettuce", Recipe("\"crop\": \"profiles/w.profile.json\"", ("profiles/w.profile.json", Own)).Profile.Name);

    [Fact]
    public void TheSettingsMayNameItForRecipesWithoutACrop() =>
        Assert.Equal("winter-lettuce", Recipe(null, ("w.profile.json", Own), ("recipelint.json", """{"profile": "winter-lettuce"}""")).Profile.Name);

    [Theory]
    [InlineData("""{"format": 1, "name": "lettuce"}""", ProblemKind.DuplicateKey)]
    [InlineData("""{"format": 1, "name": "w", "extends": "letuce"}""", ProblemKind.UnknownProfile)]
    [InlineData("""{"format": 1, "name": "w", "elements": {"K": {"rang": "20..40 mg/L"}}}""", ProblemKind.UnknownKey)]
    [InlineData("""{"format": 1, "name": "w", "elements": {"Kx": {"range": "20..40 mg/L"}}}""", ProblemKind.UnknownKey)]
    [InlineData("""{"format": 1, "name": "w", "elements": {"K": {"range": "40..20 mg/L"}}}""", ProblemKind.WrongShape)]
    [InlineData("""{"format": 1, "name": "w", "elements": {"K": {"range": "40 mg/L"}}}""", ProblemKind.ImplausibleAmount)]
    [InlineData("""{"format": 1, "name": "w", "elements": {"K": {"range": "20..40 mg/L", "toxicAbove": "30 mg/L"}}}""", ProblemKind.ImplausibleAmount)]
    [InlineData("""{"format": 1, "name": "w", "elements": {"K": {"range": "20..40"}}}""", ProblemKind.NumberWithoutUnit)]
    [InlineData("""{"format": 1, "name": "w", "pH": "5..15"}""", ProblemKind.ImplausibleAmount)]
    [InlineData("""{"format": 1, "name": "w", "ratios": [{"of": "Kalium", "to": "Ca", "range": "1..2"}]}""", ProblemKind.WrongShape)]
    public void WhatIsWrongWithItIsAFindingAtItsPlace(string text, ProblemKind kind)
    {
        var problem = Assert.Single(Load("\"crop\": \"lettuce\"", ("w.profile.json", text)).Problems);

        Assert.Equal(kind, problem.Kind);
        Assert.Equal("w.profile.json", problem.Place.File);
    }

    [Fact]
    public void TwoOfOneNameAreAFinding()
    {
        var workspace = Load("\"crop\": \"w\"", ("a.profile.json", """{"format": 1, "name": "w"}"""), ("b.profile.json", """{"format": 1, "name": "w"}"""));

        var problem = Assert.Single(workspace.Problems);
        Assert.Equal(ProblemKind.DuplicateKey, problem.Kind);
        Assert.Equal("b.profile.json", problem.Place.File);
    }

    private static RecipeFacts Recipe(string? crop, params (string Name, string Text)[] files)
    {
        var workspace = Load(crop, files);
        Assert.Empty(workspace.Problems);
        return Analyzer.Analyse(workspace).Recipes.Single();
    }

    private static Workspace Load(string? crop, params (string Name, string Text)[] files)
    {
        var recipe = $$"""{"format": 1, {{(crop is null ? "" : crop + ", ")}}"final": "100 L", "volume": "made up", "doses": [{"add": "KNO3", "amount": "20 g", "assay": "99 %"}]}""";
        var tree = new MemoryFileTree("/shop").AddFolder("/shop").Add("tank.recipe.json", recipe);
        foreach (var (name, text) in files)
        {
            tree.Add(name, text);
        }

        return WorkspaceLoader.Load(tree, ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames });
    }
}
