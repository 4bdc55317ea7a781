namespace RecipeLint.Analysis.Hazards;

/// <summary>What things do to others, as bits: what is asked of every item of a vessel at every step has to cost next to nothing.</summary>
internal readonly record struct RoleSet(ulong Bits)
{
    public static RoleSet Of(IEnumerable<HazardRole> roles) => new(roles.Aggregate(0UL, (bits, role) => bits | (1UL << (int)role)));

    /// <summary>What any of them does.</summary>
    public static RoleSet OfAll(IEnumerable<Held> items)
    {
        var bits = 0UL;
        foreach (var item in items)
        {
            bits |= item.RoleSet.Bits;
        }

        return new RoleSet(bits);
    }

    public bool Has(HazardRole role) => (Bits & (1UL << (int)role)) != 0;
}
