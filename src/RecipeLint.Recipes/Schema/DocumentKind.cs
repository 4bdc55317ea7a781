namespace RecipeLint.Recipes.Schema;

/// <summary>The kinds of files people write, told apart by their names.</summary>
public enum DocumentKind
{
    Stock,
    Recipe,
    Water,
    Substances,
    Settings,
    Profile,

    /// <summary>A rule of the shop's own.</summary>
    HouseRule,

    /// <summary>One batch as it was really mixed.</summary>
    Batch,
}

public static class DocumentKinds
{
    /// <summary>The name of a shop's settings file.</summary>
    public const string SettingsFileName = "recipelint.json";

    private static readonly (string Ending, DocumentKind Kind)[] _endings =
    [
        (".stock.json", DocumentKind.Stock),
        (".recipe.json", DocumentKind.Recipe),
        (".water.json", DocumentKind.Water),
        (".substances.json", DocumentKind.Substances),
        (".profile.json", DocumentKind.Profile),
        (".rule.json", DocumentKind.HouseRule),
        (".batch.json", DocumentKind.Batch),
    ];

    /// <summary>The kind a file has by its name; null when the name is none of ours. Letter case does not count.</summary>
    /// <param name="path">A file name, or a path with forward or backward slashes.</param>
    public static DocumentKind? FromFileName(string path)
    {
        var name = path.AsSpan(path.AsSpan().LastIndexOfAny('/', '\\') + 1);
        if (name.Equals(SettingsFileName, StringComparison.OrdinalIgnoreCase))
        {
            return DocumentKind.Settings;
        }

        foreach (var (ending, kind) in _endings)
        {
            if (name.EndsWith(ending, StringComparison.OrdinalIgnoreCase))
            {
                return kind;
            }
        }

        return null;
    }

    /// <summary>The file in the schema folder that describes a kind; null where none does.</summary>
    public static string? SchemaFileName(DocumentKind kind) => kind switch
    {
        DocumentKind.Stock => "stock.schema.json",
        DocumentKind.Recipe => "recipe.schema.json",
        DocumentKind.Water => "water.schema.json",
        DocumentKind.Substances => "substances.schema.json",
        DocumentKind.Settings => "recipelint.schema.json",
        DocumentKind.Profile => "profile.schema.json",
        DocumentKind.HouseRule => "house-rule.schema.json",
        DocumentKind.Batch => "batch.schema.json",
        _ => null,
    };
}
