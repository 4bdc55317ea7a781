namespace RecipeLint.Recipes.Importing;

/// <summary>What the user says of a table beyond its headings.</summary>
public sealed record ImportWishes
{
    /// <summary>The table's own name, for the note of what is written.</summary>
    public required string Source { get; init; }

    /// <summary>What a stock or water is called where no column tells.</summary>
    public required string Name { get; init; }

    /// <summary>True where the comma is the decimal sign, false for the point; null to write numbers as they stand.</summary>
    public bool? DecimalComma { get; init; }

    /// <summary>What each part makes, where no column tells.</summary>
    public IReadOnlyDictionary<string, string> MakesOfParts { get; init; } = new Dictionary<string, string>();

    /// <summary>What every part makes that is not named above.</summary>
    public string? Makes { get; init; }

    public string? Dose { get; init; }

    /// <summary>The row that holds the headings, as the table counts; null for the first with two cells.</summary>
    public int? HeadingRow { get; init; }

    /// <summary>A part named once counts for the rows below it.</summary>
    public bool FillsDown { get; init; }
}

/// <summary>A file to be written.</summary>
/// <param name="Name">Of the file, without a folder.</param>
public sealed record ImportedFile(string Name, string Text);

/// <summary>What became of a table.</summary>
/// <param name="Files">In the order of the table.</param>
/// <param name="Fault">One plain line why there are none; null otherwise.</param>
public sealed record ImportResult(IReadOnlyList<ImportedFile> Files, string? Fault)
{
    /// <summary>Rows that went where they belong.</summary>
    public int Understood { get; init; }

    /// <summary>Rows kept under "notUnderstood", and entries that went over as they stand and cannot be read.</summary>
    public int NotUnderstood { get; init; }

    internal static ImportResult No(string fault) => new([], fault);
}
