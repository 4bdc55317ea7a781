using System.Text;
using System.Text.Json;

namespace RecipeLint.Editor.Setup;

/// <summary>
/// Settings of an editor, for one shop: which schema describes which file and, where the editor takes it from a file, how the language
/// server is
/// started. The forms of the editors' own files are recalled, not looked up.
/// </summary>
/// <param name="Path">In the shop.</param>
/// <param name="Hint">What is left to do by hand, one sentence.</param>
public sealed record EditorSettings(string Path, string Text, string Hint)
{
    /// <summary>The editors there are settings for.</summary>
    public static IReadOnlyList<string> Names { get; } = ["helix", "neovim", "vscode"];

    /// <exception cref="ArgumentOutOfRangeException">The name is none of these.</exception>
    public static EditorSettings For(string name) => name switch
    {
        "vscode" => new(".vscode/settings.json", VsCode(),
            "For findings while typing, point any client of the Language Server Protocol at 'recipelint language-server'."),
        "neovim" => new(".nvim.lua", Neovim(), "Neovim reads this file where 'exrc' is set and it is trusted."),
        "helix" => new(".helix/languages.toml", Helix(),
            "The schemas need the editor's own JSON server; findings come from RecipeLint alone."),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No settings for this editor."),
    };

    private static string VsCode()
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteStartArray("json.schemas");
            foreach (var (pattern, schema) in PublishedSchemas.Associations)
            {
                json.WriteStartObject();
                json.WriteStartArray("fileMatch");
                json.WriteStringValue(pattern);
                json.WriteEndArray();
                json.WriteString("url", $"./{PublishedSchemas.Folder}/{schema}");
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    private static string Neovim()
    {
        var text = new StringBuilder("""
            vim.lsp.config('recipelint', {
              cmd = { 'recipelint', 'language-server' },
              filetypes = { 'json' },
              root_markers = { 'recipelint.json', '.git' },
            })
            vim.lsp.enable('recipelint')

            vim.lsp.config('jsonls', { settings = { json = { schemas = {

            """.ReplaceLineEndings("\n"));
        foreach (var (pattern, schema) in PublishedSchemas.Associations)
        {
            text.Append("  { fileMatch = { '").Append(pattern).Append("' }, url = vim.uri_from_fname(vim.fn.getcwd() .. '/")
                .Append(PublishedSchemas.Folder).Append('/').Append(schema).Append("') },\n");
        }

        return text.Append("} } } })\n").ToString();
    }

    private static string Helix()
    {
        var text = new StringBuilder("""
            [language-server.recipelint]
            command = "recipelint"
            args = ["language-server"]

            [[language]]
            name = "json"
            language-servers = ["recipelint", "vscode-json-language-server"]

            """.ReplaceLineEndings("\n"));
        foreach (var (pattern, schema) in PublishedSchemas.Associations)
        {
            text.Append("\n[[language-server.vscode-json-language-server.config.json.schemas]]\nfileMatch = [\"").Append(pattern)
                .Append("\"]\nurl = \"./").Append(PublishedSchemas.Folder).Append('/').Append(schema).Append("\"\n");
        }

        return text.ToString();
    }
}
