using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What a hostile reading found: commands that contradict each other, dangers nobody named, words of a diagnosis misread.</summary>
public sealed class DangerReviewTests
{
    /// <summary>A person at risk is an error, and no command goes on where the check has one.</summary>
    [Theory]
    [InlineData("nitric-65", "300 mL", "sucrose", "50 g")]
    [InlineData("sodium-nitrite", "50 g", "ammonium-nitrate", "100 g")]
    [InlineData("nitric-60", "200 mL", "ferrous-sulfate-7h2o", "100 g")]
    [InlineData("sodium-hypochlorite-12.5", "100 mL", "potassium-iodide", "20 g")]
    [InlineData("potassium-iodide", "1 g", "calcium-hypochlorite", "20 g")]
    [InlineData("white powder", "20 g", "nitric-60", "50 mL")]
    [InlineData("aluminium phosphide tablets", "10 g", "potassium-nitrate", "20 g")]
    [InlineData("calcium carbide", "10 g", "potassium-nitrate", "20 g")]
    [InlineData("iodine crystals", "10 g", "ammonia-25", "100 mL")]
    [InlineData("hydrofluoric acid", "20 mL", "potassium-nitrate", "20 g")]
    [InlineData("chloride of lime", "20 g", "ammonium-sulfate", "20 g")]
    [InlineData("magnesium turnings", "10 g", "citric-acid-h2o", "50 g")]
    public void WhatOneCommandRefusesEveryCommandCallsAnError(string one, string much, string other, string more)
    {
        foreach (var command in new[] { "check", "order", "stretch", "proof" })
        {
            var answer = Run(Stock(one, much, other, more), command);

            Assert.True(answer.Code == 1, $"{command} ends with {answer.Code}: {answer.Out}{answer.Error}");
            Assert.DoesNotContain("best there is", answer.Out, StringComparison.Ordinal);
        }

        Assert.NotEqual(0, Run(Stock(one, much, other, more), "split").Code);
        Assert.Contains("error RL07", Run(Stock(one, much, other, more), "check").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("potassium-silicate-40be", "100 mL", "monopotassium-phosphate", "50 g")]
    [InlineData("humic-acid", "100 mL", "phosphoric-85", "20 mL")]
    [InlineData("phosphoric-85", "20 mL", "ferrous-sulfate-7h2o", "20 g")]
    public void OrderAndStretchEndAsTheCheckDoes(string one, string much, string other, string more)
    {
        foreach (var command in new[] { "check", "order", "stretch" })
        {
            Assert.Equal(1, Run(Stock(one, much, other, more), command).Code);
        }
    }

    [Theory]
    [InlineData("calcium-nitrate-4h2o", "100 g", "potassium-nitrate", "50 g")]
    [InlineData("monopotassium-phosphate", "20 g", "magnesium-sulfate-7h2o", "50 g")]
    [InlineData("nitric-38", "10 mL", "calcium-nitrate-4h2o", "100 g")]
    [InlineData("manganese-sulfate-h2o", "2 g", "potassium-iodide", "0.1 g")]
    [InlineData("ammonium-nitrate", "50 g", "potassium-chloride", "50 g")]
    public void WhatIsSoundEndsWithNothing(string one, string much, string other, string more)
    {
        foreach (var command in new[] { "check", "order", "stretch", "split" })
        {
            var answer = Run(Stock(one, much, other, more), command);
            Assert.True(answer.Code == 0, $"{command}: {answer.Out}{answer.Error}");
            Assert.DoesNotContain("RL07", answer.Out, StringComparison.Ordinal);
        }
    }

    /// <summary>What a check calls wrong in one bottle is not proposed as one, however clear it is while it is fresh.</summary>
    [Theory]
    [InlineData("humic-acid", "100 mL", "phosphoric-85", "20 mL", 0)]
    [InlineData("phosphoric-85", "20 mL", "ferrous-sulfate-7h2o", "20 g", 0)]
    public void NoPartIsProposedThatTheCheckCallsAnError(string one, string much, string other, string more, int code)
    {
        var answer = Run(Stock(one, much, other, more), "split");

        Assert.Equal(code, answer.Code);
        Assert.DoesNotContain("1 part ", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("calls it wrong", Before(answer.Out, "Why not fewer"), StringComparison.Ordinal);
    }

    /// <summary>Sugar that is kept warm unguarded bursts any bottle: nothing is proposed, and why is said.</summary>
    [Fact]
    public void WhatNoGroupingMendsIsNotSplit()
    {
        var answer = Run("""
            {"format": 1, "name": "s", "makes": "1 L", "dose": "1:100", "keep": {"at": "8..25 °C", "for": "90 days", "light": "dark"},
              "steps": [{"pour": "0.6 L", "of": "distilled"}, {"add": "sucrose", "amount": "400 g"}, {"topUp": "1 L", "of": "distilled"}]}
            """, "split");

        Assert.Equal(1, answer.Code);
        Assert.Contains("is not split", answer.Out, StringComparison.Ordinal);
        Assert.Contains("RL0710", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Part A", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>Neat acid too weak to boil still burns where it splashes: 2.9 K of warming, 4.0 K, and none worth a word.</summary>
    [Theory]
    [InlineData("nitric-38", "400 mL", "warning RL0701")]
    [InlineData("sulfuric-37", "400 mL", "warning RL0701")]
    [InlineData("nitric-65", "400 mL", "error RL0701")]
    [InlineData("vinegar-10", "400 mL", null)]
    public void WaterOntoNeatAcidIsSaid(string acid, string much, string? finding)
    {
        var answer = Run($$"""
            {"format": 1, "name": "s", "makes": "1 L", "steps": [{"add": "{{acid}}", "amount": "{{much}}"}, {"topUp": "1 L", "of": "distilled"}]}
            """, "check");

        Assert.Equal(finding is not null, answer.Out.Contains("RL0701", StringComparison.Ordinal));
        Assert.Contains(finding ?? "", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("KI + bleach", "iodine")]
    [InlineData("potassium iodide 1 g + bleach 10 mL in 1 L", "iodine")]
    [InlineData("iodine + ammonia", "goes off at a touch")]
    [InlineData("aluminium phosphide + water", "phosphine")]
    [InlineData("calcium carbide + water", "a gas that burns")]
    [InlineData("sodium chlorite 10 g + citric acid 10 g in 1 L", "chlorine dioxide")]
    [InlineData("ammonium nitrate + aluminium powder", "burn")]
    public void ALineThatNamesTwoThatMustNotMeetIsRefused(string mix, string danger)
    {
        var answer = Cli.Run("dissolve", mix);

        Assert.NotEqual(0, answer.Code);
        Assert.Contains(danger, Flowing(answer.Out + answer.Error), StringComparison.Ordinal);
    }

    private static string Stock(string one, string much, string other, string more) => $$"""
        {"format": 1, "name": "s", "makes": "1 L", "dose": "1:100", "keep": {"at": "10..25 °C", "for": "2 months", "light": "dark"},
          "steps": [{"pour": "0.6 L", "of": "distilled"}, {"add": "{{Id(one)}}", "amount": "{{much}}"},
          {"add": "{{Id(other)}}", "amount": "{{more}}"}, {"stir": "until clear"}, {"topUp": "1 L", "of": "distilled"}]}
        """;

    private static readonly string[] Own =
    [
        "white powder", "aluminium phosphide tablets", "calcium carbide", "iodine crystals", "hydrofluoric acid", "chloride of lime",
        "magnesium turnings",
    ];

    private static string Id(string name) => name.Replace(' ', '-');

    private static Answer Run(string stock, string command)
    {
        using var scratch = new Scratch();
        scratch.Write("s.stock.json", stock);
        if (Own.Any(o => stock.Contains($"\"{Id(o)}\"", StringComparison.Ordinal)))
        {
            var own = Own.Where(o => stock.Contains($"\"{Id(o)}\"", StringComparison.Ordinal))
                .Select(o => $$"""{"id": "{{Id(o)}}", "name": "{{o}}", "unknownComposition": true, "form": "liquid", "density": "1.1 g/mL"}""");
            scratch.Write("own.substances.json", $$"""{"format": 1, "substances": [{{string.Join(", ", own)}}]}""");
        }

        return Cli.RunIn(scratch.Path, null, command, "s.stock.json");
    }

    private static string Before(string text, string mark) =>
        text.IndexOf(mark, StringComparison.Ordinal) is >= 0 and var at ? text[..at] : text;

    /// <summary>A text without the line breaks of its page.</summary>
    private static string Flowing(string text) =>
        string.Join(' ', text.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
}
