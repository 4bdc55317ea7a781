using System.Text.RegularExpressions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>
/// Of a solid of which nothing tells how it changes with temperature no command says coldest, warmest, warmer or colder: findings, repairs,
/// stretch, diagnose, proof, show and order are read sentence by sentence.
/// </summary>
public sealed partial class TemperatureWordTests
{
    private static readonly string[] Untold =
    [
        .. ConstantSet.Product.Solids.Where(s => s is { TemperatureKnown: false, Role: SolidRole.FormsReadily or SolidRole.SolubleSalt }).Select(s => s.Called.Split(" (")[0]),
    ];

    private static readonly string[][] Commands =
    [
        ["check", "a.stock.json", "--repairs"], ["stretch", "a.stock.json"], ["diagnose", "a.stock.json", "--seen", "white crystals"],
        ["proof", "a.stock.json", "--all"], ["show", "a.stock.json"], ["order", "a.stock.json"],
        ["explain", "salt-past-its-solubility", "--for", "a.stock.json"], ["explain", "any-other-solid", "--for", "a.stock.json"],
    ];

    [Theory]
    [InlineData("calcium pyrophosphate", "calcium-nitrate-4h2o", "20 g", "tetrapotassium-pyrophosphate", "20 g")]
    [InlineData("DTPA acid", "dtpa-acid", "20 g")]
    [InlineData("disodium zinc EDTA", "zn-edta", "800 g")]
    [InlineData("calcium borate", "borax-10h2o", "50 g", "calcium-nitrate-4h2o", "100 g")]
    [InlineData("trisodium citrate", "trisodium-citrate-2h2o", "650 g")]
    [InlineData("sodium iron EDTA", "fe-edta-na-3h2o", "250 g")]
    [InlineData("K-struvite", "magnesium-nitrate-6h2o", "30 g", "monopotassium-phosphate", "20 g", "potassium-hydroxide", "25 g")]
    public void NoSentenceSaysHowItChangesWithTemperature(string solid, params string[] additions)
    {
        var steps = string.Join(", ", additions.Chunk(2).Select(a => $$"""{"add": "{{a[0]}}", "amount": "{{a[1]}}"}"""));
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", $$"""
            {"format": 1, "makes": "1 L", "dose": "10 mL/L", "keep": {"at": "5..25 °C", "for": "30 days"}, "steps": [{"pour": "700 mL"}, {{steps}}, {"topUp": "1 L"}]}
            """);
        var said = false;
        foreach (var command in Commands)
        {
            var answer = Cli.RunIn(scratch.Path, null, command);
            Assert.InRange(answer.Code, 0, 2);
            foreach (var sentence in Sentences(answer.Out))
            {
                said |= sentence.Contains(solid, StringComparison.Ordinal) && (sentence.Contains("is not known", StringComparison.Ordinal)
                    || sentence.Contains("as it is mixed", StringComparison.Ordinal));
                if (Array.Exists(Untold, u => sentence.Contains(u, StringComparison.Ordinal)))
                {
                    Assert.False(Words().IsMatch(sentence), $"{command[0]}: {sentence}");
                }
            }
        }

        Assert.True(said, $"nothing says that the temperature of {solid} is not known, or that it falls out as it is mixed");
    }

    /// <summary>
    /// Rust of iron that DTPA holds turns on how firmly it holds, which is known at 25 °C only: of that deposit too no command says coldest,
    /// warmest, warmer or colder, and what says when it falls out says why not.
    /// </summary>
    [Fact]
    public void NoSentenceSaysHowADepositChangesThatTurnsOnAChelateKnownAtOneTemperature()
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", """
            {"format": 1, "makes": "1 L", "dose": "10 mL/L", "keep": {"at": "5..25 °C", "for": "30 days"}, "steps": [{"pour": "700 mL"},
              {"add": "fe-dtpa-hna", "amount": "10 g"}, {"add": "potassium-hydroxide", "amount": "2.6 g"}, {"topUp": "1 L"}]}
            """);
        var said = 0;
        foreach (var command in Commands)
        {
            foreach (var sentence in Sentences(Cli.RunIn(scratch.Path, null, command).Out))
            {
                said += sentence.Contains("how firmly DTPA holds metals", StringComparison.Ordinal) ? 1 : 0;
                if (sentence.Contains("ferric hydroxide", StringComparison.Ordinal) || sentence.Contains("rust", StringComparison.Ordinal))
                {
                    Assert.False(Words().IsMatch(sentence), $"{command[0]}: {sentence}");
                }
            }
        }

        Assert.True(said > 0, "nothing says that how firmly DTPA holds is not known");
    }

    /// <summary>Wrapped lines joined, rows of tables apart, then cut at full stops and colons.</summary>
    private static IEnumerable<string> Sentences(string text) =>
        Row().Replace(text, "$0.\n").Replace("\n  ", " ", StringComparison.Ordinal).Split('\n')
            .SelectMany(line => End().Split(line)).Select(s => s.Trim()).Where(s => s.Length > 0);

    [GeneratedRegex("coldest|warmest|warmer|colder", RegexOptions.CultureInvariant)]
    private static partial Regex Words();

    /// <summary>A line with two blanks between words: a row of a table.</summary>
    [GeneratedRegex(@"(?m)^.*\S {2,}\S.*$", RegexOptions.CultureInvariant)]
    private static partial Regex Row();

    [GeneratedRegex(@"(?<=[.;])\s", RegexOptions.CultureInvariant)]
    private static partial Regex End();
}
