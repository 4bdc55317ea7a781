namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Notices an iteration that leads nowhere: where equations have no solution, as where crystals would take up all the water, damped steps
/// go on for ever towards a place where the residual is least and not zero.
/// </summary>
internal struct Creep(double merit)
{
    /// <summary>So many steps have to bring the sum of squares down to this share of it, unless it is next to nothing.</summary>
    private const int Steps = 10;

    private const double Gain = 0.5, NextToNothing = 1e-6;

    private double _before = merit;

    /// <summary>Whether the iteration creeps.</summary>
    /// <param name="step">Number of the step just taken, from 0.</param>
    /// <param name="merit">Sum of the squares of the residuals after it.</param>
    public bool Goes(int step, double merit)
    {
        if ((step + 1) % Steps != 0) return false;
        var creeps = merit > Gain * _before && merit > NextToNothing;
        _before = merit;
        return creeps;
    }
}
