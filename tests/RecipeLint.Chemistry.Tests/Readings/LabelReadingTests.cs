using System.Globalization;
using System.Text;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Chemistry.Tests.Readings;

/// <summary>
/// What is made of labels: contents, ions, how the charge was closed, what was assumed and what is wrong. Each row of labels.list is an
/// invented product: its lines, then in any order "liquid", "agent ...", "ion ...", "density ...", "w/v", "name ...".
/// </summary>
public sealed class LabelReadingTests
{
    [Fact]
    public void EveryLabelIsReadSo()
    {
        var text = new StringBuilder();
        foreach (var row in Hold.List("labels.list"))
        {
            text.Append($"\n[{row}]");
            var result = LabelProduct.Build(Declared(row));
            if (result.Substance is { } substance) SubstanceText.Write(text, substance);
            else text.Append('\n');
            foreach (var problem in result.Problems) text.Append($"! {problem.Kind} {problem.Form}: {problem.Message}\n");
        }

        Hold.As("labels.txt", text);
    }

    /// <summary>The words of labels for agents, and what they are taken for beside iron and zinc.</summary>
    [Fact]
    public void EveryAgentIsReadSo()
    {
        var text = new StringBuilder();
        string[] others =
        [
            "edta", "EDTA chelate", "EDTA chelates", "DTPA complex", "gluconates", "citrates", "glycinates", "lactates", "amino acids",
            "amino acid complexes", "amino acid-chelate", "lignosulfonate-complex", "EDTA and DTPA", "EDDHA, HBED", "EDDHA/EDDHSA",
            "citric acid + EDTA", "gluconate & lactate", "HBED; DTPA", "EDTA or DTPA", "EDTA with humic acid", "EDDS and HBED", "EDTAs",
            "wonderbind", "wonderbinds", "EDTA and wonderbind", ",", "",
        ];
        foreach (var agent in LabelAgents.All.Concat(others))
        {
            var result = LabelProduct.Build(Declared($"Fe 2, Fe chelated 2, Zn 1, Zn chelated 0.5, agent {agent}"));
            text.Append($"[{agent}]").Append(LabelAgents.AreForIron(agent) ? " for iron" : "").Append('\n');
            text.Append(SubstanceText.Yields(result.Substance!.Dissolves)).Append('\n').Append(result.Substance.Assumption).Append('\n');
            foreach (var problem in result.Problems) text.Append($"! {problem.Kind} {problem.Form}: {problem.Message}\n");
        }

        Hold.As("agents.txt", text);
    }

    [Theory]
    [InlineData("Fe", "Fe", LabelShare.Total)]
    [InlineData("Fe total", "Fe", LabelShare.Total)]
    [InlineData("N nitrate", "N", LabelShare.Nitrate)]
    [InlineData("N ammonium", "N", LabelShare.Ammonium)]
    [InlineData("N urea", "N", LabelShare.Urea)]
    [InlineData("N organic", "N", LabelShare.Organic)]
    [InlineData("Fe chelated", "Fe", LabelShare.Chelated)]
    [InlineData("Fe ortho-ortho", "Fe", LabelShare.OrthoOrtho)]
    public void ALineIsAFormAndAShare(string text, string form, LabelShare share) =>
        Assert.Equal(new LabelEntry(form, 5, share), LabelEntry.FromText(text, 5));

    private static LabelDeclaration Declared(string row)
    {
        var label = new LabelDeclaration { Id = "p", Name = "product", Entries = [] };
        var entries = new List<LabelEntry>();
        foreach (var part in row.Split(", "))
        {
            var (word, rest) = part.IndexOf(' ') is > 0 and var space ? (part[..space], part[(space + 1)..]) : (part, "");
            label = word switch
            {
                "liquid" => label with { Form = PhysicalForm.Liquid },
                "w/v" => label with { Percent = LabelPercent.WeightPerVolume },
                "agent" => label with { Agent = row[(row.IndexOf("agent ", StringComparison.Ordinal) + 6)..] },
                "ion" => label with { CounterIon = rest },
                "name" => label with { Name = rest },
                "density" => label with { Density = new(new Density(Number(rest)), "bottle", Confidence.Found) },
                _ => label,
            };
            if (word == "agent") break;
            if (word is "liquid" or "w/v" or "ion" or "name" or "density" or "nothing") continue;
            var last = part.LastIndexOf(' ');
            var entry = LabelEntry.FromText(part[..last], Number(part[(last + 1)..].TrimEnd('v', 'w')));
            entries.Add(entry with
            {
                Counted = part[^1] switch { 'v' => LabelPercent.WeightPerVolume, 'w' => LabelPercent.WeightPerWeight, _ => null },
            });
        }

        return label with { Entries = entries };
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
