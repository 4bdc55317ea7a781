using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.OneLine;

namespace RecipeLint.Analysis.Observations;

/// <summary>
/// What two things that a line names can do to people when they meet, whatever their amounts: "bleach + vinegar". Asked before anybody is
/// asked how much of each.
/// </summary>
public static class NamedMix
{
    /// <summary>g of each, and in one litre: both as they are bought, at full strength. No amount and no order comes to more.</summary>
    private const double GramsOfEach = 1000, Litres = 1;

    /// <summary>What needs nothing but water.</summary>
    private static readonly HashSet<HazardKind> Alone = [HazardKind.Phosphine, HazardKind.FlammableGas, HazardKind.HydrogenFluoride];

    /// <summary>Names of a line that are looked at; a longer one is no mix anybody makes.</summary>
    private const int MostNames = 20;

    /// <summary>Characters of a name with what is joined to it; a longer one names nothing that anybody pours together.</summary>
    private const int LongestName = 300;

    private static readonly string[] Joints = [" and ", " with ", " plus ", " into ", " onto ", " in ", " on ", " to ", "&", "+", "/"];

    /// <summary>
    /// Hazards whose two reactants the line names, each kind once, the gravest first, without figures and under the names as written; empty
    /// where nothing is known to happen or fewer than two names mean something, but for what water alone takes apart. Pure; never throws.
    /// </summary>
    public static IReadOnlyList<Hazard> Dangers(string line) => Dangers(OneLineMix.Names(line), OneLineMix.NamesVolume(line));

    /// <inheritdoc cref="Dangers(string)"/>
    /// <param name="names">One thing each, or several joined by words ("bleach and vinegar").</param>
    public static IReadOnlyList<Hazard> Dangers(IEnumerable<string> names) => Dangers(names, false);

    private static IReadOnlyList<Hazard> Dangers(IEnumerable<string> names, bool isDissolved)
    {
        List<string> named = [.. names.Take(MostNames)];
        var meant = named.SelectMany(Meant).Take(MostNames).ToList();
        var isDry = !isDissolved && !named.Exists(NamesWater);
        var alone = meant.SelectMany(m => m).SelectMany(held => HazardGate.Of(Holding.Of([held], Litres)).Present)
            .Where(h => Alone.Contains(h.Kind)).Select(h => h with { Value = 0, Limit = 0, Unit = "" });
        return HazardGate.Gravest(alone.Concat(meant.SelectMany((one, i) => meant.Skip(i + 1).SelectMany(other =>
            one.SelectMany(a => other.SelectMany(b => Between(a, b).Concat(isDry ? Dry(a, b) : [])))))));
    }

    private static bool NamesWater(string name) => name.Length <= LongestName
        && (OneLineMix.NamesVolume(name) || name.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Any(w => w.Equals("water", StringComparison.OrdinalIgnoreCase)));

    /// <summary>
    /// An oxidising salt that is ground or heaped with what burns: nothing says that water comes first. Salts of acids and chelates are
    /// left to stocks, where amounts are known.
    /// </summary>
    private static IEnumerable<Hazard> Dry(Held one, Held other)
    {
        if ((Burns(one) || Burns(other)) && MeetingHazards.Dry(one, other, HazardLimits.Default) is { } fire)
        {
            yield return fire with { Value = 0, Limit = 0, Unit = "" };
        }
    }

    private static bool Burns(Held held) => held.Is(HazardRole.Fermentable) || held.Is(HazardRole.Fuel);

    /// <summary>What comes of two, in either order.</summary>
    private static IEnumerable<Hazard> Between(Held one, Held other)
    {
        var apart = HazardGate.Of(Holding.Of([one], Litres)).Present.Concat(HazardGate.Of(Holding.Of([other], Litres)).Present)
            .Select(h => h.Kind).ToHashSet();
        return HazardGate.Of(Holding.Of([one, other], Litres)).Present
            .Concat(HazardGate.Meeting(Holding.Of([one], Litres), other, HazardLimits.Default))
            .Concat(HazardGate.Meeting(Holding.Of([other], Litres), one, HazardLimits.Default))
            .Where(h => h.Grade >= HazardGrade.Present && h.With is not null && h.Kind != HazardKind.UnknownContents
                && !apart.Contains(h.Kind))
            .Select(h => h with { Value = 0, Limit = 0, Unit = "" });
    }

    /// <summary>Each thing that a name means, with every grade of the catalogue that it can be; none where nobody knows it.</summary>
    private static IEnumerable<IReadOnlyList<Held>> Meant(string name)
    {
        if (name.Length > LongestName)
        {
            return [];
        }

        if (Whole(name.Trim()) is { Count: > 0 } whole)
        {
            return [whole];
        }

        return Array.Find(Joints, j => name.Contains(j, StringComparison.OrdinalIgnoreCase)) is { } joint
            ? Parted(name, joint).SelectMany(OneLineMix.Names).SelectMany(Meant)
            : [];
    }

    private static string[] Parted(string name, string joint) =>
        name.Split([joint, joint.ToUpperInvariant()], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static IReadOnlyList<Held> Whole(string name)
    {
        IEnumerable<Substance> substances = SubstanceCatalogue.BuiltIn.Find(name) switch
        {
            SubstanceLookup.Found found => [found.Substance],
            SubstanceLookup.Ambiguous several => several.Candidates,
            _ => InterventionReader.Stands(name) is { } everyday ? [everyday]
                : WithoutStrength(name) is { } bare ? [.. Whole(bare).Select(h => h.Substance)]
                : ByName(name),
        };
        return [.. substances.Select(s => Held.Of(s, GramsOfEach)).Select(h => h with { Substance = h.Substance with { Name = name } })];
    }

    /// <summary>"HCl" of "HCl 31 %"; null for a name that says no strength.</summary>
    private static string? WithoutStrength(string name)
    {
        var bare = name.TrimEnd().TrimEnd('%').TrimEnd().TrimEnd([.. "0123456789.,"]);
        return name.TrimEnd().EndsWith('%') && bare.EndsWith(' ') && bare.Trim().Length > 0 ? bare.Trim() : null;
    }

    /// <summary>What nobody catalogues, as far as its name tells what it does to others.</summary>
    private static IReadOnlyList<Substance> ByName(string name) =>
        !Array.Exists(Joints, j => name.Contains(j, StringComparison.Ordinal)) && HazardRoles.Named(name) is { } product
            ? [product]
            : [];
}
