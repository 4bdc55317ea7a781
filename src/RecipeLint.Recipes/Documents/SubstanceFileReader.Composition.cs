using System.Globalization;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <content>What a product is made of: by formula, by strength, by label, or not known.</content>
internal sealed partial class SubstanceFileReader
{
    /// <summary>A stated molar mass further off than this names another hydrate or a slip.</summary>
    private const double MolarMassTolerance = 0.005;

    private Substance? ByFormula(JsonItem entry, JsonItem item, Basics basic)
    {
        if (!FormulaParser.TryParse(item.Text, out var formula, out var error))
        {
            fields.Report(
                new QuantityFault(
                    ProblemKind.ImpossibleAnalysis,
                    Math.Min(error.Position, item.Text.Length),
                    error.Position < item.Text.Length ? 1 : 0,
                    $"'{Wording.Shorten(item.Text)}' is not a formula. {error.Reason}."),
                item);
            return null;
        }

        CheckMolarMass(entry["molarMass"], item, formula);
        var assay = Plausibility.Share(fields.Located(entry["assay"], Due.Assay, q => q.MassFraction), entry["assay"], fields, "An assay");
        var strength = assay?.Value ?? MassFraction.One;
        var ionsKnown = IonReading.TryRead(formula, SubstanceCatalogue.BuiltIn, out var ions);
        var moles = ions ?? new Dictionary<string, double>();
        var kin = SubstanceCatalogue.BuiltIn.Find(formula.Text) switch
        {
            SubstanceLookup.Found found => found.Substance,
            SubstanceLookup.Ambiguous several =>
                several.Candidates.FirstOrDefault(c => c.Formula?.Hill == formula.Hill && c.Strength.Value >= 1),
            _ => null,
        };
        return new Substance
        {
            Id = basic.Id,
            Name = basic.Name,
            Kind = basic.Kind ?? kin?.Kind ?? SubstanceKind.Salt,
            Form = basic.Form ?? (basic.Density is null ? PhysicalForm.Solid : PhysicalForm.Liquid),
            Formula = formula,
            Content = Content(formula, moles, strength),
            Dissolves = Dissolution.Yields(formula, moles, strength),
            Strength = strength,
            StrengthRecord = assay is null ? null : new Sourced<string>(entry["assay"]!.Text, $"stated in {fields.File}", Confidence.Found),
            NeedsAssay = kin is { NeedsAssay: true } && assay is null,
            TypicalAssay = kin?.TypicalAssay,
            Density = basic.Density,
            FeedsMicrobes = kin?.FeedsMicrobes ?? false,
            Hazards = kin?.Hazards,
            KeepApartFrom = kin?.KeepApartFrom,
            Solubility = kin?.Solubility,
            Assumption = ionsKnown ? null : $"Which ions {formula.Text} sets free is not known here; only its elements are counted.",
        };
    }

    /// <summary>Nitrogen that no known component carries is counted as organic, so that the forms add up to the total.</summary>
    private static ElementContent Content(Formula formula, IReadOnlyDictionary<string, double> moles, MassFraction strength)
    {
        var content = Dissolution.Content(formula, moles, strength);
        var forms = Enum.GetValues<NitrogenForm>();
        var rest = content[Element.N] - forms.Sum(f => content[f]);
        return rest <= 1e-12
            ? content
            : new ElementContent(
                content.Elements.Select(e => KeyValuePair.Create(e, content[e])),
                forms.Select(f => KeyValuePair.Create(f, content[f])).Append(KeyValuePair.Create(NitrogenForm.Organic, rest)));
    }

    private void CheckMolarMass(JsonItem? item, JsonItem formulaItem, Formula formula)
    {
        if (Plausibility.Positive(
            fields.Located(item, Due.MolarMass, q => q.MolarMass), m => m.GramsPerMole, item, fields) is not { } stated)
        {
            return;
        }

        var computed = formula.MolarMass.GramsPerMole;
        var off = (stated.Value.GramsPerMole / computed) - 1;
        if (Math.Abs(off) <= MolarMassTolerance)
        {
            return;
        }

        fields.Report(new Problem(
            ProblemKind.FormulaMassDisagrees,
            fields.At(item!),
            string.Create(
                CultureInfo.InvariantCulture,
                $"The formula {formula.Text} weighs {computed:0.00} g/mol, the label says {stated.Value.GramsPerMole:0.00##} g/mol, ")
            + string.Create(
                CultureInfo.InvariantCulture,
                $"{Math.Abs(off * 100):0.0} % {(off > 0 ? "more" : "less")}. {HydrateHint(stated.Value, formula)}"))
        {
            Related = [new RelatedPlace(fields.At(formulaItem), "the formula")],
            Values =
            [
                new NamedValue("stated", stated.Value.GramsPerMole, "g/mol"),
                new NamedValue("computed", computed, "g/mol"),
                new NamedValue("factor", stated.Value.GramsPerMole / computed, ""),
            ],
        });
    }

    /// <summary>Names the hydrate that would have the stated mass, when one does.</summary>
    private static string HydrateHint(MolarMass stated, Formula formula)
    {
        var water = FormulaParser.Parse(Component.Water).MolarMass.GramsPerMole;
        var anhydrous = formula.MolarMass.GramsPerMole - (formula.HydrateWater * water);
        for (var halves = 0; halves <= 24; halves++)
        {
            var mass = anhydrous + (halves / 2.0 * water);
            if (halves / 2.0 != formula.HydrateWater && Math.Abs((stated.GramsPerMole / mass) - 1) <= MolarMassTolerance)
            {
                return $"With {(halves / 2.0).ToString("0.#", CultureInfo.InvariantCulture)} H2O of crystal water it would fit: check "
                    + "which hydrate is in the bag.";
            }
        }

        return "Check the formula and the label.";
    }

