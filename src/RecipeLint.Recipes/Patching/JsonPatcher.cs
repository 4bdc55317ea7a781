using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Patching;

/// <summary>
/// Changes a JSON file and keeps its formatting: every byte that a change does not touch stays as it is. Never throws on what a file can
/// contain; what cannot be done is refused with the reason.
/// </summary>
public static class JsonPatcher
{
    /// <summary>
    /// Applies changes that all speak of the file as it stands. They must not overlap, and the result must be JSON again.
    /// </summary>
    public static PatchResult Apply(SourceFile source, IReadOnlyList<JsonEdit> edits)
    {
        if (source.Tree is null && edits.Any(e => e is not (JsonEdit.ReplaceText or JsonEdit.DropByteOrderMark)))
        {
            return PatchResult.No(source, $"'{source.Path}' cannot be read as JSON.");
        }

        var texts = new List<TextEdit>();
        foreach (var edit in edits)
        {
            if (EditWriter.Write(source, edit) is not { } written)
            {
                return PatchResult.No(source, $"There is nothing at '{edit.At.Pointer}' of '{source.Path}' that could be changed so.");
            }

            texts.AddRange(written);
        }

        // Insertions first where something else begins: they stand in front of it.
        var ordered = texts.Where(t => t.Span.Length > 0 || t.Text.Length > 0)
            .OrderBy(t => t.Span.Start)
            .ThenBy(t => t.Span.Length > 0)
            .ToList();
        for (var i = 1; i < ordered.Count; i++)
        {
            var (before, after) = (ordered[i - 1], ordered[i]);
            var samePoint = before.Span.Length == 0 && after.Span.Length == 0 && before.Span.Start == after.Span.Start;
            if (after.Span.Start < before.Span.End || (samePoint && !(before.BringsComma && after.BringsComma)))
            {
                return PatchResult.No(source, $"Two changes of '{source.Path}' overlap.");
            }
        }

        var bytes = Join(source.Bytes, ordered);
        var result = JsonReading.Read(source.Path, bytes, int.MaxValue);
        if (result.Source.Tree is null)
        {
            return PatchResult.No(source, $"'{source.Path}' would no longer be JSON.");
        }

        if (edits.Count > 1 && Twice(result) > Twice(JsonReading.Read(source.Path, source.Bytes.ToArray(), int.MaxValue)))
        {
            return PatchResult.No(source, $"Two changes of '{source.Path}' write the same key.");
        }

        var keepsMark = source.HadByteOrderMark && !edits.Any(e => e is JsonEdit.DropByteOrderMark);
        return new PatchResult { Before = source, Bytes = keepsMark ? [.. Encoding.UTF8.Preamble, .. bytes] : bytes, Edits = ordered };
    }

    /// <summary>A file that is not there yet.</summary>
    public static PatchResult Create(JsonEdit.NewFile file)
    {
        var text = JsonDraftWriter.Document(file.Content);
        return new PatchResult
        {
            Before = new SourceFile(file.At.File, []),
            Bytes = Encoding.UTF8.GetBytes(text),
            Edits = [new TextEdit(new ByteSpan(0, 0), text)],
            IsNew = true,
        };
    }

    private static int Twice(JsonReadResult read) => read.Problems.Count(p => p.Kind == ProblemKind.DuplicateKey);

    /// <summary>Applies edits of bytes, in order and apart from each other.</summary>
    public static byte[] Join(ReadOnlySpan<byte> bytes, IReadOnlyList<TextEdit> edits)
    {
        using var result = new MemoryStream(bytes.Length + edits.Sum(e => e.Text.Length));
        var at = 0;
        foreach (var edit in edits)
        {
            result.Write(bytes[at..edit.Span.Start]);
            result.Write(Encoding.UTF8.GetBytes(edit.Text));
            at = edit.Span.End;
        }

        result.Write(bytes[at..]);
        return result.ToArray();
    }
}
