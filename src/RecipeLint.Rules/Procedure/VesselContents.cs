using RecipeLint.Analysis;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Rules.Procedure;

/// <summary>What stands in the mixing vessel at one moment. Reagents of a pH adjustment are left out: their amount is not stated.</summary>
internal sealed class VesselContents
{
    /// <summary>The bench the volumes and the chemistry hold for.</summary>
    internal const double BenchCelsius = 20;

    /// <summary>Room a dissolved solid takes up where its ions have no measured volume: as in the volume model, 0.55 mL/g.</summary>
    private const double MillilitresPerGram = 0.55;

    private readonly Lazy<double> _litres;

    private VesselContents(IReadOnlyList<AdditionFacts> additions, double freeWaterGrams, IReadOnlyDictionary<string, double> waterIons)
    {
        Additions = additions;
        FreeWaterGrams = freeWaterGrams;
        WaterIons = waterIons;
        _litres = new(ComputeLitres);
    }

    internal static VesselContents Empty { get; } = new([], 0, new Dictionary<string, double>());

    /// <summary>What has been put in, in the order of the steps.</summary>
    internal IReadOnlyList<AdditionFacts> Additions { get; }

    /// <summary>Water poured and the water of poured liquids; what sits in crystals is not among it.</summary>
    internal double FreeWaterGrams { get; }

    /// <summary>The same as a volume at <see cref="BenchCelsius"/>.</summary>
    internal double FreeWaterLitres => FreeWaterGrams / Water.DensityGramsPerMl(BenchCelsius) / 1000;

    /// <summary>Water set free by dissolving crystals, g.</summary>
    internal double CrystalWaterGrams => Additions.Sum(CrystalWater);

    /// <summary>Mass of everything in the vessel.</summary>
    internal double Grams => FreeWaterGrams + Additions.Sum(a => a.Mass.Grams - LiquidWater(a));

    /// <summary>Volume of everything in the vessel once it is dissolved, at <see cref="BenchCelsius"/>.</summary>
    internal double Litres => _litres.Value;

    /// <summary>Moles of solution components in the vessel, source water included.</summary>
    internal IReadOnlyDictionary<string, double> Moles
    {
        get
        {
            var moles = new SortedDictionary<string, double>(StringComparer.Ordinal);
            foreach (var (component, amount) in Additions.SelectMany(a => a.ComponentMoles).Concat(WaterIons))
            {
                moles[component] = moles.GetValueOrDefault(component) + amount;
            }

            return moles;
        }
    }

    private IReadOnlyDictionary<string, double> WaterIons { get; }

    /// <summary>Grams of the named compound itself that an addition brings: 38 g of 100 g nitric acid 38 %.</summary>
    internal static double PureGrams(AdditionFacts addition)
    {
        var yield = addition.Substance.Dissolves.FirstOrDefault(d => d.MolesPerGram != 0);
        var share = yield is not null && addition.Mass.Grams > 0
            ? addition.ComponentMoles.GetValueOrDefault(yield.Component) / (yield.MolesPerGram * addition.Mass.Grams)
            : addition.Assay.Value;
        return addition.Mass.Grams * addition.Substance.Strength.Value * share;
    }

    internal VesselContents With(AdditionFacts addition) =>
        new([.. Additions, addition], FreeWaterGrams + LiquidWater(addition), WaterIons);

    internal VesselContents With(WaterFacts water, Volume poured)
    {
        var share = water.Volume.Litres > 0 ? poured / water.Volume : 0;
        var ions = new SortedDictionary<string, double>(StringComparer.Ordinal);
        foreach (var (component, amount) in WaterIons.Concat(water.ComponentMoles.Select(c => KeyValuePair.Create(c.Key, c.Value * share))))
        {
            ions[component] = ions.GetValueOrDefault(component) + amount;
        }

        return new(Additions, FreeWaterGrams + (poured.Millilitres * Water.DensityGramsPerMl(BenchCelsius)), ions);
    }

    internal VesselContents WithPureWater(Volume poured) =>
        new(Additions, FreeWaterGrams + (poured.Millilitres * Water.DensityGramsPerMl(BenchCelsius)), WaterIons);

    private static double LiquidWater(AdditionFacts addition) => addition.Substance.Form == PhysicalForm.Liquid
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
            : addition.ComponentMoles.Count == 0 || addition.ComponentMoles.Keys.Any(c => MolarMass(c) is null)
                ? 0
                : Math.Max(0, (addition.Mass.Grams * addition.Assay.Value) - SoluteGrams(addition));
    }

    private static double SoluteGrams(AdditionFacts addition) => addition.ComponentMoles.Sum(c => (MolarMass(c.Key) ?? 0) * c.Value);

    private static double? MolarMass(string component) =>
        SolutionComponent.TryGet(component, out var known) ? known.Formula?.MolarMass.GramsPerMole : null;

    private double ComputeLitres()
    {
        var waterGrams = FreeWaterGrams + CrystalWaterGrams;
        if (waterGrams <= 0)
        {
            return Additions.Sum(LooseMillilitres) / 1000;
        }

        var moles = Moles.ToDictionary(m => m.Key, m => m.Value);
        var hydrogen = moles.GetValueOrDefault("H+");
        moles.Remove("H+");
        if (hydrogen < 0)
        {
            // A base is written as protons taken away: its hydroxide, and the water it was made from.
            moles["OH-"] = -hydrogen;
        }
        else if (hydrogen > 0)
        {
            moles["H+"] = hydrogen;
        }

        var names = moles.Where(m => m.Value > 0).Select(m => m.Key).Order(StringComparer.Ordinal).ToList();
        var model = SolutionVolume.For([.. names.Select(VolumeName)], names.ToDictionary(VolumeName, n => MolarMass(n) ?? 0));
        var state = model.Evaluate([.. names.Select(n => moles[n] / waterGrams * 1000)], BenchCelsius);
        var unknown = Additions.Where(a => a.ComponentMoles.Count == 0).Sum(LooseMillilitres);
        return state.IsGiven
            ? ((state.MlPerKgWater * waterGrams / 1000) + unknown) / 1000
            : ((waterGrams / Water.DensityGramsPerMl(BenchCelsius)) + Additions.Sum(LooseMillilitres)) / 1000;
    }

    private static string VolumeName(string component) => component switch
    {
        "inert:urea" => "Urea",
        "inert:sucrose" => "Sucrose",
        _ => component,
    };

    private static double LooseMillilitres(AdditionFacts addition) => addition.Volume?.Millilitres ?? (addition.Mass.Grams * MillilitresPerGram);
}
