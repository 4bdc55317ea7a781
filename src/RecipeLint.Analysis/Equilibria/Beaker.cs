using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.OneLine;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>A substance in a beaker.</summary>
/// <param name="Mass">As weighed or poured, in the whole beaker.</param>
public sealed record BeakerItem(Substance Substance, Mass Mass);

/// <summary>A few substances in pure water: what one line on a command line can say.</summary>
/// <param name="Volume">What it is filled up to at 20 °C.</param>
public sealed record Beaker(IReadOnlyList<BeakerItem> Items, Volume Volume, SolutionMix Mix)
{
    /// <summary>From a line that was read; on failure the error is one plain sentence and the beaker is null.</summary>
    public static (Beaker? Beaker, string? Error) Of(OneLineMix line)
    {
        var perLitre =
            line.Items.All(i => i.Amount.Dimension is Dimension.MassConcentration or Dimension.AmountConcentration or Dimension.Dose);
        if (line.Volume is null && !perLitre)
        {
            return (null, "Say what the mix is filled up to, such as \"4 g K2SO4 in 2 L\", or give every amount per litre.");
        }

        var volume = line.Volume?.Volume ?? new Volume(1);
        if (!(volume.Litres > 0))
        {
            return (null, $"'{line.VolumeText}' is no volume that anything dissolves in.");
        }

        var items = new List<BeakerItem>();
        foreach (var item in line.Items)
        {
            if (item.Substance.Dissolves.Count == 0)
            {
                return (null, $"What '{item.Substance.Id}' dissolves into is not known, so its chemistry cannot be computed.");
            }

            if (PortionMass.Of(PortionOf(item.Amount), item.Substance, volume) is not { } portion)
            {
                return (null, $"'{item.AmountText}' of '{item.Substance.Id}' cannot be turned into a mass.");
            }

            if (!(portion.Mass.Grams > 0))
            {
                return (null, $"'{item.AmountText}' of '{item.Substance.Id}' is nothing to dissolve.");
            }

            items.Add(new BeakerItem(item.Substance, portion.Mass));
        }

        return (new Beaker(items, volume, SolutionMix.Of(ComponentMoles.Sum(items.Select(Moles)), volume)
            .WithSilicates(items.Select(Moles), volume)), null);
    }

    /// <summary>Its state; a pH is set by an acid or alkali that is not named, before anything falls out, or held while it does.</summary>
    public SolutionState State(Temperature at, double? setPh, bool openToAir, bool holdPh = false) =>
        StateSolver.Solve(Mix, new StateRequest(StateMoment.Mixing, at, openToAir, []) { SetPh = setPh, HoldPh = holdPh });

    private static ComponentMoles Moles(BeakerItem item) =>
        ComponentMoles.Of(item.Substance.Dissolves.Select(y => KeyValuePair.Create(y.Component, y.MolesPerGram * item.Mass.Grams)));

    private static Portion PortionOf(Quantity amount) => amount.Dimension switch
    {
        Dimension.Mass => new Portion.ByMass(amount.Mass),
        Dimension.Volume => new Portion.ByVolume(amount.Volume),
        Dimension.Drops => new Portion.ByDrops(amount.Drops),
        Dimension.Amount => new Portion.ByAmount(amount.Amount),
        Dimension.MassConcentration => new Portion.PerLitreMass(amount.MassConcentration),
        Dimension.AmountConcentration => new Portion.PerLitreAmount(amount.AmountConcentration),
        _ => new Portion.PerLitreVolume(amount.Dose),
    };
}
