using RecipeLint.Analysis.Solutions;

namespace RecipeLint.Analysis.Judgement;

/// <summary>
/// The pH between which an iron chelate is said to hold. Makers and handbooks differ by up to one unit: the lower limits come as the
/// highest and the lowest published, and so do the upper ones.
/// </summary>
/// <param name="Lowest">Below it every source gives the chelate up.</param>
/// <param name="LowFrom">Below it one source does.</param>
/// <param name="HighFrom">Above it one source gives the chelate up.</param>
/// <param name="Highest">Above it every source does.</param>
/// <param name="AcidSettles">The free acid of the agent is so little soluble that an acid stock drops it.</param>
public sealed record ChelateWindow(string Agent, double Lowest, double LowFrom, double HighFrom, double Highest, bool AcidSettles)
{
    /// <summary>
    /// W. L. Lindsay and W. A. Norvell, Soil Sci. Soc. Am. Proc. 33 (1969) 62 and W. A. Norvell in Micronutrients in Agriculture, 2nd ed.
    /// 1991 (both recalled), and technical sheets of chelate suppliers (EDTA to 6, HEDTA 4.5 to 7, DTPA to 7, EDDHA to 8.5 and from 4 as a
    /// stock: read); IDHA 3 to 7 by its makers (recalled), and to about 5 by its constants, from where on rust takes its iron in a feed.
    /// </summary>
    public static readonly IReadOnlyList<ChelateWindow> All =
    [
        new("citrate", 1.5, 1.5, 5.0, 5.0, false),
        new("EDTA", 1.5, 3.0, 6.0, 6.5, false),
        new("IDHA", 1.5, 3.0, 5.0, 7.0, false) { HighByConstants = true },
        new("HEDTA", 1.5, 4.5, 7.0, 7.0, false),
        new("DTPA", 1.5, 4.5, 7.0, 7.5, false),
        new("EDDHA", 3.5, 4.0, 8.5, 9.0, true),
    ];

    /// <summary>Share of the iron below which an agent is not looked at (common practice, no source).</summary>
    public const double NotableShare = 0.1;

    /// <summary>
    /// Below it the chelate is of no use in a stock. The acids of EDTA and DTPA fall out as solids of their own, which the rules on
    /// deposits speak of.
    /// </summary>
    public double LowestInStock => AcidSettles ? LowFrom : Lowest;

    /// <summary>
    /// True where no source but our constants gives the chelate up between <see cref="HighFrom"/> and <see cref="Highest"/>, and those are
    /// known to 0.7 in log K only (species.json): what is found there is possible, no more.
    /// </summary>
    public bool HighByConstants { get; init; }

    public static ChelateWindow Of(string agent) => All.First(w => w.Agent == agent);

    /// <summary>Windows of the agents that hold a notable part of the iron, the widest last.</summary>
    /// <param name="moles">Of a vessel or of a litre: only their shares count.</param>
    public static IEnumerable<ChelateWindow> In(ComponentMoles moles) =>
        IronHolders.Of(moles).Where(h => h.Share >= NotableShare).Select(h => Of(h.Name)).OrderBy(w => w.Highest);

    /// <summary>Chelates that hold iron at a pH by every source, by name; the mildest first.</summary>
    public static IEnumerable<ChelateWindow> HoldingAt(double ph) => All.Where(w => w.Agent is "DTPA" or "EDDHA" && ph <= w.HighFrom);
}
