using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What a file does not say of how a stock is kept is said to be assumed, in every command.</summary>
public sealed class KeptWordsTests
{
    private const string Salt = """
        {"format": 1, "name": "Salt", "makes": "1 L", "dose": "10 mL/L", KEEP"steps": [{"pour": "700 mL"},
          {"add": "potassium-nitrate", "amount": "240 g", "assay": "99 %", "id": "salt"}, {"topUp": "1 L"}]}
        """;

    private const string Sites = """{"format": 1, "sites": [{"name": "shed", "at": "3..24 °C"}]}""";

    [Theory]
    [InlineData("", "", "at 5 °C, the coldest assumed, as nothing says how it is kept", "5 to 30 °C (assumed: nothing says how it is kept)")]
    [InlineData("", Sites, "at 3 °C, the coldest of the shop's sites, assumed as its file names none", "3 to 24 °C (assumed from the sites of the shop: its file does not say)")]
    [InlineData("\"keep\": {\"at\": \"4..22 °C\"}, ", Sites, "at 4 °C, the coldest it is kept at", "4 to 22 °C")]
    [InlineData("\"keep\": {\"for\": \"1 month\"}, ", "", "at 5 °C, the coldest assumed, as nothing says how it is kept", "5 to 30 °C (assumed: nothing says how it is kept) for ")]
    public void WhoSaysSoIsSaid(string keep, string settings, string coldest, string span)
    {
        using var scratch = new Scratch();
        scratch.Write("salt.stock.json", Salt.Replace("KEEP", keep, StringComparison.Ordinal));
        if (settings.Length > 0)
        {
            scratch.Write("recipelint.json", settings);
        }

        string Said(params string[] arguments) => string.Join(
            ' ', Cli.RunIn(scratch.Path, null, arguments).Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

        Assert.Contains(coldest, Said("check", "salt.stock.json"), StringComparison.Ordinal);
        Assert.Contains(coldest, Said("diagnose", "salt.stock.json", "--seen", "clear crystals"), StringComparison.Ordinal);
        Assert.Contains(coldest, Said("explain", "RL0111", "--for", "salt.stock.json"), StringComparison.Ordinal);
        Assert.Contains($"kept at {span.Replace(" for ", "", StringComparison.Ordinal)}", Said("stretch", "salt.stock.json"), StringComparison.Ordinal);
        Assert.Contains($"Kept at {span}", Said("show", "salt.stock.json"), StringComparison.Ordinal);
        if (keep.Length == 0)
        {
            Assert.DoesNotContain("it is kept at", Said("check", "salt.stock.json") + Said("diagnose", "salt.stock.json", "--seen", "crystals"), StringComparison.Ordinal);
        }
    }
}
