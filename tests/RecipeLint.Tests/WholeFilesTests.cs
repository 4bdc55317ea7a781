using RecipeLint.Shell;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

public sealed class WholeFilesTests
{
    [Fact]
    public void AFileThatCannotTakeItsPlaceTakesTheOthersBack()
    {
        using var scratch = new Scratch();
        var first = scratch.Write("a.json", "old");
        var folder = Directory.CreateDirectory(Path.Combine(scratch.Path, "b.json")).FullName;
        var fresh = Path.Combine(scratch.Path, "new.json");
        Assert.ThrowsAny<Exception>(() => WholeFiles.Write([new WholeFile(first, "new"u8.ToArray()), new WholeFile(fresh, "new"u8.ToArray()), new WholeFile(folder, "new"u8.ToArray())]));
        Assert.Equal("old", File.ReadAllText(first));
        Assert.Equal(["a.json"], Directory.GetFiles(scratch.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void AFileOfSomebodyWithTheNameOfOursStays()
    {
        using var scratch = new Scratch();
        var file = scratch.Write("a.json", "old");
        var other = scratch.Write("a.json.1.partial", "mine");
        WholeFiles.Write([new WholeFile(file, "new"u8.ToArray())]);
        Assert.Equal("new", File.ReadAllText(file));
        Assert.Equal("mine", File.ReadAllText(other));
        Assert.Equal(2, Directory.GetFiles(scratch.Path).Length);
    }

    [Fact]
    public void WhatSomebodySavedMeanwhileStays()
    {
        using var scratch = new Scratch();
        var first = scratch.Write("a.json", "old");
        var second = scratch.Write("b.json", "saved meanwhile");
        var refused = Assert.Throws<IOException>(() => WholeFiles.Write(
        [
            new WholeFile(first, "new"u8.ToArray()) { Expected = "old"u8.ToArray() },
            new WholeFile(second, "new"u8.ToArray()) { Expected = "as it was read"u8.ToArray() },
        ]));
        Assert.Contains("'b.json' was changed by someone else", refused.Message, StringComparison.Ordinal);
        Assert.Equal(["old", "saved meanwhile"], [File.ReadAllText(first), File.ReadAllText(second)]);
        Assert.Equal(2, Directory.GetFiles(scratch.Path).Length);
    }

    [Fact]
    public void ANewFileNeverReplacesOne()
    {
        using var scratch = new Scratch();
        var file = scratch.Write("a.json", "old");
        Assert.Throws<IOException>(() => WholeFiles.Write([new WholeFile(file, "new"u8.ToArray()) { IsNew = true }]));
        Assert.Equal("old", File.ReadAllText(file));
        Assert.Single(Directory.GetFiles(scratch.Path));
    }

    [Fact]
    public void PermissionsStay()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var scratch = new Scratch();
        var file = scratch.Write("a.json", "old");
        File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        WholeFiles.Write([new WholeFile(file, "new"u8.ToArray())]);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
    }
}
