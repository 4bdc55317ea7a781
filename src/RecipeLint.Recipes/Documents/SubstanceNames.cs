using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Finds substances by name wherever a file may name one.</summary>
/// <param name="catalogue">The built-in substances and the shop's own that serve the file.</param>
/// <param name="unread">Names whose entry in a substances file could not be read and is reported there.</param>
internal sealed class SubstanceNames(SubstanceCatalogue catalogue, IReadOnlySet<string> unread)
{
    /// <summary>The one substance a name fits; null after reporting that it fits none or several.</summary>
    public Substance? Find(Located<string>? name, JsonItem? item, FieldReader fields)
    {
        if (name is null || item is null)
        {
            return null;
        }

        switch (catalogue.Find(name.Value))
        {
            case SubstanceLookup.Found found:
                return found.Substance;
            case SubstanceLookup.Ambiguous several:
                fields.Report(AmbiguousSubstances.Describe(name, several.Candidates));
                return null;
            case SubstanceLookup.Unknown when unread.Contains(name.Value):
                return null;
            case SubstanceLookup.Unknown when Nutrients.Bearers(name.Value) is { Count: > 0 } bearers:
                var such = Wording.Join([.. bearers.Select(b => $"'{b}'")], "or");
                fields.Report(
                    ProblemKind.UnknownSubstance,
                    item,
                    $"'{Wording.Shorten(name.Value)}' {Nutrients.NoSubstance}. Write what is on the bag, such as {such}.");
                return null;
            case SubstanceLookup.Unknown when name.Value.EndsWith(".json", StringComparison.OrdinalIgnoreCase):
                fields.Report(
                    ProblemKind.UnknownSubstance,
                    item,
                    $"'{Wording.Shorten(name.Value)}' is a file, and a substance belongs here. Name the acid, alkali or salt itself and "
                        + "its strength, such as 'nitric-38' or 'phosphoric-85'; what was diluted is described with its per cent in a "
                        + "*.substances.json file of the shop.");
                return null;
            case SubstanceLookup.Unknown when EverydayNames.Hint(name.Value) is { } instead:
                fields.Report(
                    ProblemKind.UnknownSubstance, item, $"'{Wording.Shorten(name.Value)}' is no substance known here. {instead}");
                return null;
            case SubstanceLookup.Unknown unknown:
                var near = EverydayNames.Meant(name.Value, catalogue) is { Count: > 0 } meant ? meant : unknown.Suggestions;
                var hint = near.Count > 0
                    ? $"Did you mean {Wording.Join([.. near.Take(3).Select(s => $"'{s}'")], "or")}?"
                    : KnownNames.BuiltIn.IsKnown(name.Value)
                    ? "It is a substance of its own and no spelling of another, however like their names are. Describe it in a "
                        + "*.substances.json file of the shop, or use an id, formula or CAS number of the catalogue."
                    : "Describe it in a *.substances.json file of the shop, or use an id, formula or CAS number of the catalogue.";
                fields.Report(
                    ProblemKind.UnknownSubstance,
                    item,
                    $"'{Wording.Shorten(name.Value)}' is no substance known here. {hint}",
                    near);
                return null;
            default:
                return null;
        }
    }
}
