using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Judgement;

/// <summary>What acid does to the contents of a vessel although nobody is in danger.</summary>
/// <param name="Name">What suffers, without what its name says in brackets.</param>
/// <param name="BelowPh">pH under which an extract falls out; null for silicate, which gels as soon as its alkali is taken away.</param>
/// <param name="IsAlone">True where nothing else but preservatives is in the vessel, so that it cannot be parted from anything.</param>
/// <param name="FallsOut">What falls out at the pH that was asked of and does not before; null for silicate and extracts.</param>
public sealed record AcidHarm(string Name, double? BelowPh, bool IsAlone, Solid? FallsOut = null);
