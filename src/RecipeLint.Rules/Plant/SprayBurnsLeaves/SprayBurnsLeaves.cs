using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>
/// What is sprayed onto leaves and hurts them, or whoever stands in the mist: its pH, what oxidises, and too much of a salt.
/// </summary>
internal sealed class SprayBurnsLeaves : RecipeRule<SprayBurnsLeaves.Load>
{
    public const string RuleName = "spray-burns-leaves";

    private const double UreaGramsPerGramNitrogen = 60.055 / (2 * 14.007);

    public override string Name => RuleName;

    protected override IEnumerable<Load> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (!recipe.Recipe.IsForLeaves)
        {
            return [new Load(recipe, "", 0, default, LoadKind.Salt) { Checks = [Check.That("it is sprayed onto leaves", false)] }];
        }

        var options = context.Options<SprayBurnsLeavesOptions>();
        var holding = Holding.Of(recipe);
        List<Load> salts =
        [
            .. Elements(recipe, options),
            Of(recipe, "urea", UreaGramsPerGramNitrogen * recipe.MilligramsPerLitre("urea-N") / 1000, options.Urea, LoadKind.Salt),
        ];
        return
        [
            Acidity(recipe, options),
            .. Oxidisers(recipe, holding, options),
            .. salts,

            // Salts in all are only worth a word where none of them is too much by itself.
            .. salts.Exists(s => s.Fires) ? Array.Empty<Load>()
                : [Of(recipe, "solids", Solids(holding), options.Solids, LoadKind.Salt)],
        ];
    }

    protected override Finding Describe(Load verdict, RuleContext context)
    {
        var place = RecipePlaces.Doses(verdict.Recipe);
        var check = verdict.Checks[0];
        var what = verdict.Kind == LoadKind.Ph ? "pH" : verdict.What;
        return context.Find(
            place, $"{IdPath.Of(context.Facts.Workspace, place)}#{what.Replace(' ', '-')}", Message(verdict), verdict.Harm,
            verdict.Odds) with
        {
            Related = [.. ElementRatio.LargestSources(verdict.Recipe, verdict.Key).Take(2)],
            Measured = new Measured(what, verdict.Found, check.Limit, check.Unit),
            Values = [new NamedValue(what, verdict.Found, check.Unit), new NamedValue("limit", check.Limit, check.Unit)],
        };
    }

    protected override Working Work(Load verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"the spray '{verdict.Recipe.Recipe.Name}'");
        var check = verdict.Checks[0];
        if (check.Relation == Relation.True)
        {
            return work.Statements(verdict).Done();
        }

        var found = work.Given(verdict.What, verdict.Found, check.Unit, verdict.Kind == LoadKind.Ph ? From.Engine : From.Amounts);
        return work.Check(check, found, work.Option("limit", verdict.Limit)).Done(found);
    }

    /// <summary>As poured together: a mist has left the nozzle before the air has taken the edge off a lye.</summary>
    private static Load Acidity(RecipeFacts recipe, SprayBurnsLeavesOptions options)
    {
        const string What = "pH as mixed";
        if (!recipe.IsComplete
            || recipe.Chemistry is not { IsComplete: true } chemistry
            || (chemistry.TankAdjusted ?? chemistry.Tank) is not { TellsPh: true, Ph: var ph })
        {
            return new Load(recipe, What, 0, default, LoadKind.Ph) { Checks = [Check.That("its equilibrium can be computed", false)] };
        }

        var found = Rounding.SixDigits(ph);
        var high = options.HighestPh - ph < ph - options.LowestPh;
        var limit = high ? options.HighestPh : options.LowestPh;
        return new Load(recipe, What, found, limit, LoadKind.Ph)
        {
            Checks = [new Check(high ? "so alkaline that it burns" : "so acid that it burns", found,
                high ? Relation.AtLeast : Relation.AtMost, limit)],
        };
    }

    private static IEnumerable<Load> Oxidisers(RecipeFacts recipe, Holding holding, SprayBurnsLeavesOptions options)
    {
        yield return Of(recipe, "hydrogen peroxide", HydrogenPeroxide.GramsPerMole * HazardGate.PeroxidePerLitre(holding),
            options.Peroxide, LoadKind.Oxidiser);
        yield return Of(recipe, "available chlorine", ChlorineInTank.MilligramsPerLitre(recipe), options.Chlorine, LoadKind.Oxidiser);
        yield return Of(recipe, "strong oxidiser", holding.GramsPerLitre(HazardRole.StrongOxidiser), options.StrongOxidiser,
            LoadKind.Oxidiser);
    }

    private static IEnumerable<Load> Elements(RecipeFacts recipe, SprayBurnsLeavesOptions options)
    {
        (string Key, NumberOption Limit)[] limits =
        [
            ("B", options.Boron), ("Cu", options.Copper), ("Mn", options.Manganese), ("Zn", options.Zinc), ("Fe", options.Iron),
            ("Na", options.Sodium), ("Cl", options.Chloride),
        ];
        return limits.Select(l => Of(recipe, l.Key, recipe.MilligramsPerLitre(l.Key) / 1000, l.Limit, LoadKind.Salt));
    }

    /// <summary>g/L of everything that is bought dry: what stays on the leaf when the water has gone.</summary>
    private static double Solids(Holding holding) =>
        holding.Items.Where(i => i.Substance.Form == PhysicalForm.Solid).Sum(i => i.Grams) / holding.Litres;

    private static Load Of(RecipeFacts recipe, string what, double found, NumberOption limit, LoadKind kind) =>
        new(recipe, what, Rounding.SixDigits(found), limit, kind)
        {
            Checks = [new Check("more than leaves bear", Rounding.SixDigits(found), Relation.Over, limit, limit.Unit)],
        };

    private static string Message(Load verdict)
    {
        var check = verdict.Checks[0];
        var (name, found, limit) = (verdict.Recipe.Recipe.Name, Say.Number(verdict.Found), Say.Number(check.Limit));
        return verdict.Kind switch
        {
            LoadKind.Ph when verdict.IsCorrosive =>
                $"The spray '{name}' has pH {found} as it is mixed: a liquid of {(verdict.Found < 7 ? "2 or less" : "11.5 or more")} "
                    + "counts as corrosive to skin and eyes, and a mist reaches eyes and lungs. It burns the leaves too. "
                    + "Do not spray it: find the amount that is too large; the safety data sheets decide.",
            LoadKind.Ph =>
                $"The spray '{name}' has pH {found} as it is mixed; past {limit} leaves burn. "
                    + "Bring it to pH 5 to 8 before it is sprayed.",
            LoadKind.Oxidiser =>
                $"The spray '{name}' holds {found} {check.Unit} of {verdict.What}, over the {limit} {check.Unit} that is sprayed onto "
                    + "plants. It bleaches and kills leaves, and a mist of it hurts eyes and lungs. "
                    + "Do not spray it: its label says how strong it may be, and the safety data sheet what to wear.",
            _ =>
                $"The spray '{name}' holds {found} {check.Unit} {verdict.Called}; more than {limit} {check.Unit} is not sprayed onto "
                    + "leaves. As it dries the drop becomes a brine that burns leaf edges and fruit. "
                    + "Spray it weaker and more often, in the cool of the evening, and on a few plants first.",
        };
    }

    /// <summary>What kind of harm a load does.</summary>
    internal enum LoadKind
    {
        Ph,
        Oxidiser,
        Salt,
    }

    /// <summary>One thing of a spray.</summary>
    /// <param name="What">As a working calls it: "pH as mixed", "hydrogen peroxide", "Cu".</param>
    /// <param name="Found">In the unit of the check.</param>
    internal sealed record Load(RecipeFacts Recipe, string What, double Found, NumberOption Limit, LoadKind Kind) : Verdict
    {
        /// <summary>Extreme pH as Regulation (EC) No 1272/2008 (CLP), Annex I, 3.2.3.1.2 has it (recalled).</summary>
        public bool IsCorrosive => Kind == LoadKind.Ph
            && (Found <= HazardLimits.Default.Corrosive.PhTo || Found >= HazardLimits.Default.Corrosive.PhFrom);

        public Harm Harm => IsCorrosive || Kind == LoadKind.Oxidiser ? Harm.Person : Kind == LoadKind.Ph ? Harm.Damage : Harm.Loss;

        public Odds Odds => IsCorrosive || Checks[0].IsTwice ? Odds.Certain
            : Kind == LoadKind.Oxidiser ? Odds.Possible
            : Odds.NearTheLimit;

        /// <summary>Whose sources are named.</summary>
        public string Key => What == "urea" ? "urea-N" : What;

        public string Called => What switch
        {
            "solids" => "of dry salts",
            "urea" => "of urea",
            _ => What,
        };
    }
}
