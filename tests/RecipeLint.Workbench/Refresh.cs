using RecipeLint.Rules.Engine;

namespace RecipeLint.Workbench;

/// <summary>A file that follows from others.</summary>
/// <param name="Path">From the root of the repository.</param>
/// <param name="Text">What it should hold now.</param>
public sealed record GeneratedFile(string Path, string Text);

/// <summary>Every file that follows from others: the tool writes them, tests only look whether they are fresh.</summary>
public static class Refresh
{
    public static IReadOnlyList<GeneratedFile> Files(Repository repository) =>
    [
        new(Ledger.Path, Ledger.Parse(repository.Read(Ledger.Path)).With(RuleBook.Descriptors).ToJson()),
        new(SettingsSchema.Path, SettingsSchema.Write(repository.Read(SettingsSchema.HandWritten), RuleBook.Descriptors)),
    ];

    public static void Write(Repository repository, TextWriter output)
    {
        var changed = 0;
        foreach (var file in Files(repository).Where(f => repository.Read(f.Path) != f.Text))
        {
            repository.Write(file.Path, file.Text);
            output.WriteLine($"written: {file.Path}");
            changed++;
        }

        output.WriteLine(changed == 0 ? "Everything was fresh." : "Read the differences before you commit them.");
    }
}
