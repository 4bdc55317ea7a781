using RecipeLint.Recipes.Tests.Documents;

namespace RecipeLint.Recipes.Tests.Files;

public sealed class DrawnOnTests
{
    /// <summary>
    /// 400 stocks that all draw on each other took 43 s: what each follows from was gathered to the end. What draws on more than 64 files is given up.
    /// </summary>
    [Fact]
    public void WhatDrawsOnTooMuchIsNotKnownAgain()
    {
        const int all = 100;
        var shop = new InMemoryShop();
        for (var i = 0; i < all; i++)
        {
            var drawn = string.Concat(Enumerable.Range(i + 1, all - i - 1).Select(j => $$"""{"add": "{{Name(j)}}", "amount": "1 mL"}, """));
            shop.Add(Name(i), $$"""{"format": 1, "makes": "1 L", "steps": [{{drawn}}{"topUp": "1 L"}]}""");
        }

        var workspace = shop.Load();
        Assert.Null(workspace.WithDrawnOn(Name(0)));
        Assert.Null(workspace.WithDrawnOn(Name(all - 65)));
        Assert.Equal(64, workspace.WithDrawnOn(Name(all - 64))!.Count);
        Assert.Equal([Name(97), Name(98), Name(99)], workspace.WithDrawnOn(Name(97))!);
        Assert.Equal([Name(99)], workspace.WithDrawnOn(Name(99))!);

        static string Name(int number) => $"s{number:00}.stock.json";
    }
}