    private Substance? ByStrength(JsonItem entry, JsonItem of, Basics basic)
    {
        if (FindCompound(of) is not { } grades || ReadStrength(entry["strength"], grades[0], basic.Density) is not { } strength)
        {
            return null;
        }

        var compound = StatedStrength.GradeAt(grades, strength.Value);
        var record = new Sourced<string>(entry["strength"]!.Text, $"stated in {fields.File}", Confidence.Found);
        return StatedStrength.Of(compound, strength, record) with
        {
            Id = basic.Id,
            Name = basic.Name,
            Kind = basic.Kind ?? compound.Kind,
            Form = basic.Form ?? PhysicalForm.Liquid,
            Density = basic.Density,
        };
    }

    /// <summary>The compound that a name means, in every strength that the name fits; null after reporting why there is none.</summary>
    private IReadOnlyList<Substance>? FindCompound(JsonItem of)
    {
        var name = new Located<string>(of.Text, fields.At(of));
        switch (SubstanceCatalogue.BuiltIn.Find(of.Text))
        {
            case SubstanceLookup.Found found:
                return [found.Substance];
            case SubstanceLookup.Ambiguous several when several.Candidates.All(c => c.Formula is not null)
                && several.Candidates.Select(c => c.Formula!.Hill).Distinct().Count() == 1:
                return several.Candidates;
            case SubstanceLookup.Ambiguous several:
                fields.Report(AmbiguousSubstances.Describe(name, several.Candidates));
                return null;
            case SubstanceLookup.Unknown unknown:
                var hint = unknown.Suggestions.Count > 0
                    ? $" Did you mean {Wording.Join([.. unknown.Suggestions.Take(3).Select(s => $"'{s}'")], "or")}?"
                    : "";
                fields.Report(
                    ProblemKind.UnknownSubstance,
                    of,
                    $"'{Wording.Shorten(of.Text)}' is no substance of the catalogue.{hint}",
                    unknown.Suggestions);
                return null;
            default:
                return null;
        }
    }

    private MassFraction? ReadStrength(JsonItem? item, Substance compound, Sourced<Density>? density)
    {
        if (fields.Quantity(item, Due.Strength) is not { } quantity)
        {
            return null;
        }

        if (quantity.Dimension == Dimension.AmountConcentration && compound.Formula is null)
        {
            fields.Report(
                ProblemKind.WrongDimension,
                item!,
                $"'{Wording.Shorten(item!.Text)}' counts moles, but '{compound.Id}' is known by its label only and has no molar mass. "
                    + "State % w/w.");
            return null;
        }

        if (quantity.Dimension != Dimension.MassFraction && density is null)
        {
            // Without a density the missing or unreadable one is reported already.
            return null;
        }

        var gramsPerLitre = quantity.Dimension switch
        {
            Dimension.MassConcentration => quantity.Low,
            Dimension.AmountConcentration => quantity.Low * compound.Formula!.MolarMass.GramsPerMole,
            _ => double.NaN,
        };
        var share = quantity.Dimension == Dimension.MassFraction ? quantity.Low : gramsPerLitre / 1000 / density!.Value.GramsPerMillilitre;
        if (share is > 0 and <= 1)
        {
            return new MassFraction(share);
        }

        fields.Report(new Problem(
            ProblemKind.ImpossibleAnalysis,
            fields.At(item!),
            $"'{Wording.Shorten(item!.Text)}' would be {Plausibility.Text(share * 100)} % by mass; a solution holds more than 0 and at "
                + "most 100 %.")
        {
            Values = [new NamedValue("percent", share * 100, "%")],
        });
        return null;
    }

    /// <summary>Parts of names that tell a colour; anything else that states nothing can be anything.</summary>
    private static readonly string[] ColourWords = ["colour", "color", "dye", "tint", "pigment"];

    /// <summary>An extract or a colour by its kind or by what it is called; everything else is a product nobody can tell more of.</summary>
    private static Substance OfUnknownComposition(Basics basic)
    {
        var origin = basic.Kind is null or SubstanceKind.Extract or SubstanceKind.Organic
            ? ExtractOrigins.In(basic.Name) ?? ExtractOrigins.In(basic.Id)
            : null;
        var isExtract = basic.Kind == SubstanceKind.Extract || origin is not null;
        return new()
        {
            Id = basic.Id,
            Name = basic.Name,
            Kind = isExtract ? SubstanceKind.Extract
                : basic.Kind ?? (IsCalledColour(basic.Name) || IsCalledColour(basic.Id) ? SubstanceKind.Dye : SubstanceKind.Product),
            Form = basic.Form ?? PhysicalForm.Liquid,
            Content = ElementContent.Empty,
            Density = basic.Density,
            Extract = isExtract ? origin ?? ExtractOrigins.Other : null,
            IsExtractByNameOnly = isExtract && basic.Kind is null,
            FeedsMicrobes = isExtract,
            Assumption = isExtract
                ? $"Its composition is not known; it is taken as {(origin ?? ExtractOrigins.Other).Called}: it takes up volume, feeds "
                    + "microbes, and nothing else is counted of it."
                : "Its composition is not known; it takes up volume and nothing else is counted of it.",
        };
    }

    private static bool IsCalledColour(string name) => Array.Exists(ColourWords, w => name.Contains(w, StringComparison.OrdinalIgnoreCase));
}
