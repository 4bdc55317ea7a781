using System.Globalization;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>An acid, vinegar or other solution at the strength that a file states beside it.</summary>
internal static class StatedStrength
{
    private const double WaterGramsPerMillilitre = 0.9982;

    /// <summary>A compound at another strength; the catalogue's figures hold at its own, and all scale with it.</summary>
    public static Substance Of(Substance compound, MassFraction strength, Sourced<string> record)
    {
        var scale = strength.Value / compound.Strength.Value;
        return compound with
        {
            HydrateFamily = null,
            Content = new ElementContent(
                compound.Content.Elements.Select(e => KeyValuePair.Create(e, compound.Content[e] * scale)),
                Enum.GetValues<NitrogenForm>().Select(f => KeyValuePair.Create(f, compound.Content[f] * scale))),
            Dissolves = [.. compound.Dissolves.Select(d => d with { MolesPerGram = d.MolesPerGram * scale })],
            Strength = strength,
            StrengthRecord = record,
            StatesItsStrength = true,
            NeedsAssay = false,
            Impurities = [],
            Solubility = null,
        };
    }

    /// <summary>
    /// Of the grades of one compound the one whose hazards hold at a strength: the next stronger, also where the name that was written
    /// knows only weaker ones; the strongest where the catalogue has none as strong.
    /// </summary>
    public static Substance GradeAt(IReadOnlyList<Substance> named, double share)
    {
        IEnumerable<Substance> AsStrong(IEnumerable<Substance> grades) => grades.Where(g => g.Strength.Value >= share * (1 - 1e-9));
        IReadOnlyList<Substance> all = named[0].Formula is { } formula
            && SubstanceCatalogue.BuiltIn.Find(formula.Text) is SubstanceLookup.Ambiguous several
                ? [.. named, .. several.Candidates.Where(c => c.Formula?.Hill == formula.Hill && c.Form == named[0].Form)]
                : named;
        return AsStrong(named).MinBy(g => g.Strength.Value) ?? AsStrong(all).MinBy(g => g.Strength.Value)
            ?? all.MaxBy(g => g.Strength.Value)!;
    }

    /// <summary>The reagent of an "adjust", at its "strength" where one stands beside it; null after reporting what is wrong.</summary>
    public static Substance? Reagent(JsonItem adjust, Resolution resolution, FieldReader fields) =>
        fields.Text(adjust["using"]) is { } what && adjust["using"] is { } named && adjust["strength"] is { } strength
            ? Read(what, named, strength, resolution, fields)
            : resolution.FindSubstance(fields.Text(adjust["using"]), adjust["using"], fields);

    /// <summary>
    /// The substance of a step, dose or adjustment that has a "strength"; null after reporting what is wrong with either.
    /// </summary>
    public static Substance? Read(Located<string> what, JsonItem add, JsonItem item, Resolution resolution, FieldReader fields)
    {
        var strengths = StrengthsOf(what.Value, resolution.Catalogue);
        if (strengths.Count == 0)
        {
            if (resolution.FindSubstance(what, add, fields) is { } pure)
            {
                fields.Report(
                    ProblemKind.WrongShape,
                    item,
                    $"'{pure.Id}' is no solution that comes in several strengths. Write how pure it is as its 'assay'.");
            }

            return null;
        }

        if (fields.Quantity(item, Due.Strength with { PlainPercentIsByMass = true }) is not { } quantity
            || ShareOf(quantity, strengths) is not { } share)
        {
            return null;
        }

        if (share is not (> 0 and <= 1))
        {
            fields.Report(new Problem(
                ProblemKind.ImpossibleAnalysis,
                fields.At(item),
                $"'{Wording.Shorten(item.Text)}' would be {Plausibility.Text(share * 100)} % by mass; "
                + "a solution holds more than 0 and at most 100 %.")
            {
                Values = [new NamedValue("percent", share * 100, "%")],
            });
            return null;
        }

        if (share > MostOf(strengths) && IsSoldSolid(what.Value, resolution.Catalogue))
        {
            fields.Report(ProblemKind.WrongShape, item, TooStrongForLye(what.Value, item.Text));
            return null;
        }

        var compound = GradeAt(strengths, share);
        var percent = Math.Round(share * 100, 2).ToString("0.##", CultureInfo.InvariantCulture);
        return Of(compound, new MassFraction(share), new Sourced<string>(item.Text, $"stated in {fields.File}", Confidence.Found)) with
        {
            Id = $"{Stem(compound.Id, '-')}-{percent}",
            Name = $"{Stem(compound.Name.Split(',', '(')[0].Trim(), ' ')} {percent} %",
            Aliases = [],
            Density = new Sourced<Density>(new Density(DensityAt(share, compound)), "density by strength at 20 °C", Confidence.Derived),
        };
    }

