using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Stocks;

/// <summary>One batch of a stock as it is made, step by step.</summary>
internal sealed class StockBatch
{
    /// <summary>Water as it is poured, at 20 °C.</summary>
    private static readonly Density WaterAtBench = new(Water.DensityGramsPerMl(SolutionMix.FilledAtCelsius));

    private readonly StockDocument _stock;
    private readonly Volume _makes;
    private readonly Workspace _workspace;
    private readonly Func<string?, StockFacts?> _stockFacts;
    private readonly ShopSettings _shop;
    private readonly AssumptionList _assumptions;
    private readonly List<AdditionFacts> _additions = [];
    private readonly List<WaterFacts> _waters = [];
    private readonly List<AliquotFacts> _aliquots = [];
    private readonly List<PhAdjustmentFacts> _adjustments = [];
    private Volume _inVessel;
    private bool _hasWaterStep;
    private bool _hasTopUp;
    private bool _complete;

    public StockBatch(StockDocument stock, Volume makes, Workspace workspace, Func<string?, StockFacts?> stockFacts)
    {
        _stock = stock;
        _makes = makes;
        _workspace = workspace;
        _stockFacts = stockFacts;
        _shop = workspace.SettingsFor(stock.File);
        _assumptions = new AssumptionList(stock.Place);
        _complete = stock.IsComplete;
    }

    public void Do(Step step)
    {
        switch (step)
        {
            case AddStep add:
                Add(add);
                break;
            case AliquotStep aliquot:
                Take(aliquot);
                break;
            case PourStep pour:
                _hasWaterStep = true;
                PourWater(pour.Id, pour.Place, pour.Of, pour.Volume?.Value, estimate: false);
                break;
            case TopUpStep topUp:
                _hasWaterStep = true;
                _hasTopUp = true;
                PourWater(topUp.Id, topUp.Place, topUp.Of, topUp.To is { } mark ? Missing(mark.Value) : null, estimate: true);
                break;
            case AdjustStep adjust:
                Adjust(adjust);
                break;
            default:
                break;
        }
    }

    public StockFacts Finish()
    {
        FillUp();
        var (storage, source) = Storage.Of(_stock, _shop, _assumptions);
        return new StockFacts
        {
            Stock = _stock,
            Settings = _shop,
            Volume = _makes,
            Additions = _additions,
            Waters = _waters,
            Aliquots = _aliquots,
            Adjustments = _adjustments,
            Totals = ElementTotals.Sum(
                [.. _additions.Select(a => a.Elements), .. _waters.Select(w => w.Elements), .. _adjustments.Select(a => a.Elements)]),
            Impurities = ElementTotals.Sum(_additions.Select(a => a.Impurities)),
            ComponentMoles = InVesselMoles(),
            StorageTemperature = storage,
            StorageSource = source,
            Assumptions = _assumptions.ToList(),
            DeclaredPh = _adjustments.LastOrDefault(a => a.TargetPh is not null && !a.ThroughAliquot)?.TargetPh,
            IsComplete = _complete,
        };
    }

    private void Add(AddStep step)
    {
        if (step.Substance is not { } substance || step.Amount is not { } amount)
        {
            _complete = false;
            return;
        }

        var request = new AdditionRequest(step.Id, step.Place, substance, amount.Value, step.Assay, step.With?.Value);
        if (AdditionReader.Read(request, _makes, _shop, _assumptions) is not { } addition)
        {
            _complete = false;
            return;
        }

        _additions.Add(addition);
        _inVessel += addition.Volume ?? Volume.Zero;
    }

    private void Take(AliquotStep step)
    {
        if (_stockFacts(step.StockFile) is not { } source || step.Amount is not { } amount)
        {
            _complete = false;
            return;
        }

        if (PortionMass.VolumeOf(amount.Value, _makes) is not { } volume)
        {
            _assumptions.Add("left-out", $"The aliquot '{step.Id}' is not stated as a volume; it is left out.", step.Place);
            _complete = false;
            return;
        }

        var share = volume / source.Volume;
        var equipment = Equipment.Choose(_shop, step.With?.Value, amount.Value, Mass.Zero, volume);
        _aliquots.Add(new AliquotFacts(step.Id, step.Place, source.Stock.File, volume)
        {
            Measure = equipment.Measure,
            EquipmentStated = equipment.Stated,
        });
        _additions.AddRange(source.Additions.Select(a => PartOf(a, step, share)));
        _waters.AddRange(source.Waters.Select(w => w with
        {
            Id = $"{step.Id}/{w.Id}",
            Place = step.Place,
            Volume = w.Volume * share,
            Elements = w.Elements.Times(share),
            ComponentMoles = w.ComponentMoles.Times(share),
        }));
        _adjustments.AddRange(source.Adjustments.Select(a => a with
        {
            Id = $"{step.Id}/{a.Id}",
            Place = step.Place,
            Amount = a.Amount * share,
            Volume = a.Volume * share,
            Elements = a.Elements.Times(share),
            ComponentMoles = a.ComponentMoles.Times(share),
            ThroughAliquot = true,
        }));
        _assumptions.AddRange(source.Assumptions.Where(a => a.Key != Storage.AssumptionKey));
        _complete &= source.IsComplete;
        _inVessel += volume;
    }

