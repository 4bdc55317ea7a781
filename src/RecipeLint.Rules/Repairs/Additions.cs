using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>Less, more, or another of what goes in.</summary>
internal static class Additions
{
    /// <summary>Acids, alkalis and what keeps a stock may go down this far.</summary>
    private const double Least = 0.02;

    /// <summary>Less of a nutrient than this part is another recipe.</summary>
    private const double LeastNutrient = 0.25;

    /// <summary>Mass fraction below which a product does not bring an element on purpose.</summary>
    private const double Trace = 1e-4;

    private static readonly HashSet<string> _nutrients =
        new(StringComparer.Ordinal) { "N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "Zn", "Cu", "B", "Mo", "Si" };

    /// <summary>As much as mends it, more than now.</summary>
    /// <param name="most">Times the present amount.</param>
    public static RepairProposal More(RepairContext context, AdditionFacts addition, double most = 10) =>
        new RepairProposal.Tuned(f => Times(context, addition, f, "more", Round.Up), 1, most);

    /// <summary>As much as is just right, less than now.</summary>
    public static RepairProposal Less(RepairContext context, AdditionFacts addition) =>
        new RepairProposal.Tuned(
            f => Times(context, addition, f, "less", Round.Down),
            1,
            addition.Substance.Kind is SubstanceKind.Acid or SubstanceKind.Base || addition.Substance.IsPreservative
                ? Least
                : LeastNutrient);

    /// <summary>The amount of one addition times a factor that is known.</summary>
    public static Repair? Times(RepairContext context, AdditionFacts addition, double factor, string key, Round round = Round.Nearest) =>
        factor > 0 && Amounts.Times(context, addition, factor, round) is var (edit, text)
            ? Repair.Chemistry(
                $"{key}-{Slug.Of(addition.Id, ".")}",
                $"Take {text} of {addition.Substance.Name} instead of {context.Item(addition.Place.Child("amount"))!.Text}.",
                edit)
            : null;

    /// <summary>The line out.</summary>
    public static Repair Drop(AdditionFacts addition) =>
        Repair.Chemistry(
            $"leave-out-{Slug.Of(addition.Id, ".")}", $"Leave {addition.Substance.Name} out.", new JsonEdit.Remove(addition.Place));

    /// <summary>One of the additions a finding names out.</summary>
    public static IEnumerable<RepairProposal> DropOneOf(Finding finding, RepairContext context) =>
        context.StockOf(finding) is { } stock
            ? finding.Related
                .Select(r => r.Place)
                .Prepend(finding.Place)
                .Select(place => context.AdditionAt(stock, place))
                .OfType<AdditionFacts>()
                .Select(a => RepairProposal.Of(Drop(a)))
            : [];

    /// <summary>Another substance in its place, as much as brings the same of one component.</summary>
    /// <param name="component">What both bring ("Mg+2").</param>
    /// <param name="bringsAs">What the other one brings, where it is not the same ("Sorbate-" for benzoate).</param>
    public static Repair? Swap(RepairContext context, AdditionFacts addition, string id, string component, string? bringsAs = null)
    {
        if (context.Workspace.Catalogue.ById(id) is not { } other || other.Id == addition.Substance.Id
            || IsBaseFertiliser(addition.Substance)
            || other.Dissolves.FirstOrDefault(y => y.Component == (bringsAs ?? component)) is not { MolesPerGram: > 0 } yield
            || !(addition.ComponentMoles.GetValueOrDefault(component) > 0)
            || context.Item(addition.Place) is not { Kind: JsonKind.Object } step
                || step["add"] is null
                || step["amount"] is not { } written)
        {
            return null;
        }

        var grams = addition.ComponentMoles[component] / yield.MolesPerGram;
        var text = other.Form == PhysicalForm.Solid
            && addition.Substance.Form == PhysicalForm.Solid
            && AmountText.NumberOf(written.Text) is { } number
            ? AmountText.With(written.Text, AmountText.ToDigits(number * grams / addition.Mass.Grams, 3))
            : null;
        text ??= other is { Form: PhysicalForm.Liquid, Density: { } density }
            ? Amounts.Litres(grams / density.Value.GramsPerMillilitre / 1000)
            : Amounts.Grams(grams);
        List<JsonEdit> edits =
        [
            new JsonEdit.ReplaceValue(addition.Place.Child("add"), JsonDraft.Of(other.Id)),
            new JsonEdit.ReplaceValue(addition.Place.Child("amount"), JsonDraft.Of(text)),
        ];

        // The assay was the other bag's, and a measure that poured does not weigh.
        foreach (var own in new[]
        {
            "assay",
            "with",
        }.Where(n => step[n] is not null && (n == "assay" || other.Form != addition.Substance.Form)))
        {
            edits.Add(new JsonEdit.Remove(addition.Place.Child(own)));
        }

        return Repair.Chemistry(
            $"use-{Slug.Of(id, ".")}", $"Take {text} of {other.Name} instead of {written.Text} of {addition.Substance.Name}.", [.. edits]);
    }

    /// <summary>A product of several nutrients: no single salt stands in for it.</summary>
    private static bool IsBaseFertiliser(Substance substance) =>
        substance.Content.Elements.Count(e => _nutrients.Contains(e.Symbol) && substance.Content[e] > Trace)
        >= (substance.Kind == SubstanceKind.Product ? 2 : 3);

    /// <summary>A new line for a substance.</summary>
    /// <param name="index">Where in the steps.</param>
    /// <param name="grams">As bought, for the batch.</param>
    public static Repair? New(RepairContext context, StockFacts stock, string id, double grams, int index, string why)
    {
        if (context.Workspace.Catalogue.ById(id) is not { } substance || !(grams > 0) || !double.IsFinite(grams))
        {
            return null;
        }

        var text = substance is { Form: PhysicalForm.Liquid, Density: { } density }
            ? Amounts.Litres(grams / density.Value.GramsPerMillilitre / 1000)
            : Amounts.Grams(grams);
        return Repair.Chemistry(
            $"add-{Slug.Of(id, ".")}",
            $"Add {text} of {substance.Name} {why}.",
            Steps.Insert(stock, index, ("add", id), ("amount", text)));
    }

    /// <summary>An acid put in first, as much as mends it, down to a pH; where the acid is in the stock already, more of it.</summary>
    /// <param name="to">The lowest pH to go to.</param>
    public static IEnumerable<RepairProposal> Acid(RepairContext context, StockFacts stock, double to = 2.5)
    {
        var state = stock.Chemistry.Mixing;
        if (!state.IsSolved || state.Ph <= to || stock.Stock.Steps.OfType<AdjustStep>().Any()
            || AcidTrial.To(stock, to) is { BelowPh: null, FallsOut: null } || HazardGate.Of(stock).Holding.HasNameless)
        {
            yield break;
        }

        var present = stock.Additions.Where(a => !a.ThroughAliquot && a.Substance.Kind == SubstanceKind.Acid).ToList();
        foreach (var acid in present)
        {
            yield return More(context, acid, 20);
        }

        // No sulfate or phosphate to calcium; an acid that feeds moulds comes last.
        var holdsCalcium = stock.Concentration(Component.Calcium).MolesPerLitre > 0;
        string[] ids = holdsCalcium ? ["nitric-38"] : ["sulfuric-37", "nitric-38", "citric-acid-h2o"];
        foreach (var id in ids.Where(i => present.TrueForAll(p => p.Substance.Id != i)))
        {
            if (context.Workspace.Catalogue.ById(id) is { } acid)
            {
                yield return new RepairProposal.Tuned(ph => Acidified(context, stock, acid, ph), state.Ph, to);
            }
        }
    }

    private static Repair? Acidified(RepairContext context, StockFacts stock, Substance acid, double ph)
    {
        var water = new Mass(stock.Chemistry.Mix.KilogramsWaterPerLitre * 1000 * stock.Volume.Litres);
        var demand = PhDemand.Find(stock.ComponentMoles, water, acid, ph, new Temperature(SolutionMix.FilledAtCelsius));
        return demand.Mass is { Grams: > 0 } mass ? New(
            context,
            stock,
            acid.Id,
            mass.Grams,
            Steps.AfterFirstWater(stock),
            $"to the first water, which brings it to pH {Say.Ph(Math.Round(ph, 1))}") : null;
    }

    /// <summary>Iron in the hold of another chelating agent, as much as before.</summary>
    public static IEnumerable<RepairProposal> OtherIron(RepairContext context, AdditionFacts addition)
    {
        var from = addition.ComponentMoles.GetValueOrDefault(Component.FerricIron) > 0 ? Component.FerricIron : Component.FerrousIron;
        return new[] { "fe-dtpa-hna", "fe-eddha-na", "fe-edta-na-3h2o" }
            .Select(id => Swap(context, addition, id, from, Component.FerricIron))
            .OfType<Repair>()
            .Select(RepairProposal.Of);
    }

    /// <summary>Nitrates in place of sulfates, phosphates and chlorides of the same metal, and the other way round for calcium.</summary>
    public static IEnumerable<RepairProposal> OtherSalts(RepairContext context, AdditionFacts addition) =>
        _swaps.Where(s => addition.Substance.Id.StartsWith(s.From, StringComparison.Ordinal))
            .Select(s => Swap(context, addition, s.To, s.Component))
            .OfType<Repair>()
            .Select(RepairProposal.Of);

    private static readonly (string From, string To, string Component)[] _swaps =
    [
        ("magnesium-sulfate", "magnesium-nitrate-6h2o", Component.Magnesium), ("magnesium-chloride", "magnesium-nitrate-6h2o",
            Component.Magnesium), ("magnesium-chloride", "magnesium-sulfate-7h2o", Component.Magnesium),
        ("potassium-sulfate", "potassium-nitrate", Component.Potassium), ("potassium-chloride", "potassium-nitrate", Component.Potassium),
        ("potassium-chloride", "potassium-sulfate", Component.Potassium),
        ("sodium-chloride", "potassium-chloride", Component.Chloride), ("sodium-nitrate", "potassium-nitrate", Component.Nitrate),
        ("calcium-chloride", "calcium-nitrate-4h2o", Component.Calcium),
        ("ammonium-sulfate", "ammonium-nitrate", Component.Ammonium), ("ammonium-chloride", "ammonium-nitrate", Component.Ammonium),
        ("monoammonium-phosphate", "monopotassium-phosphate", Component.Phosphate),
        ("diammonium-phosphate", "monopotassium-phosphate", Component.Phosphate),
        ("dipotassium-phosphate", "monopotassium-phosphate", Component.Phosphate),
        ("sodium-dihydrogen-phosphate", "monopotassium-phosphate", Component.Phosphate),
        ("zinc-sulfate", "zn-edta", Component.Zinc), ("copper-sulfate", "cu-edta", Component.Copper),
        ("manganese-sulfate", "mn-edta", Component.Manganese),
        ("phosphoric", "nitric-38", Component.Hydrogen), ("phosphoric", "sulfuric-37", Component.Hydrogen),
    ];
}
