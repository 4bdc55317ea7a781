namespace RecipeLint.Recipes.Text;

public enum PlacePart
{
    Value,
    Key,
}

/// <summary>
/// Where something stands: a file and a JSON pointer into it, never a line. Rules name places; only reports turn them into lines.
/// </summary>
/// <param name="File">Path relative to the workspace root, forward slashes.</param>
/// <param name="Pointer">Pointer as the file stands now.</param>
/// <param name="Part">The member name or its value.</param>
/// <param name="Range">For a place inside a text that does not parse: byte offset and length in the file; overrides the pointer's
/// span.</param>
public sealed record Place(string File, JsonPointer Pointer, PlacePart Part = PlacePart.Value, ByteSpan? Range = null)
{
    public static Place Whole(string file) => new(file, JsonPointer.Root);

    public Place Child(string name) => new(File, Pointer.Child(name));

    public Place Child(int index) => new(File, Pointer.Child(index));

    public Place Key => this with { Part = PlacePart.Key };

    /// <summary>Short, for test output; the generated one would print <see cref="Key"/> without end.</summary>
    public override string ToString() => Part == PlacePart.Key ? $"{File}#{Pointer} (key)" : $"{File}#{Pointer}";
}

/// <summary>A run of bytes in a source file.</summary>
public readonly record struct ByteSpan(int Start, int Length)
{
    public int End => Start + Length;
}

/// <summary>A position as people and SARIF count it: both 1-based, the column in UTF-16 code units.</summary>
public readonly record struct LinePosition(int Line, int Column);

/// <summary>A span as people count it; <see cref="End"/> is one past the last character.</summary>
public readonly record struct LineSpan(LinePosition Start, LinePosition End);

/// <summary>A value together with where it was written.</summary>
public sealed record Located<T>(T Value, Place Place);