    private static AdditionFacts PartOf(AdditionFacts inner, AliquotStep step, double share) => inner with
    {
        Id = $"{step.Id}/{inner.Id}",
        Place = step.Place,
        Mass = inner.Mass * share,
        Volume = inner.Volume * share,
        Elements = inner.Elements.Times(share),
        ComponentMoles = inner.ComponentMoles.Times(share),
        Impurities = inner.Impurities.Times(share),
        Scale = null,
        Measure = null,
        EquipmentStated = false,
        ThroughAliquot = true,
    };

    private void PourWater(string id, Place place, Located<WaterReference>? of, Volume? volume, bool estimate)
    {
        var choice = SourceWater.Find(_workspace, of);
        _complete &= choice.Resolved && volume is not null;
        if (volume is not { } poured)
        {
            return;
        }

        if (of is null)
        {
            _assumptions.Add("water", "No water is named: it is taken as distilled, without ions.", place);
        }

        if (estimate && choice.Document is not null)
        {
            _assumptions.Add(
                "solids-volume",
                "Topping up counts all that is missing to the mark as water: the volume of dissolved solids is not subtracted.",
                place);
        }

        _waters.Add(SourceWater.Pour(id, place, choice, poured, estimate, _assumptions));
        _inVessel += poured;
    }

    private void Adjust(AdjustStep step)
    {
        var adjustment = Adjustments.Of(
            step.Id, step.Place, step.TargetPh?.Value, step.Reagent, InVesselMoles(), WaterInVessel(), openToAir: false, _assumptions);
        _adjustments.Add(adjustment);
        _inVessel += adjustment.Volume ?? Volume.Zero;
    }

    private ComponentMoles InVesselMoles() => ComponentMoles.Sum(
        [
            .. _additions.Select(a => a.ComponentMoles), .. _waters.Select(w => w.ComponentMoles),
            .. _adjustments.Select(a => a.ComponentMoles),
        ]);

    /// <summary>
    /// Water in the vessel now: what was poured and what came with liquids. After topping up, and where no step pours water, what the
    /// finished volume leaves room for.
    /// </summary>
    private Mass WaterInVessel()
    {
        var poured = _waters.Aggregate(Volume.Zero, (sum, w) => sum + w.Volume) * WaterAtBench;
        if (!_hasTopUp && poured > Mass.Zero)
        {
            return _additions.Where(a => a.Volume is not null)
                .Aggregate(poured, (sum, a) => sum + (a.Mass * (1 - a.Substance.Strength.Value)));
        }

        var mix = SolutionMix.Of(InVesselMoles(), _makes);
        return mix.Failure is null ? new Mass(1000 * mix.KilogramsWaterPerLitre * _makes.Litres) : _makes * WaterAtBench;
    }

    private Volume Missing(Volume mark) => mark > _inVessel ? mark - _inVessel : Volume.Zero;

    /// <summary>
    /// A stock without any water step is brought to its volume with pure water. Where water is poured but not topped up, the rest may be
    /// the volume of the solids, so it is not counted.
    /// </summary>
    private void FillUp()
    {
        if (!_hasWaterStep)
        {
            _assumptions.Add(
                "water", "No step adds water: the stock is taken as brought to its volume with distilled water.", _stock.Place);
            var pure = new SourceWater.Choice(SourceWater.Default, null, true);
            _waters.Add(SourceWater.Pour("water", _stock.Place, pure, Missing(_makes), true, _assumptions));
        }
        else if (!_hasTopUp && _inVessel < _makes && _waters.Any(w => w.Water is not null))
        {
            _assumptions.Add(
                "water-remainder", "No step tops up to the finished volume: only the water that is poured brings ions.", _stock.Place);
        }
    }
}
