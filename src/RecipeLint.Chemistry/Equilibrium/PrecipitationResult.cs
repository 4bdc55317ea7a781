namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>What falls out of a solution.</summary>
/// <param name="Solid">The solid.</param>
/// <param name="MolPerKgInitialWater">mol per kg of the water there was before anything fell out.</param>
public readonly record struct Deposit(Solid Solid, double MolPerKgInitialWater);

/// <summary>A solution brought to equilibrium with the solids that were allowed to form.</summary>
public sealed class PrecipitationResult
{
    /// <summary>Nothing may form: the clear solution is the answer.</summary>
    internal PrecipitationResult(Equilibrium clear, ComponentTotals totals)
    {
        Converged = clear.Converged;
        Failure = clear.Failure;
        Initial = Final = clear;
        Deposits = [];
        Remaining = totals;
        FinalWaterKg = 1;
    }

    internal PrecipitationResult(Equilibrium initial, string failure)
    {
        Initial = initial;
        Failure = failure;
        Final = new Equilibrium(failure, 0);
        Deposits = [];
        Remaining = new ComponentTotals();
    }

    internal PrecipitationResult(
        Equilibrium initial, Equilibrium final, IReadOnlyList<Deposit> deposits, ComponentTotals remaining, double waterKg)
    {
        Converged = true;
        Initial = initial;
        Final = final;
        Deposits = deposits;
        Remaining = remaining;
        FinalWaterKg = waterKg;
    }

    public bool Converged { get; }

    /// <summary>Newton steps that it cost, as <see cref="Equilibrium.Effort"/> counts them.</summary>
    public int Effort { get; internal init; }

    /// <summary>Why there is no result; null when there is one.</summary>
    public string? Failure { get; }

    /// <summary>The clear, possibly supersaturated solution.</summary>
    public Equilibrium Initial { get; }

    /// <summary>The solution left over the deposit, per kg of the water left.</summary>
    public Equilibrium Final { get; }

    /// <summary>The solids in equilibrium with it, in table order. Empty when nothing falls out.</summary>
    public IReadOnlyList<Deposit> Deposits { get; }

    /// <summary>What is left dissolved, mol per kg of the water left.</summary>
    public ComponentTotals Remaining { get; }

    /// <summary>kg of water left of 1 kg: hydrates take some, amorphous silica gives some back.</summary>
    public double FinalWaterKg { get; }

    /// <summary>mol of a solid per kg of initial water; 0 when it does not form.</summary>
    public double Formed(string solid)
    {
        foreach (var d in Deposits) if (d.Solid.Name == solid) return d.MolPerKgInitialWater;
        return 0;
    }
}
