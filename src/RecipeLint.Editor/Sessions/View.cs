using RecipeLint.Analysis;
using RecipeLint.Editor.Documents;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;
using RecipeLint.Reports;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Editor.Sessions;

/// <summary>What one file, with the shop around it, came to: documents, facts and findings of the state that is in the editor.</summary>
/// <param name="File">Relative to the root of the workspace.</param>
/// <param name="Judged">Of the whole shop, or of what belongs to the file where the shop is large.</param>
internal sealed record View(string File, Judged Judged, DocumentStore Documents)
{
    public Workspace Workspace => Judged.Workspace;

    public Facts Facts => Judged.Facts;

    /// <summary>Null when the file could not be read at all.</summary>
    public SourceFile? Source => Workspace.Sources.GetValueOrDefault(File);

    /// <summary>Findings in this file, in their order.</summary>
    public IEnumerable<Finding> Findings => Judged.Result.Findings.Where(f => f.Place.File == File);

    public StockFacts? Stock => Facts.FindStock(File);

    public RecipeFacts? Recipe => Facts.Recipes.FirstOrDefault(r => r.Recipe.File == File);

    public string FullPathOf(string file) =>
        file.StartsWith('/') || (file.Length > 1 && file[1] == ':') ? file : $"{Workspace.Root.TrimEnd('/')}/{file}";

    /// <summary>The address of a file, spelled as the client does where it has it open.</summary>
    public string UriOf(string file)
    {
        var path = FullPathOf(file);
        return Documents.At(path)?.Uri ?? FileUri.Of(path);
    }

    /// <summary>Where a place stands, as the reports see it.</summary>
    public TextRange RangeOf(Place place)
    {
        var lines = Spot.Of(place, Workspace.Sources).Lines;
        return Range(place.File, lines);
    }

    public TextRange RangeOf(string file, ByteSpan span) =>
        Workspace.Sources.TryGetValue(file, out var source) ? Range(file, source.ToLines(span)) : default;

    /// <summary>The byte offset of a position in this file.</summary>
    public int OffsetOf(TextPosition position)
    {
        var column = position.Character - (position.Line == 0 && HasMark(File) ? 1 : 0);
        return Source?.ToOffset(new LinePosition(position.Line + 1, Math.Max(0, column) + 1)) ?? 0;
    }

    private TextRange Range(string file, LineSpan lines) => new(Position(file, lines.Start), Position(file, lines.End));

    private TextPosition Position(string file, LinePosition position) =>
        new(position.Line - 1, position.Column - 1 + (position.Line == 1 && HasMark(file) ? 1 : 0));

    private bool HasMark(string file) => Documents.At(FullPathOf(file)) is { StartsWithMark: true };
}