    /// <summary>Liquids of one compound that a name fits, weakest first; empty where it fits anything else.</summary>
    private static List<Substance> StrengthsOf(string name, SubstanceCatalogue catalogue)
    {
        IReadOnlyList<Substance> candidates = catalogue.Find(name) switch
        {
            SubstanceLookup.Found found => [found.Substance],
            SubstanceLookup.Ambiguous several => several.Candidates,
            _ => [],
        };
        if (candidates is [{ Form: PhysicalForm.Solid, Formula: { } formula, Kind: SubstanceKind.Base }])
        {
            // "KOH 10 %" is the lye: the flakes themselves come as an assay.
            candidates =
            [
                .. catalogue.Substances.Where(s => s is { Form: PhysicalForm.Liquid, Formula: { } other } && other.Hill == formula.Hill),
            ];
        }

        return candidates.Count > 0
            && candidates.All(c => c is { Form: PhysicalForm.Liquid, Formula: not null, Strength.Value: > 0, Density: not null })
            && candidates.Select(c => c.Formula!.Hill).Distinct(StringComparer.Ordinal).Count() == 1
                ? [.. candidates.OrderBy(c => c.Strength.Value).ThenBy(c => c.Id, StringComparer.Ordinal)]
                : [];
    }

    private static double MostOf(List<Substance> strengths) => strengths[^1].Strength.Value * (1 + 1e-9);

    private static string TooStrongForLye(string name, string strength) =>
        $"'{Wording.Shorten(name)}' is a solid, and no lye of it is as strong as '{Wording.Shorten(strength)}'. Write how pure the solid "
        + "is as its 'assay'.";

    private static bool IsSoldSolid(string name, SubstanceCatalogue catalogue) =>
        catalogue.Find(name) is SubstanceLookup.Found { Substance.Form: PhysicalForm.Solid };

    private static double? ShareOf(Quantity quantity, List<Substance> strengths)
    {
        if (quantity.Dimension == Dimension.MassFraction)
        {
            return quantity.Low;
        }

        var perMole = quantity.Dimension == Dimension.AmountConcentration ? strengths[0].Formula!.MolarMass.GramsPerMole : 1;
        var gramsPerLitre = quantity.Low * perMole;
        if (Table(strengths[0]) is { } table)
        {
            return table.AtGramsPerLitre(gramsPerLitre).MassPercent / 100;
        }

        // Share and density follow from each other; a few turns settle them.
        var share = gramsPerLitre / 1000;
        for (var i = 0; i < 20; i++)
        {
            share = gramsPerLitre / 1000 / DensityAt(Math.Min(share, 1), strengths[^1]);
        }

        return share;
    }

    /// <summary>From the handbook table of the compound; without one on the line from water to the grade of the catalogue.</summary>
    private static double DensityAt(double share, Substance compound) =>
        Table(compound)?.AtMassPercent(share * 100).DensityGramsPerMl
        ?? WaterGramsPerMillilitre
            + ((compound.Density!.Value.GramsPerMillilitre - WaterGramsPerMillilitre) * share / compound.Strength.Value);

    private static AcidStrength? Table(Substance compound) =>
        AcidStrength.All.FirstOrDefault(t => FormulaParser.Parse(t.Formula).Hill == compound.Formula!.Hill);

    /// <summary>A name without the strength at its end: "vinegar-5" and "household vinegar 5 %" lose it.</summary>
    private static string Stem(string name, char separator)
    {
        var words = name.Split(separator).ToList();
        while (words.Count > 1 && words[^1].All(c => char.IsAsciiDigit(c) || c is '.' or '%'))
        {
            words.RemoveAt(words.Count - 1);
        }

        return string.Join(separator, words);
    }
}
