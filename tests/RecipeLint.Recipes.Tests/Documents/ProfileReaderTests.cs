using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>Profiles of a shop's own: what can be used is read, what cannot is reported and left out.</summary>
public sealed class ProfileReaderTests
{
    private static InMemoryShop Shop(string members) =>
        new InMemoryShop { Options = new() { Profiles = ["lettuce", "tomato", "generic"] } }
            .Add("recipelint.json", "{}").Add("own.profile.json", $$"""{"format": 1, {{members}} }""");

    private static ProfileDocument Read(string members) => Assert.Single(Shop(members).Load().Profiles);

    [Fact]
    public void AProfileIsReadWithEverythingInIt()
    {
        var profile = Assert.Single(Shop("""
            "name": "berries", "extends": "tomato", "source": "invented", "practice": false, "EC": "1.2..1.8 mS/cm", "pH": "5.5..6.2",
            "elements": {
              "K": {"deficientBelow": "100 mg/L", "range": "150..250 mg/L", "upTo": "300 mg/L", "toxicAbove": "500 mg/L", "source": "trial"},
              "note": "n"},
            "ratios": [
              {"of": "K", "to": "Ca + Mg", "range": "0.5..1.2", "by": "meq", "source": "book"}, {"of": "N", "to": "K", "range": "0..2"}],
            "stages": {"note": "n", "fruit": {"EC": "2..3 mS/cm", "elements": {"N": {"upTo": "200 mg/L"}}}}
            """).Clean().Profiles);
        Assert.Equal(("own.profile.json", "berries", "tomato", "invented", false),
            (profile.File, profile.Name, profile.Extends!.Value, profile.Source, profile.IsPractice));
        Assert.Equal("/name", profile.NamePlace.Pointer.Value);
        Assert.Equal((1.2, 1.8), (profile.Any.Ec!.Value.Low, profile.Any.Ec.Value.High));
        Assert.Equal((5.5, 6.2), (profile.Any.Ph!.Value.Low, profile.Any.Ph.Value.High));
        Assert.Equal("/pH", profile.Any.Ph.Place.Pointer.Value);
        var k = Assert.Single(profile.Any.Elements);
        Assert.Equal(("K", 100, 150, 250, 300, 500, "trial"),
            (k.Key, k.DeficientBelow, k.Range!.Value.Low, k.Range.Value.High, k.UpTo, k.ToxicAbove, k.Source));
        Assert.Equal([("K", "Ca+Mg", "meq", 0.5, 1.2, "book"), ("N", "K", "mass", 0, 2, null)],
            profile.Ratios.Select(r => (r.Of, r.To, r.By, r.Range.Low, r.Range.High, r.Source)));
        var stage = Assert.Single(profile.Stages);
        Assert.Equal(("fruit", 2.0, 200.0), (stage.Key, stage.Value.Ec!.Value.Low, Assert.Single(stage.Value.Elements).UpTo));
    }

    [Fact]
    public void WhatIsLeftUnsaidIsThePracticeOfTheShop()
    {
        var profile = Read("""  "EC": "1..2 mS/cm" """);
        Assert.Equal(("own", true, null, null), (profile.Name, profile.IsPractice, profile.Extends, profile.Source));
        Assert.Equal(Place.Whole("own.profile.json"), profile.NamePlace);
        Assert.Null(profile.Any.Ph);
        Assert.Empty(profile.Any.Elements);
        Assert.Empty(profile.Stages);
        Assert.Empty(profile.Ratios);
    }

    [Theory]
    [InlineData("\"EC\": «\"2 mS/cm\"»")]
    [InlineData("\"EC\": «\"-1..1 mS/cm\"»")]
    [InlineData("\"pH\": «\"5..15\"»")]
    [InlineData("\"elements\": {\"K\": {\"range\": «\"200 mg/L\"»}}")]
    [InlineData("\"elements\": {\"K\": «{\"range\": \"100..200 mg/L\", \"upTo\": \"150 mg/L\"}»}")]
    [InlineData("\"elements\": {\"K\": «{\"deficientBelow\": \"300 mg/L\", \"toxicAbove\": \"150 mg/L\"}»}")]
    [InlineData("\"ratios\": [{\"of\": \"K\", \"to\": \"Ca\", \"range\": «\"1..1\"»}]")]
    public void BoundsThatAreNoneAreReportedWhereTheyStandAndLeftOut(string members)
    {
        Shop(members).Single(ProblemKind.ImplausibleAmount);
        var profile = Read(members.Replace("«", "", StringComparison.Ordinal).Replace("»", "", StringComparison.Ordinal));
        Assert.Null(profile.Any.Ec);
        Assert.Null(profile.Any.Ph);
        Assert.All(profile.Any.Elements, e => Assert.Null(e.Range));
        Assert.Empty(profile.Ratios);
    }

    /// <summary>At the edge: a window may begin at nothing and a pH end at 14; bounds may touch.</summary>
    [Theory]
    [InlineData("\"EC\": \"0..1 mS/cm\"")]
    [InlineData("\"pH\": \"0..14\"")]
    [InlineData("\"EC\": \"15..20 mS/cm\"")]
    [InlineData("\"elements\": {\"K\": {\"range\": \"100..200 mg/L\", \"upTo\": \"200 mg/L\"}}")]
    public void BoundsAtTheEdgeAreKept(string members) => Shop(members).Clean();

    [Theory]
    [InlineData("\"name\": «\"lettuce\"»", ProblemKind.DuplicateKey)]
    [InlineData("\"ratios\": [{\"of\": «\"K+Xx\"», \"to\": \"Ca\", \"range\": \"1..2\"}]", ProblemKind.WrongShape)]
    [InlineData("\"ratios\": [{\"of\": \"K\", \"to\": «\"Calcium\"», \"range\": \"1..2\"}]", ProblemKind.WrongShape)]
    public void NamesThatAreTakenOrUnknownAreReported(string members, ProblemKind kind) => Shop(members).Single(kind);

    [Fact]
    public void ABaseThatNobodyKnowsIsReportedAndNotTaken()
    {
        var workspace = Shop("""  "extends": "tomatoe" """).Load();
        Assert.Null(Assert.Single(workspace.Profiles).Extends);
        var problem = Assert.Single(workspace.Problems);
        Assert.Equal("/extends", problem.Place.Pointer.Value);
        Assert.Contains("tomato", problem.Suggestions);
    }

    [Fact]
    public void OfElementsOnlyThoseOfAProfileAreRead() =>
        Assert.Equal(["Fe"], Read("""  "elements": {"Fe": {"upTo": "5 mg/L"}, "note": "x"} """).Any.Elements.Select(e => e.Key));
}
