using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Analysis.Mixing;

/// <summary>What stands in the mixing vessel at one moment: what was put in, its water and its volume. Immutable.</summary>
public sealed class VesselContents
{
    /// <summary>The bench the volumes hold for, °C.</summary>
    public const double BenchCelsius = SolutionMix.FilledAtCelsius;

    private readonly Put _put;
    private readonly ComponentMoles _otherMoles;
    private readonly double _reagentGrams;
    private readonly Lazy<ComponentMoles> _moles;
    private readonly Lazy<double> _litres;

    private VesselContents(
        Put additions, double freeWaterGrams, ComponentMoles otherMoles, double reagentGrams)
    {
        _put = additions;
        FreeWaterGrams = freeWaterGrams;
        _otherMoles = otherMoles;
        _reagentGrams = reagentGrams;
        _moles = new(() => ComponentMoles.Sum([.. Additions.Select(a => a.ComponentMoles), _otherMoles]));
        _litres = new(ComputeLitres);
    }

    public static VesselContents Empty { get; } = new(new Put([], 0, 0), 0, ComponentMoles.Empty, 0);

    /// <summary>What has been put in, in the order of the steps.</summary>
    public IReadOnlyList<AdditionFacts> Additions => _put.Additions;

    /// <summary>Water poured and the water of poured liquids, g; what sits in crystals is not among it.</summary>
    public double FreeWaterGrams { get; }

    /// <summary>The same as a volume at <see cref="BenchCelsius"/>.</summary>
    public double FreeWaterLitres => FreeWaterGrams / Water.DensityGramsPerMl(BenchCelsius) / 1000;

    /// <summary>Water set free by dissolving crystals, g.</summary>
    public double CrystalWaterGrams => _put.CrystalWaterGrams;

    /// <summary>All water once everything is dissolved.</summary>
    public Mass Solvent => new(FreeWaterGrams + CrystalWaterGrams);

    /// <summary>Mass of everything in the vessel, g.</summary>
    public double Grams => FreeWaterGrams + _reagentGrams + _put.DryGrams;

    /// <summary>Volume of everything in the vessel once it is dissolved, L at <see cref="BenchCelsius"/>.</summary>
    public double Litres => _litres.Value;

    /// <summary>Moles of solution components in the vessel, source water and reagents included.</summary>
    public ComponentMoles Moles => _moles.Value;

    /// <summary>Grams of the named compound itself that an addition brings: 38 g of 100 g nitric acid 38 %.</summary>
    public static double PureGrams(AdditionFacts addition)
    {
        ComponentYield? yield = null;
        for (var i = 0; yield is null && i < addition.Substance.Dissolves.Count; i++)
        {
            yield = addition.Substance.Dissolves[i] is { MolesPerGram: not 0 } found ? found : null;
        }

        var share = yield is not null && addition.Mass.Grams > 0
            ? addition.ComponentMoles.GetValueOrDefault(yield.Component) / (yield.MolesPerGram * addition.Mass.Grams)
            : addition.Assay.Value;
        return addition.Mass.Grams * addition.Substance.Strength.Value * share;
    }

    public VesselContents With(AdditionFacts addition) =>
        new(_put.With(addition), FreeWaterGrams + LiquidWater(addition), _otherMoles, _reagentGrams);

    /// <param name="poured">As much of the water as goes in.</param>
    public VesselContents With(WaterFacts water, Volume poured)
    {
        var share = water.Volume.Litres > 0 ? poured / water.Volume : 0;
        return new(
            _put,
            FreeWaterGrams + WaterGrams(poured),
            ComponentMoles.Sum([_otherMoles, water.ComponentMoles.Times(share)]),
            _reagentGrams);
    }

    /// <summary>With the reagent of a pH adjustment; unchanged where its amount is not known.</summary>
    public VesselContents With(PhAdjustmentFacts adjustment)
    {
        if (adjustment is not { Amount: { } amount, Reagent: { } reagent })
        {
            return this;
        }

        var water = reagent.Form == PhysicalForm.Liquid ? amount.Grams * (1 - reagent.Strength.Value) : 0;
        return new(
            _put,
            FreeWaterGrams + water,
            ComponentMoles.Sum([_otherMoles, adjustment.ComponentMoles]),
            _reagentGrams + amount.Grams - water);
    }

