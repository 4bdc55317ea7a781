using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Text;

namespace RecipeLint.Generators;

/// <summary>
/// Holds every row of the chemical data against Data/fields.json: one with a field missing, unknown or empty stops the build with file, row
/// and field. It writes no source.
/// </summary>
[Generator(LanguageNames.CSharp)]
public sealed class RowGenerator : IIncrementalGenerator
{
    private static readonly DiagnosticDescriptor _wrong = new(
        "DATA001", "A row of the data is not complete", "{0}", "Data", DiagnosticSeverity.Error, isEnabledByDefault: true);

    public void Initialize(IncrementalGeneratorInitializationContext context)
    {
        var files = context.AdditionalTextsProvider
            .Where(t => t.Path.EndsWith(".json", StringComparison.Ordinal) && Path.GetFileName(t.Path) != "rule.json")
            .Select((t, cancel) => (t.Path, Text: t.GetText(cancel)?.ToString() ?? ""))
            .Collect();
        context.RegisterSourceOutput(files, (output, all) => Check(output, all));
    }

    private static void Check(SourceProductionContext output, ImmutableArray<(string Path, string Text)> files)
    {
        foreach (var owed in files.Where(f => Path.GetFileName(f.Path) == "fields.json"))
        {
            var folder = Path.GetDirectoryName(owed.Path)!;
            var contracts = RowContract.Read(owed.Text);
            foreach (var file in files.Where(f => f.Path != owed.Path && f.Path.StartsWith(folder, StringComparison.Ordinal))
                .OrderBy(f => f.Path, StringComparer.Ordinal))
            {
                var name = file.Path.Substring(folder.Length + 1).Replace('\\', '/');
                foreach (var contract in contracts.Where(c => c.IsFor(name)))
                {
                    foreach (var (message, at) in RowChecker.Faults(name, file.Text, contract))
                    {
                        Report(output, file.Path, file.Text, message, at);
                    }
                }
            }
        }
    }

    private static void Report(SourceProductionContext output, string path, string text, string message, int at)
    {
        var span = new TextSpan(Math.Max(at, 0), 0);
        output.ReportDiagnostic(Diagnostic.Create(
            _wrong, Location.Create(path, span, SourceText.From(text).Lines.GetLinePositionSpan(span)), message));
    }
}
