using RecipeLint.Rules.Engine;
using RecipeLint.Workbench.Tables;

namespace RecipeLint.Workbench;

/// <summary>A file that follows from others.</summary>
/// <param name="Path">From the root of the repository.</param>
/// <param name="Text">What it should hold now.</param>
public sealed record GeneratedFile(string Path, string Text);

/// <summary>Every file that follows from others: the tool writes them, tests only look whether they are fresh.</summary>
public static class Refresh
{
    private const string Physical = "src/RecipeLint.Chemistry/Physical/";

    public static IReadOnlyList<GeneratedFile> Files(Repository repository)
    {
        var constants = ThermoData.Load();
        var ledger = Ledger.Parse(repository.Read(Ledger.Path)).With(RuleBook.Descriptors);
        return
        [
            new(Ledger.Path, ledger.ToJson()),
            new(Changelog.Path, Changelog.Write(repository.Read(Changelog.Path), ledger)),
            new(SettingsSchema.Path, SettingsSchema.Write(repository.Read(SettingsSchema.HandWritten), RuleBook.Descriptors)),
            new(TableWriter.Path, TableWriter.Write(constants)),
            new(Calibration.Path, Calibration.Write(constants)),
            new(RowWriter.ComponentPath, RowWriter.Components(constants)),
            new(RowWriter.SolidPath, RowWriter.Solids(constants)),
            new(Physical + "PhysicalConstants.generated.cs", PhysicalTables.Constants()),
            new(Physical + "VolumeTable.generated.cs", PhysicalTables.Volumes()),
            new(Physical + "ConductivityTable.generated.cs", PhysicalTables.Conductivity()),
            new(Physical + "StrengthTable.generated.cs", PhysicalTables.Strengths()),
            new(Physical + "HeatTable.generated.cs", PhysicalTables.Heats()),
        ];
    }

    public static void Write(Repository repository, TextWriter output)
    {
        var changed = 0;
        var newConstants = false;
        foreach (var file in Files(repository).Where(f => repository.Read(f.Path) != f.Text))
        {
            repository.Write(file.Path, file.Text);
            output.WriteLine($"written: {file.Path}");
            changed++;
            newConstants |= file.Path == TableWriter.Path;
        }

        if (newConstants)
        {
            output.WriteLine("The constants changed: run it once more, so that the soluble salts are fitted with them.");
        }

        output.WriteLine(changed == 0 ? "Everything was fresh." : "Read the differences before you commit them.");
    }
}
