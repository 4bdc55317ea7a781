using System.Text.Json.Nodes;
using RecipeLint.Editor.Protocol;
using RecipeLint.Editor.Reading;
using RecipeLint.Editor.Sessions;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Editor.Features;

/// <summary>From a name to what it means, to where else it stands, and to another name.</summary>
internal static class Navigation
{
    private const string StockEnding = ".stock.json";

    public static JsonNode? Definition(View view, int offset) =>
        ThingAt(view, offset) is { } thing && Things.Home(view.Workspace, thing) is { } home ? Lsp.Location(view, home) : null;

    public static JsonNode References(View view, Desk desk, int offset, bool withHome)
    {
        if (ThingAt(view, offset) is not { } thing)
        {
            return new JsonArray();
        }

        var around = Around(view, desk, thing);
        var places = Things.UsesIn(around.Workspace).Where(u => Same(u.Thing, thing)).Select(u => u.Place).ToList();
        if (withHome && Things.Home(around.Workspace, thing) is { } home)
        {
            places.Insert(0, home);
        }

        return Lsp.Array(places.Select(p => Lsp.Location(around, p)));
    }

    /// <summary>What of a name would be replaced; null where nothing can be renamed.</summary>
    public static JsonNode? PrepareRename(View view, int offset)
    {
        if (Under.At(view.Source?.Tree, offset) is not { OnKey: false } under)
        {
            return null;
        }

        if (StepIdAt(view, under) is { } step)
        {
            return new JsonObject { ["range"] = Lsp.Node(view.RangeOf(view.File, under.Span)), ["placeholder"] = step.Id };
        }

        return StockAt(view, under) is { } file
            ? new JsonObject
            {
                ["range"] = Lsp.Node(view.RangeOf(view.File, under.Span)),
                ["placeholder"] = NameOf(file)[..^StockEnding.Length]
            }
            : null;
    }

    /// <summary>
    /// Another name for a stock: its file, every reference to it and every suppression that names it. Or another id for a step, with the
    /// suppressions that name it.
    /// </summary>
    /// <exception cref="RpcException">Nothing can be renamed there, or not so.</exception>
    public static JsonNode Rename(View view, Desk desk, int offset, string name)
    {
        var under = Under.At(view.Source?.Tree, offset);
        if (under is { OnKey: false } && StepIdAt(view, under) is { } step)
        {
            return RenameStep(view, under, step, name);
        }

        if (under is not { OnKey: false } || StockAt(view, under) is not { } file)
        {
            throw new RpcException(RpcCodes.RequestFailed, "Stocks and the ids of steps can be renamed; here is neither.");
        }

        name = name.EndsWith(StockEnding, StringComparison.OrdinalIgnoreCase) ? name[..^StockEnding.Length] : name;
        if (name.Length is 0 or > 100 || name.Any(c => !char.IsLetterOrDigit(c) && c is not ('-' or '_' or '.' or ' '))
            || name.StartsWith('.'))
        {
            throw RpcException.Invalid($"'{name}' cannot be a file name; use letters, digits, '-' and '_'.");
        }

        var around = Around(view, desk, new Thing(ThingKind.File, file));
        var target = file[..^NameOf(file).Length] + name + StockEnding;
        if (around.Workspace.Sources.ContainsKey(target) || desk.Exists(around.FullPathOf(target)))
        {
            throw new RpcException(RpcCodes.RequestFailed, $"'{target}' is there already.");
        }

        var edits = Things.UsesIn(around.Workspace).Where(u => Same(u.Thing, new Thing(ThingKind.File, file)))
            .Select(u => (u.Place, Text: Renamed(around, u.Place, name + StockEnding)));
        var changes = Changes(around, edits);
        changes.Add((JsonNode)new JsonObject
        {
            ["kind"] = "rename",
            ["oldUri"] = around.UriOf(file),
            ["newUri"] = Documents.FileUri.Of(around.FullPathOf(target))
        });
        return new JsonObject { ["documentChanges"] = changes };
    }

    private static JsonObject RenameStep(View view, Under under, Step step, string name)
    {
        if (name.Length is 0 or > 60 || !name.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-')
            || name.StartsWith('-'))
        {
            throw RpcException.Invalid($"'{name}' cannot be an id; use small letters, digits and '-'.");
        }

        if (view.Workspace.FindStock(view.File)!.Steps.Any(s => s.Id == name))
        {
            throw new RpcException(RpcCodes.RequestFailed, $"Another step has the id '{name}'.");
        }

        var old = $"steps/{step.Id}";
        var edits = Things.SettingsOf(view.Workspace).SelectMany(s => s.Suppressions)
            .Where(s => s.File == view.File && s.IdPath is { } path
                && (path == old || path.StartsWith(old + "/", StringComparison.Ordinal)))
            .Select(s => (Place: s.Place.Child("at"), Text: $"steps/{name}{s.IdPath![old.Length..]}"))
            .Prepend((Place: new Place(view.File, under.Item.Pointer), Text: name));
        return new JsonObject { ["documentChanges"] = Changes(view, edits) };
    }

    private static JsonArray Changes(View view, IEnumerable<(Place Place, string Text)> edits) => Lsp.Array(
        edits.GroupBy(e => e.Place.File).OrderBy(g => g.Key, StringComparer.Ordinal).Select(file => new JsonObject
        {
            ["textDocument"] = new JsonObject
            {
                ["uri"] = view.UriOf(file.Key),
                ["version"] = view.Documents.At(view.FullPathOf(file.Key))?.Version
            },
            ["edits"] = Lsp.Array(file.Select(e => Lsp.Edit(view.RangeOf(e.Place), $"\"{e.Text}\""))),
        }));

    /// <summary>The way as it was written, with another file at its end.</summary>
    private static string Renamed(View view, Place place, string name)
    {
        var written = view.Workspace.Sources[place.File].Tree!.Find(place.Pointer)!.Text;
        return written[..(written.LastIndexOf('/') + 1)] + name;
    }

    private static Thing? ThingAt(View view, int offset) =>
        Under.At(view.Source?.Tree, offset) is { } under ? Things.At(view.Workspace, view.File, under) : null;

    private static string? StockAt(View view, Under under) =>
        Things.At(view.Workspace, view.File, under) is { Kind: ThingKind.File } thing && view.Workspace.FindStock(thing.Key) is not null
            ? thing.Key : null;

    private static Step? StepIdAt(View view, Under under) =>
        under.Tokens is ["steps", _, "id"] && Figures.EntryOf(under.Tokens, "steps") is { } at
            ? view.Workspace.FindStock(view.File)?.Steps.FirstOrDefault(s => s.Place.Pointer.Value == at)
            : null;

    /// <summary>
    /// A file is looked for in the whole repository, for another shop may draw on it; where there is none, from its own place: whoever
    /// draws on it is read with it.
    /// </summary>
    private static View Around(View view, Desk desk, Thing thing) => thing.Kind != ThingKind.File ? view
        : desk.Repository(view) is { } whole ? whole
        : desk.ViewOf(view.FullPathOf(thing.Key)) is { } own && own.Workspace.Root == view.Workspace.Root ? own : view;

    private static bool Same(Thing one, Thing other) => one == other;

    private static string NameOf(string file) => file[(file.LastIndexOf('/') + 1)..];
}
