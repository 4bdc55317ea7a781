using System.Text.Json.Nodes;
using RecipeLint.Editor.Setup;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What 'editor --for' writes points to what is there.</summary>
public sealed class EditorSettingsTests
{
    public static TheoryData<string> Names => [.. EditorSettings.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void SettingsNameEveryKindOfFileAndASchemaThatIsThere(string name)
    {
        using var scratch = new Scratch();
        var answer = Cli.RunIn(scratch.Path, null, "editor", "--for", name);
        Assert.Equal((0, ""), (answer.Code, answer.Error));
        var text = File.ReadAllText(Path.Combine(scratch.Path, EditorSettings.For(name).Path));
        Assert.Equal(8, PublishedSchemas.Associations.Count);
        foreach (var (pattern, schema) in PublishedSchemas.Associations)
        {
            Assert.Contains(pattern, text, StringComparison.Ordinal);
            Assert.Contains($"{PublishedSchemas.Folder}/{schema}", text, StringComparison.Ordinal);
            Assert.NotNull(JsonNode.Parse(File.ReadAllText(Path.Combine(scratch.Path, PublishedSchemas.Folder, schema)))!["$id"]);
        }

        Assert.Equal(name != "vscode", text.Contains("language-server", StringComparison.Ordinal));
    }

    [Fact]
    public void SettingsOfAnEditorThatReadsJsonAreJson()
    {
        var root = JsonNode.Parse(EditorSettings.For("vscode").Text)!;
        Assert.Equal(8, root["json.schemas"]!.AsArray().Count);
    }

    [Fact]
    public void WhatIsThereStaysAndIsPrintedOnRequest()
    {
        using var scratch = new Scratch();
        scratch.Write(".helix/languages.toml", "mine");
        Assert.Equal(2, Cli.RunIn(scratch.Path, null, "editor", "--for", "helix").Code);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(scratch.Path, ".helix/languages.toml")));
        var printed = Cli.RunIn(scratch.Path, null, "editor", "--for", "helix", "--print");
        Assert.Equal(0, printed.Code);
        Assert.Contains("[language-server.recipelint]", printed.Out, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(scratch.Path, ".helix/languages.toml")));
    }

    [Theory]
    [InlineData("--for", "notepad")]
    [InlineData("nowhere", "--for", "helix")]
    [InlineData("--print")]
    public void WrongUsageIsOneLine(params string[] arguments)
    {
        using var scratch = new Scratch();
        var answer = Cli.RunIn(scratch.Path, null, ["editor", .. arguments]);
        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd().Split('\n'));
        Assert.Empty(Directory.EnumerateFileSystemEntries(scratch.Path));
    }
}
