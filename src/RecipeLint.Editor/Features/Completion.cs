using System.Buffers;
using System.Text.Json.Nodes;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Editor.Documents;
using RecipeLint.Editor.Reading;
using RecipeLint.Editor.Sessions;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Shop;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Editor.Features;

/// <summary>What may be written at the cursor: keys of the schema, and names that the shop and the catalogue know.</summary>
internal sealed class Completion(View view, string text, int cursor)
{
    /// <summary>What can stand between two values of JSON.</summary>
    private static readonly SearchValues<char> _between = SearchValues.Create(",{}[]:");

    // Kinds of the protocol (CompletionItemKind).
    private const int Property = 10, Value = 12, Unit = 11, Reference = 18, File = 17, Constant = 21;

    private readonly ShopSettings _shop = view.Workspace.SettingsFor(view.File);

    public static JsonNode Of(View view, string text, int cursor) => new JsonObject
    {
        ["isIncomplete"] = false,
        ["items"] = CursorContext.At(text, cursor) is { } at ? Lsp.Array(new Completion(view, text, cursor).Items(at)) : [],
    };

    private IEnumerable<JsonObject> Items(CursorContext at)
    {
        var kind = DocumentKinds.FromFileName(view.File);
        var guide = SchemaGuide.For(kind);
        if (at.IsKey)
        {
            var keys = guide?.KeysAt(at.Tokens, at.Present) ?? [];
            return kind == DocumentKind.Settings && at.Tokens is ["rules", ..] ? RuleKeys(at)
                : keys.Where(k => k.Name != "$schema").Select(k => Key(at, k));
        }

        var key = guide?.KeyAt(at.Tokens);
        var names = kind switch
        {
            DocumentKind.Stock => StockValues(at),
            DocumentKind.Recipe => RecipeValues(at),
            DocumentKind.Batch => BatchValues(at),
            DocumentKind.Settings => SettingsValues(at),
            _ => [],
        };
        var words = (key?.Words ?? []).Select(w => Item(at, w.Trim('"'), "", Value, raw: w));
        var units = key is { IsQuantity: true } or { Name: "makes" or "pour" or "topUp" or "amount" } ? Units(at, key) : [];
        return [.. names, .. words, .. units];
    }

    private IEnumerable<JsonObject> StockValues(CursorContext at) => at.Tokens switch
    {
        ["steps", _, "add"] => [.. Substances(at), .. Files(at, ".stock.json")],
        ["steps", _, "using"] => Substances(at),
        ["steps", _, "of"] => Waters(at),
        ["steps", _, "with"] => Tools(at),
        ["vessel"] => _shop.Vessels.Select(v => Item(at, v.Name, "vessel", Reference)),
        ["keep", "at"] => Sites(at),
        _ => [],
    };

    private IEnumerable<JsonObject> RecipeValues(CursorContext at) => at.Tokens switch
    {
        ["doses", _, "stock"] => Files(at, ".stock.json"),
        ["doses", _, "add"] or ["adjust", "using"] => Substances(at),
        ["doses", _, "with"] => Tools(at),
        ["water"] => Waters(at),
        ["at"] => Sites(at),
        ["crop"] => [.. Profiles(at), .. Files(at, ".profile.json")],
        ["stage"] => view.Recipe is { } recipe ? ProfileLibrary.Stages(recipe.Profile.Name).Select(s => Item(at, s, "stage", Value)) : [],
        _ => [],
    };

    private IEnumerable<JsonObject> BatchValues(CursorContext at) => at.Tokens switch
    {
        ["stock"] => Files(at, ".stock.json"),
        ["recipe"] => Files(at, ".recipe.json"),
        ["steps", _, "add"] => Substances(at),
        ["steps", _, "with"] => Tools(at),
        ["seen", _, "at"] => Sites(at),
        _ => [],
    };

    private IEnumerable<JsonObject> SettingsValues(CursorContext at) => at.Tokens switch
    {
        ["profile"] => Profiles(at),
        ["suppressions", _, "rule"] => Rules().Select(r => Item(at, r.Name, $"{r.Id}: {r.Title}", Constant)),
        ["suppressions", _, "file"] =>
            view.Workspace.Sources.Keys.Where(f => !f.EndsWith(DocumentKinds.SettingsFileName, StringComparison.Ordinal))
            .Select(f => Item(at, f, "", File)),
        ["rules", _] or ["rules", _, "level"] => new[] { "off", "note", "warning", "error" }.Select(l => Item(at, l, "level", Value)),
        _ => [],
    };

    private IEnumerable<JsonObject> RuleKeys(CursorContext at)
    {
        if (at.Tokens is ["rules"])
        {
            return Rules().Where(r => !at.Present.Contains(r.Name))
                .Select(r => Item(at, r.Name, $"{r.Id}: {r.Title}", Constant, suffix: ": "));
        }

        return at.Tokens is [_, var name] && HouseRules.Find(_shop, name) is { } rule
            ? rule.Options.Select(o =>
                Item(at, o.Name, $"{o.Description} Default: {o.Default} {o.Unit}".TrimEnd(), Property, suffix: ": "))
                .Prepend(Item(at, "level", "off, note, warning or error", Property, suffix: ": "))
            : [];
    }

