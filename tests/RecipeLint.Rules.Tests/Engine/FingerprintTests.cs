using System.Security.Cryptography;
using System.Text;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Engine;

public sealed class FingerprintTests
{
    private static Finding Finding(string pointer = "/steps/3", string idPath = "steps/edta", string message = "a", string file = "a.stock.json", string rule = "RL0004") =>
        new()
        {
            Rule = RuleBook.Find(rule)!,
            Level = Level.Error,
            Certainty = Certainty.Computed,
            Place = new Place(file, new JsonPointer(pointer)),
            IdPath = idPath,
            Told = new(message),
        };

    [Fact]
    public void IsTheSameWhenStepsMoveAndNumbersChange()
    {
        Assert.Equal(Fingerprint.Of(Finding()), Fingerprint.Of(Finding(pointer: "/steps/7", message: "b")));
    }

    [Fact]
    public void DiffersByRuleFileAndIds()
    {
        string[] prints =
        [
            Fingerprint.Of(Finding()),
            Fingerprint.Of(Finding(rule: "RL0005")),
            Fingerprint.Of(Finding(file: "b.stock.json")),
            Fingerprint.Of(Finding(idPath: "steps/edta/amount")),
        ];
        Assert.Equal(4, prints.Distinct().Count());
    }

    /// <summary>Baselines of shops hold these; a change of the recipe for them reopens every accepted finding.</summary>
    [Fact]
    public void NeverChanges()
    {
        var expected = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes("RL0004\na.stock.json\nsteps/edta")))[..32];
        Assert.Equal(expected, Fingerprint.Of(Finding()));
        Assert.Matches("^[0-9a-f]{32}$", expected);
    }
}
