namespace RecipeLint.Workbench.Tests;

public sealed class FreshFilesTests
{
    private static readonly Repository _repository = Repository.Find();

    public static TheoryData<string> Paths() => [.. Refresh.Files(_repository).Select(f => f.Path)];

    [Theory]
    [MemberData(nameof(Paths))]
    public void GeneratedFilesAreFresh(string path) =>
        Assert.True(
            Refresh.Files(_repository).Single(f => f.Path == path).Text == _repository.Read(path),
            $"{path} is not fresh: run 'dotnet run --project tests/RecipeLint.Workbench -- refresh' and read the difference.");

    [Fact]
    public void WhatWasTouchedByHandIsWrittenAnew()
    {
        var copy = new Repository(Directory.CreateTempSubdirectory("recipelint-bench-").FullName);
        try
        {
            copy.Write(Ledger.Path, _repository.Read(Ledger.Path));
            copy.Write(SettingsSchema.HandWritten, _repository.Read(SettingsSchema.HandWritten));
            copy.Write(Changelog.Path, _repository.Read(Changelog.Path));
            Refresh.Write(copy, TextWriter.Null);
            copy.Write(SettingsSchema.Path, "{}");
            var said = new StringWriter { NewLine = "\n" };
            Refresh.Write(copy, said);
            Assert.Equal($"written: {SettingsSchema.Path}\nRead the differences before you commit them.\n", said.ToString());
            Assert.Equal(_repository.Read(SettingsSchema.Path), copy.Read(SettingsSchema.Path));
        }
        finally
        {
            Directory.Delete(copy.Root, recursive: true);
        }
    }
}
