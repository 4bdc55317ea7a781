using RecipeLint.Benchmarks.Repositories;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Scale;

/// <summary>The number of threads changes no byte of what the command line answers.</summary>
public sealed class ThreadTests
{
    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("sarif")]
    public void ExamplesAnswerAlikeForOneTwoAndEightThreads(string format) =>
        AssertAlike(threads => Cli.Run("check", "examples", "rules/precipitation", "--format", format, "--threads", threads));

    [Theory]
    [InlineData(RepositoryLayout.OneFolder, "text")]
    [InlineData(RepositoryLayout.FolderForEachShop, "json")]
    [InlineData(RepositoryLayout.FolderForEachShop, "sarif")]
    public void GeneratedRepositoriesAnswerAlikeForOneTwoAndEightThreads(RepositoryLayout layout, string format)
    {
        var files = GeneratedRepository.Of(14, layout);
        AssertAlike(threads => Cli.RunOver(files, "check", ".", "--format", format, "--threads", threads));
    }

    private static void AssertAlike(Func<string, Answer> run)
    {
        var one = run("1");
        Assert.Equal(1, one.Code);
        Assert.NotEmpty(one.Out);
        Assert.Equal(one, run("2"));
        Assert.Equal(one, run("8"));
    }
}
