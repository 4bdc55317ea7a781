using RecipeLint.Commands;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>The handbook goes into its folder and touches nothing else.</summary>
public sealed class HandbookTests
{
    /// <summary>One line says what was written. An earlier handbook is replaced, what it no longer has goes, and a file that somebody put there stays.</summary>
    [Fact]
    public void AHandbookIsWrittenAndReplacedAndNothingElse()
    {
        using var scratch = new Scratch();
        var made = Cli.RunIn(scratch.Path, null, "handbook", "-o", "book");

        Assert.Equal(0, made.Code);
        Assert.Equal("", made.Error);
        Assert.Matches(@"^wrote \d+ pages to book; open book.index\.html in a browser\n$", made.Out);
        Assert.Equal(["book"], Directory.EnumerateFileSystemEntries(scratch.Path).Select(Path.GetFileName));
        var listed = File.ReadAllLines(Path.Combine(scratch.Path, "book", HandbookCommand.ListName)).Skip(1);
        var written = Directory.EnumerateFiles(Path.Combine(scratch.Path, "book"), "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Path.Combine(scratch.Path, "book"), f).Replace('\\', '/'))
            .Where(f => f != HandbookCommand.ListName);
        Assert.Equal(written.Order(StringComparer.Ordinal), listed);
        Assert.Contains("index.html", listed);

        var first = File.ReadAllText(Path.Combine(scratch.Path, "book/index.html"));
        var list = Path.Combine(scratch.Path, "book", HandbookCommand.ListName);
        var before = File.ReadAllText(list);
        scratch.Write("book/rules/rule-of-old.html", "old");
        scratch.Write("book/my-notes.txt", "mine");
        scratch.Write("book/index.html", "damaged");
        scratch.Write("outside.txt", "mine");
        File.AppendAllText(list, "rules/rule-of-old.html\n../outside.txt\n.hidden\n/etc/passwd\n");
        var answer = Cli.RunIn(scratch.Path, null, "handbook", "--output", "book");

        Assert.Equal(0, answer.Code);
        Assert.Equal(first, File.ReadAllText(Path.Combine(scratch.Path, "book/index.html")));
        Assert.False(File.Exists(Path.Combine(scratch.Path, "book/rules/rule-of-old.html")));
        Assert.Equal("mine", File.ReadAllText(Path.Combine(scratch.Path, "book/my-notes.txt")));
        Assert.Equal("mine", File.ReadAllText(Path.Combine(scratch.Path, "outside.txt")));
        Assert.Equal(before, File.ReadAllText(list));
    }

    [Fact]
    public void AFolderOfSomethingElseIsLeftAlone()
    {
        using var scratch = new Scratch();
        scratch.Write("garden/index.html", "mine");
        var answer = Cli.RunIn(scratch.Path, null, "handbook", "-o", "garden");

        Assert.Equal(2, answer.Code);
        Assert.Contains("'garden' is not empty and no earlier handbook", answer.Error, StringComparison.Ordinal);
        Assert.Single(Directory.EnumerateFileSystemEntries(scratch.Path, "*", SearchOption.AllDirectories), f => File.Exists(f));
        Assert.Equal("mine", File.ReadAllText(Path.Combine(scratch.Path, "garden/index.html")));
    }

    [Fact]
    public void AFileInTheWayStays()
    {
        using var scratch = new Scratch();
        scratch.Write("book", "mine");
        Assert.Equal(2, Cli.RunIn(scratch.Path, null, "handbook", "-o", "book").Code);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(scratch.Path, "book")));

        // In a handbook's folder too: what the list does not name was not ours.
        scratch.Write("shelf/" + HandbookCommand.ListName, "Written by 'recipelint handbook', which replaces the files named here and no others.\n");
        scratch.Write("shelf/index.html", "mine");
        var answer = Cli.RunIn(scratch.Path, null, "handbook", "-o", "shelf");
        Assert.Equal(2, answer.Code);
        Assert.Contains("'index.html' is there already", answer.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(scratch.Path, "shelf/index.html")));
        Assert.False(File.Exists(Path.Combine(scratch.Path, "shelf/handbook.css")));
    }

    [Fact]
    public void TheFolderHasToBeNamed()
    {
        var answer = Cli.Run("handbook");
        Assert.Equal(2, answer.Code);
        Assert.Contains("--output", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void TheExercisesAreFilesThatRaiseTheirRuleAndAreSilentOnceMended()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "handbook", "--exercises", "week").Code);
        var folders = Directory.GetDirectories(Path.Combine(scratch.Path, "week")).Where(f => char.IsAsciiDigit(Path.GetFileName(f)[0])).ToArray();
        Assert.Equal(10, folders.Length);
        foreach (var folder in folders)
        {
            var rule = Path.GetFileName(folder)[3..];
            Assert.Contains($" {rule}", Cli.RunIn(folder, null, "check", "flawed").Out, StringComparison.Ordinal);
            Assert.Empty(Cli.RunIn(folder, null, "check", "mended").Findings);
            Assert.Contains("## Question", File.ReadAllText(Path.Combine(folder, "lesson.md")), StringComparison.Ordinal);
        }

        // What somebody has begun to mend is not replaced.
        Assert.Equal(2, Cli.RunIn(scratch.Path, null, "handbook", "--exercises", "week").Code);
        Assert.Equal(2, Cli.RunIn(scratch.Path, null, "handbook").Code);
    }
}
