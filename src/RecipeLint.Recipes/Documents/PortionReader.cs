using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Reads how much of something goes in, and whether it can be measured that way.</summary>
internal static class PortionReader
{
    /// <summary>The portion and its tolerance; null when it cannot be used (reported).</summary>
    public static (Located<Portion>? Amount, Tolerance? Tolerance) Read(JsonItem? item, Due due, FieldReader fields)
    {
        if (fields.Quantity(item, due) is not { } quantity)
        {
            return (null, null);
        }

        var portion = Plausibility.PositivePortion(new Located<Portion>(From(quantity), fields.At(item!)), item, fields);
        return (portion, portion is null ? null : quantity.Tolerance);
    }

    /// <summary>
    /// Checks that a substance can be measured in that way: a solid has no volume of its own, and only a compound with a formula has moles.
    /// </summary>
    public static bool Fits(Portion portion, Substance substance, JsonItem item, FieldReader fields)
    {
        var problem = portion switch
        {
            Portion.ByVolume or Portion.ByDrops or Portion.PerLitreVolume when substance.Form == PhysicalForm.Solid =>
                $"'{Wording.Shorten(item.Text)}' is a volume, but '{substance.Id}' is a solid, and how much of it a volume holds depends "
                    + "on how it is heaped. Weigh it: state a mass.",
            Portion.ByVolume or Portion.ByDrops or Portion.PerLitreVolume when substance.Density is null
                && !IsOfUnknownComposition(substance) =>
                $"'{Wording.Shorten(item.Text)}' is a volume, but no density of '{substance.Id}' is known. State a mass, or its density "
                    + "in the *.substances.json file.",
            Portion.ByAmount or Portion.PerLitreAmount when substance.Formula is null =>
                $"'{Wording.Shorten(item.Text)}' counts moles, but '{substance.Id}' is known by its label only and has no molar mass. "
                    + "State a mass or a volume.",
            _ => null,
        };
        if (problem is not null)
        {
            fields.Report(ProblemKind.WrongDimension, item, problem);
        }

        return problem is null;
    }

    public static bool IsOfUnknownComposition(Substance substance) => substance.Dissolves.Count == 0 && !substance.Content.Elements.Any();

    private static Portion From(Quantity quantity) => quantity.Dimension switch
    {
        Dimension.Mass => new Portion.ByMass(quantity.Mass),
        Dimension.Volume => new Portion.ByVolume(quantity.Volume),
        Dimension.Drops => new Portion.ByDrops(quantity.Drops),
        Dimension.Amount => new Portion.ByAmount(quantity.Amount),
        Dimension.MassConcentration => new Portion.PerLitreMass(quantity.MassConcentration),
        Dimension.AmountConcentration => new Portion.PerLitreAmount(quantity.AmountConcentration),
        _ => new Portion.PerLitreVolume(quantity.Dose),
    };
}
