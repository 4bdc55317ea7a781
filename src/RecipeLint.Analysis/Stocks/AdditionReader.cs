using System.Globalization;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Stocks;

/// <summary>One substance put in, as the file states it.</summary>
internal sealed record AdditionRequest(
    string Id, Place Place, Substance Substance, Portion Portion, Located<MassFraction>? Assay, string? With);

/// <summary>Turns a stated addition into what it brings.</summary>
internal static class AdditionReader
{
    /// <summary>What an addition brings; null when its mass cannot be known, which is noted among the assumptions.</summary>
    /// <param name="makes">The volume "per litre" refers to.</param>
    public static AdditionFacts? Read(AdditionRequest request, Volume makes, ShopSettings shop, AssumptionList assumptions)
    {
        var substance = request.Substance;
        if (PortionMass.Of(request.Portion, substance, makes) is not { } portion)
        {
            var why = request.Portion is Portion.ByAmount or Portion.PerLitreAmount
                ? $"The formula of '{substance.Id}' is not known, so its moles cannot be turned into mass; it is left out."
                : $"A volume of the solid '{substance.Id}' cannot be turned into mass; it is left out.";
            assumptions.Add("left-out", why, request.Place);
            return null;
        }

        if (portion.DensityAssumed)
        {
            assumptions.Add("density", $"No density is known for '{substance.Id}': it is counted as 1 g/mL.", request.Place);
        }

        if (substance.Assumption is { } assumed)
        {
            assumptions.Add("substance", assumed, request.Place);
        }

        if (!substance.Content.Elements.Any() && substance.Dissolves.Count == 0)
        {
            assumptions.Add(
                "unknown-composition", $"The composition of '{substance.Id}' is not known: what it brings is not counted.", request.Place);
        }

        var factor = AssayFactor(request, assumptions);
        var equipment = Equipment.Choose(shop, request.With, request.Portion, portion.Mass, portion.Volume);
        var grams = portion.Mass.Grams;
        return new AdditionFacts
        {
            Id = request.Id,
            Place = request.Place,
            Substance = substance,
            Mass = portion.Mass,
            Volume = portion.Volume,
            Assay = request.Assay?.Value ?? MassFraction.One,
            AssayDeclared = request.Assay is not null,
            Elements = ElementTotals.Of(substance.Content, portion.Mass).Times(factor),
            ComponentMoles = ComponentMoles.Of(
                substance.Dissolves.Select(y => KeyValuePair.Create(y.Component, y.MolesPerGram * grams * factor))),
            Impurities = ElementTotals.OfGrams(
                substance.Impurities
                    .GroupBy(i => i.Element)
                    .Select(g => KeyValuePair.Create(g.Key, g.Max(i => i.Content.Value.Value) * grams)),
                []),
            Scale = equipment.Scale,
            Measure = equipment.Measure,
            EquipmentStated = equipment.Stated,
        };
    }

    private static double AssayFactor(AdditionRequest request, AssumptionList assumptions)
    {
        var substance = request.Substance;
        if (request.Assay is not { } assay)
        {
            if (substance.Content.Elements.Any())
            {
                assumptions.AddUndeclaredAssay(substance);
            }

            return 1;
        }

        var strength = substance.Strength.Value;
        if (strength >= 1 || strength <= 0)
        {
            return assay.Value.Value;
        }

        var declared = assay.Value.Percent.ToString("0.######", CultureInfo.InvariantCulture);
        var nominal = (strength * 100).ToString("0.######", CultureInfo.InvariantCulture);
        if (AssayReading.IsStrength(substance, assay.Value))
        {
            assumptions.Add(
                "assay-reading",
                $"The assay of {declared} % for '{substance.Id}' is read as its strength in place of {nominal} %.",
                assay.Place);
            return assay.Value.Value / strength;
        }

        assumptions.Add(
            "assay-reading",
            $"The assay of {declared} % for '{substance.Id}' is read as that share of its strength of {nominal} %.",
            assay.Place);
        return assay.Value.Value;
    }
}
