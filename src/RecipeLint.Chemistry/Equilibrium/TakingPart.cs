using System.Collections.Concurrent;

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// What takes part in a solution and which of it acts on each other: follows from its components alone and never changes. It also keeps the
/// arrays of the last solve for the next.
/// </summary>
internal sealed class TakingPart(Stoichiometry s, IonPairs pairs)
{
    private Workplace? _spare;

    public Stoichiometry S => s;

    public IonPairs Pairs => pairs;

    /// <summary>Arrays full of zeros, for one solve; whoever asks while they are lent out gets new ones.</summary>
    public Workplace Lend()
    {
        if (Interlocked.Exchange(ref _spare, null) is not { } spare) return new Workplace(s, pairs);
        spare.Clear();
        return spare;
    }

    public void TakeBack(Workplace work) => Volatile.Write(ref _spare, work);
}

/// <summary>
/// Keeps what takes part by the choice of components, so that the states of a stock at its temperatures, and stocks of one kind, share it.
/// A value computed twice by two threads is the same; past a number of choices nothing more is kept.
/// </summary>
internal sealed class TakingPartMemory
{
    private const int Most = 512;

    /// <summary>Inert ions that a choice can tell by their charges.</summary>
    private const int MostInert = 12;

    private readonly ConcurrentDictionary<Choice, TakingPart> _known = new();

    /// <param name="set">Always the same one.</param>
    public TakingPart Of(ConstantSet set, SolutionInput input)
    {
        if (ChoiceOf(input) is not { } choice)
        {
            return Compute(set, input);
        }

        if (_known.TryGetValue(choice, out var known))
        {
            return known;
        }

        var computed = Compute(set, input);
        return _known.Count < Most ? _known.GetOrAdd(choice, computed) : computed;
    }

    private static TakingPart Compute(ConstantSet set, SolutionInput input)
    {
        var s = new Stoichiometry(set, input);
        return new TakingPart(s, new IonPairs(set.Pairs, s));
    }

    /// <summary>Null where there are too many inert ions, or with charges that no ion has.</summary>
    private static Choice? ChoiceOf(SolutionInput input)
    {
        if (input.InertIons.Count > MostInert)
        {
            return null;
        }

        ulong present = 0, charges = 0;
        var totals = input.Totals.MolPerKg;
        for (var i = 0; i < totals.Length; i++) if (totals[i] > 0) present |= 1UL << i;
        for (var i = 0; i < input.InertIons.Count; i++)
        {
            var charge = input.InertIons[i].Charge;
            if (charge is < -15 or > 15) return null;
            charges = charges << 5 | (uint)(charge + 16);
        }

        return new Choice(present, input.CarbonDioxideAtm is > 0, charges);
    }

    private readonly record struct Choice(ulong Present, bool Open, ulong InertCharges);
}