    private IEnumerable<RuleDescriptor> Rules() => RuleBook.Descriptors.Concat(_shop.HouseRules.Select(HouseRules.Descriptor));

    private IEnumerable<JsonObject> Substances(CursorContext at) =>
        view.Workspace.Catalogue.Substances.Select(s =>
            Item(at, s.Id, s.Formula is { } formula ? $"{s.Name}, {formula.Text}" : s.Name, Reference));

    private IEnumerable<JsonObject> Files(CursorContext at, string ending)
    {
        var folder = view.File.Contains('/', StringComparison.Ordinal) ? view.File[..view.File.LastIndexOf('/')] : "";
        return view.Workspace.Sources.Keys.Where(f => f != view.File && f.EndsWith(ending, StringComparison.Ordinal))
            .Select(f => Item(at, RelativeWay.Of(folder, f), view.Workspace.FindStock(f)?.Name ?? "", File));
    }

    private IEnumerable<JsonObject> Waters(CursorContext at) =>
        BuiltInWaters.Names.Select(n => Item(at, n, "built-in water", Value)).Concat(Files(at, ".water.json"));

    private IEnumerable<JsonObject> Tools(CursorContext at) =>
        _shop.Scales.Select(s => Item(at, s.Name, $"scale, reads to {Figures.Of(s.Readability.Grams)} g", Reference))
            .Concat(_shop.Measures.Select(m =>
                Item(
                    at,
                    m.Name,
                    $"{m.Kind.ToString().ToLowerInvariant()}{(m.Capacity is { } full ? $", {Figures.Of(full.Millilitres)} mL" : "")}",
                    Reference)));

    private IEnumerable<JsonObject> Sites(CursorContext at) => _shop.Sites.Select(s => Item(at, s.Name, "site", Reference));

    private IEnumerable<JsonObject> Profiles(CursorContext at) =>
        ProfileLibrary.AllNames.Concat(view.Workspace.Profiles.Select(p => p.Name)).Distinct(StringComparer.Ordinal)
            .Select(n => Item(at, n, "crop profile", Reference));

    /// <summary>
    /// A number that stands there gets the usual units behind it; without one the examples of the schema stand for themselves.
    /// </summary>
    private IEnumerable<JsonObject> Units(CursorContext at, SchemaKey key)
    {
        var number = string.Concat(at.Written.TrimStart().TakeWhile(c => char.IsAsciiDigit(c) || c is '.' or '/' or '-'));
        return number.Length == 0
            ? key.Examples.Where(e => e.StartsWith('"')).Select(e => Item(at, e.Trim('"'), "example", Unit))
            : UsualUnits(key.Name).Select(u => Item(at, $"{number} {u}", "", Unit));
    }

    private static IReadOnlyList<string> UsualUnits(string key) => key switch
    {
        "makes" or "pour" or "topUp" or "final" or "capacity" => Due.Volume.UsualUnits,
        "amount" => Due.Portion.UsualUnits,
        "dose" => Due.Dose.UsualUnits,
        "assay" => Due.Assay.UsualUnits,
        "strength" => Due.Strength.UsualUnits,
        "for" => Due.Duration.UsualUnits,
        "at" => Due.Temperatures.UsualUnits,
        "density" => Due.Density.UsualUnits,
        "EC" or "ec" => Due.Conductivity.UsualUnits,
        "readability" or "repeatability" or "minimumWeight" or "tare" => Due.Mass.UsualUnits,
        _ => Due.Analyte.UsualUnits,
    };

    private JsonObject Key(CursorContext at, SchemaKey key)
    {
        var item = Item(at, key.Name, key.Type, Property, suffix: ": ");
        item["documentation"] = key.Description;
        return item;
    }

    /// <param name="raw">As it stands in the file where it is no text.</param>
    private JsonObject Item(CursorContext at, string label, string detail, int kind, string? raw = null, string suffix = "")
    {
        var quoted = raw is not null && !raw.StartsWith('"') ? raw : $"\"{label}\"";
        var end = cursor;
        if (at.IsQuoted)
        {
            // What stands behind the cursor on this line up to the closing quote goes with it.
            var line = text.AsSpan(cursor).IndexOfAny('\n', '\r') is var stop and >= 0 ? text.AsSpan(cursor, stop) : text.AsSpan(cursor);
            var close = line.IndexOf('"');
            end = close >= 0 && line[..close].IndexOfAny(_between) < 0 ? cursor + close + 1 : cursor;
        }

        var hasColon = suffix.Length > 0 && text.AsSpan(end).TrimStart().StartsWith(":");
        var range = new TextRange(TextLines.PositionOf(text, at.Start), TextLines.PositionOf(text, end));
        return new JsonObject
        {
            ["label"] = label,
            ["kind"] = kind,
            ["detail"] = detail,
            ["filterText"] = at.IsQuoted ? quoted : label,
            ["textEdit"] = Lsp.Edit(range, quoted + (hasColon ? "" : suffix)),
        };
    }
}