    public VesselContents WithPureWater(Volume poured) => new(_put, FreeWaterGrams + WaterGrams(poured), _otherMoles, _reagentGrams);

    /// <summary>
    /// What one step does to the vessel. A part of another stock brings its own water and everything dissolved in it. A top-up brings what
    /// is missing to its mark.
    /// </summary>
    public VesselContents After(Step step, StockFacts stock)
    {
        var contents = this;
        var brings = stock.Derived.Of(stock, StepContents.Of);
        foreach (var addition in brings.Additions[step.Place])
        {
            contents = contents.With(addition);
        }

        foreach (var water in brings.Waters[step.Place])
        {
            var poured = step is TopUpStep { To.Value: var mark } ? new Volume(Math.Max(0, mark.Litres - contents.Litres)) : water.Volume;
            contents = contents.With(water, poured);
        }

        foreach (var adjustment in brings.Adjustments[step.Place])
        {
            contents = contents.With(adjustment);
        }

        return contents;
    }

    private static double WaterGrams(Volume poured) => poured.Millilitres * Water.DensityGramsPerMl(BenchCelsius);

    /// <summary>What is of unknown composition takes up its own volume and counts as no water.</summary>
    private static double LiquidWater(AdditionFacts addition) =>
        addition.Substance.Form == PhysicalForm.Liquid && addition.ComponentMoles.Count > 0
        ? Math.Max(0, addition.Mass.Grams - (addition.Substance.Formula is null ? SoluteGrams(addition) : PureGrams(addition)))
        : 0;

    private static double CrystalWater(AdditionFacts addition)
    {
        if (addition.Substance.Form == PhysicalForm.Liquid)
        {
            return 0;
        }

        return addition.Substance.Formula is { } formula
            ? PureGrams(addition) * formula.HydrateWater * Water.GramsPerMol / formula.MolarMass.GramsPerMole
            : addition.ComponentMoles.Count == 0 || addition.ComponentMoles.Keys.Any(c => MolarMass(c) is null && !ClosesTheLabel(c))
                ? 0
                : Math.Max(0, (addition.Mass.Grams * addition.Assay.Value) - SoluteGrams(addition));
    }

    private static double SoluteGrams(AdditionFacts addition) => addition.ComponentMoles.Sum(c => (MolarMass(c.Key) ?? 0) * c.Value);

    /// <summary>The ion that closes what the rounding of a label leaves open has no mass of its own; it is no unknown content.</summary>
    private static bool ClosesTheLabel(string component) =>
        component is SolutionComponent.ClosingAnion or SolutionComponent.ClosingCation;

    private static double? MolarMass(string component) =>
        SolutionComponent.TryGet(component, out var known) ? known.Formula?.MolarMass.GramsPerMole : null;

    private double ComputeLitres()
    {
        var kilograms = Solvent.Grams / 1000;
        if (kilograms <= 0)
        {
            return Additions.Sum(LooseMillilitres) / 1000;
        }

        var unknown = Additions.Where(a => a.ComponentMoles.Count == 0).Sum(LooseMillilitres) / 1000;
        return MixVolume.LitresPerKilogramWater(Moles.Times(1 / kilograms), BenchCelsius) is { } litres
            ? (litres * kilograms) + unknown
            : (Solvent.Grams / Water.DensityGramsPerMl(BenchCelsius) / 1000) + (Additions.Sum(LooseMillilitres) / 1000);
    }

    private static double LooseMillilitres(AdditionFacts addition) =>
        addition.Volume?.Millilitres ?? (addition.Mass.Grams * SolutionVolume.MillilitresPerGramUnmeasured);

    /// <summary>What has been put in, with its sums: a vessel of many additions is not added up anew at every step.</summary>
    /// <param name="CrystalWaterGrams">Water set free by dissolving crystals, g.</param>
    /// <param name="DryGrams">Without the water of poured liquids, g.</param>
    private sealed record Put(IReadOnlyList<AdditionFacts> Additions, double CrystalWaterGrams, double DryGrams)
    {
        public Put With(AdditionFacts addition) => new(
            [.. Additions, addition], CrystalWaterGrams + CrystalWater(addition), DryGrams + (addition.Mass.Grams - LiquidWater(addition)));
    }
}
