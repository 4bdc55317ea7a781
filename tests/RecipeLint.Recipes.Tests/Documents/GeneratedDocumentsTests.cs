using System.Text;
using System.Text.Json;
using CsCheck;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Tests.Json;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>Whatever the schema accepts the reader reads; whatever it refuses is refused once.</summary>
public sealed class GeneratedDocumentsTests
{
    [Theory]
    [InlineData(DocumentKind.Stock, "x.stock.json", 0.3)]
    [InlineData(DocumentKind.Recipe, "x.recipe.json", 0.3)]
    [InlineData(DocumentKind.Water, "x.water.json", 0.3)]
    [InlineData(DocumentKind.Substances, "x.substances.json", 0.05)]
    [InlineData(DocumentKind.Settings, "recipelint.json", 0.05)]
    [InlineData(DocumentKind.Profile, "x.profile.json", 0.05)]
    public void WhateverTheSchemaAcceptsTheReaderReads(DocumentKind kind, string file, double leastAccepted)
    {
        using var schema = JsonDocument.Parse(File.ReadAllBytes(Repository.PathOf("schema", DocumentKinds.SchemaFileName(kind)!)));
        var (made, accepted) = (0, 0);
        new SchemaDocuments(schema.RootElement).Documents.Sample(
            text =>
            {
                Interlocked.Increment(ref made);
                if (ReadOne(kind, file, text))
                {
                    Interlocked.Increment(ref accepted);
                }
            },
            iter: 3000);

        // The check says nothing unless a good part of what is made gets past the schema.
        Assert.True(accepted >= made * leastAccepted, $"only {accepted} of {made} documents fit the schema");
    }

    /// <summary>Reads a document beside two others and checks what holds for any; true when the schema accepts it.</summary>
    private static bool ReadOne(DocumentKind kind, string file, string text)
    {
        var files = new MemoryFileTree("/shop").AddFolder("/shop/.git")
            .Add("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "x.stock.json", "amount": "1 mL"}]}""")
            .Add("w.water.json", """{"format": 1, "ec": "0.5 mS/cm"}""")
            .Add(file, text);
        var parsed = JsonReading.Read(file, Encoding.UTF8.GetBytes(text));
        var fits = parsed.Problems.Count == 0 && SchemaCheck.Check(kind, parsed.Source).Count == 0;
        var workspace = WorkspaceLoader.Load(files, [file], new LoadOptions { Profiles = ["lettuce"] });
        if (fits)
        {
            Assert.True(IsRead(workspace, kind, file));
        }

        foreach (var problems in workspace.Problems.GroupBy(p => p.Place.File))
        {
            Places.AssertAllInside(workspace.Sources[problems.Key], problems.Select(p => p with { Related = [.. p.Related.Where(r => r.Place.File == problems.Key)] }));
        }

        Assert.All(workspace.Problems, p => Assert.Matches("[.?]$", p.Message));
        Assert.All(workspace.Problems.SelectMany(p => p.Values), v => Assert.True(double.IsFinite(v.Value), v.Name));
        var twice = workspace.Problems.GroupBy(p => (p.Kind, p.Place)).FirstOrDefault(g => g.Count() > 1);
        Assert.True(twice is null, $"said twice: {twice?.First().Message}");
        AssertFinite(workspace);
        return fits;
    }

    private static bool IsRead(Workspace workspace, DocumentKind kind, string file) => kind switch
    {
        DocumentKind.Stock => workspace.FindStock(file) is not null,
        DocumentKind.Recipe => workspace.Recipes.Any(r => r.File == file),
        DocumentKind.Water => workspace.FindWater(file) is not null,
        DocumentKind.Substances => workspace.SubstanceFiles.Any(s => s.File == file),
        DocumentKind.Profile => workspace.FindProfile(file) is not null,
        _ => workspace.SettingsFor("x.stock.json").File == file,
    };

    private static void AssertFinite(Workspace workspace)
    {
        foreach (var stock in workspace.Stocks)
        {
            Assert.True(stock.Makes is null || (double.IsFinite(stock.Makes.Value.Litres) && stock.Makes.Value.Litres > 0));
            Assert.Equal(stock.Steps.Count, stock.Steps.Select(s => s.Id).Distinct().Count());
        }

        foreach (var value in workspace.Waters.SelectMany(w => w.Values))
        {
            Assert.True(double.IsFinite(value.Concentration.High.MolesPerLitre) && value.Concentration.Low <= value.Concentration.High && value.Concentration.Low.MolesPerLitre >= 0);
        }

        foreach (var substance in workspace.SubstanceFiles.SelectMany(f => f.Substances).Select(s => s.Substance))
        {
            Assert.All(substance.Content.Elements, e => Assert.True(double.IsFinite(substance.Content[e])));
            Assert.All(substance.Dissolves, d => Assert.True(double.IsFinite(d.MolesPerGram)));
        }
    }
}
