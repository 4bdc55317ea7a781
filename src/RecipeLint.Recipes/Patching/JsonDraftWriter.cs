using System.Text.Encodings.Web;
using System.Text.Json;

namespace RecipeLint.Recipes.Patching;

/// <summary>Writes drafts in the layout of a file.</summary>
internal static class JsonDraftWriter
{
    /// <summary>With more members than this an object no longer reads well on one line.</summary>
    private const int LongObject = 3;

    /// <summary>On one line.</summary>
    public static string OneLine(JsonDraft draft, JsonLayout layout) => draft switch
    {
        JsonDraft.Text text => Quoted(text.Value),
        JsonDraft.Literal literal => literal.Word,
        JsonDraft.Object { Members.Count: 0 } => "{}",
        JsonDraft.Object item => $"{{{layout.Pad}{string.Join(layout.Comma, item.Members.Select(m => Pair(m, layout)))}{layout.Pad}}}",
        JsonDraft.List list => $"[{string.Join(layout.Comma, list.Items.Select(i => OneLine(i, layout)))}]",
        _ => throw new InvalidOperationException("An unknown kind of draft."),
    };

    /// <summary>An object with each member on a line of its own; anything else on one line.</summary>
    /// <param name="indentation">Of the line the object begins on.</param>
    public static string Lines(JsonDraft draft, JsonLayout layout, string indentation)
    {
        if (draft is not JsonDraft.Object { Members.Count: > 0 } item)
        {
            return OneLine(draft, layout);
        }

        var inner = layout.LineEnd + indentation + layout.Indent;
        return $"{{{inner}{string.Join("," + inner, item.Members.Select(m => Pair(m, layout)))}{layout.LineEnd}{indentation}}}";
    }

    /// <summary>A whole file: each member on a line, each entry of a list and of a long object on a line, closed by a line end.</summary>
    public static string Document(JsonDraft.Object document)
    {
        var layout = new JsonLayout("\n", "  ", " ", ": ", ", ");
        var members = document.Members.Select(m => m.Value switch
        {
            JsonDraft.List { Items.Count: > 0 } list =>
                $"  {Quoted(m.Name)}: [\n{string.Join(",\n", list.Items.Select(i => "    " + OneLine(i, layout)))}\n  ]",
            JsonDraft.Object { Members.Count: > LongObject } => $"  {Quoted(m.Name)}: {Lines(m.Value, layout, "  ")}",
            _ => "  " + Pair(m, layout),
        });
        return $"{{\n{string.Join(",\n", members)}\n}}\n";
    }

    public static string Pair(DraftMember member, JsonLayout layout) => Quoted(member.Name) + layout.Colon + OneLine(member.Value, layout);

    /// <summary>With quotes; only what JSON forbids is escaped.</summary>
    public static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";
}
