namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// The long way to a set of solids: their constants are moved from the activity products at hand to their values, in steps that shorten
/// where one is lost.
/// </summary>
internal sealed class MovedConstants(SolidEquations solids, FullNewton full)
{
    /// <summary>Share of the way by which constants are moved at once, to begin with and at the least.</summary>
    private const double First = 0.2, Least = 0.05;

    /// <summary>ln of what counts as no distance from saturation.</summary>
    private const double AtItsConstant = 0.01;

    private const int Steps = 60;

    /// <summary>Goes the way; false when it is lost, and then the iteration stands anywhere.</summary>
    /// <param name="hold">Remembers where the iteration stands and gives what leads back there.</param>
    public bool Run(Func<Action> hold)
    {
        var gaps = solids.Present.Select(solids.Saturation).ToArray();
        // Where every solid is at its constant already it is the balances that are lost, and there is nothing to move.
        if (gaps.All(gap => Math.Abs(gap) < AtItsConstant)) return false;
        double done = 0, step = First;
        while (done < 1 && step >= Least)
        {
            var goBack = hold();
            var next = Math.Min(1, done + step);
            for (var k = 0; k < gaps.Length; k++) solids.Present[k].Offset = gaps[k] * (1 - next);
            if (full.Run(Steps))
            {
                done = next;
                continue;
            }

            goBack();
            step /= 4;
        }

        foreach (var s in solids.Present) s.Offset = 0;
        return done >= 1;
    }
}
