using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>
/// What the rules on solids in a stock share. The judgement of deposits looks at the stock as it is mixed, at its coldest and at its
/// warmest and decides what counts; a rule says it in its words.
/// </summary>
internal abstract partial class SolidRule : StockRule<SolidVerdict>, IProposesRepairs
{
    private const int MostCharacters = 590, MostNames = 2;

    /// <summary>True when the supplier of the negative ion is the line that has to change.</summary>
    protected virtual bool BlamesTheAnion => false;

    internal DepositOwner Owner => DepositOwner.Named(Name);

    protected override IEnumerable<SolidVerdict> Judge(StockFacts stock, RuleContext context)
    {
        var states = DepositJudgement.MomentsOf(stock).Where(s => s.IsSolved).ToList();
        if (states.Count == 0)
        {
            return [new SilentVerdict(stock) { Checks = [Check.That("the equilibrium of the stock can be computed", false)] }];
        }

        var limits = DepositOptions.Of(context);
        var looked = DepositJudgement.LookedAt(states, Owner, limits).Select(d => DepositVerdict.Of(stock, d, limits)).ToList();
        if (looked.Exists(v => v.Fires))
        {
            return looked.Where(v => v.Fires);
        }

        return Otherwise(stock, limits, context) is { } other ? [other]
            : looked.Count > 0 ? looked
            : context.OnlyWhatFires ? []
            : [Nearest(stock, states)];
    }

    /// <summary>What is left to say when nothing of its own falls out; null for nothing.</summary>
    private protected virtual SolidVerdict? Otherwise(StockFacts stock, OwnerLimits limits, RuleContext context)
    {
        if (SlowDeposit.Worst(stock, Owner, limits) is not { } slow)
        {
            return null;
        }

        var checks = new List<Check>
        {
            new("past the limit by more than the doubt", slow.Index, Relation.Over, SlowDeposit.Beyond(slow.Solid, limits)),
            new("enough to see", slow.GramsPerLitre, Relation.AtLeast, limits.Visible, "g/L"),
        };
        if (stock.Stock.Keep?.For?.Value.Days is { } days)
        {
            checks.Insert(1, new Check("kept long enough for it", days, Relation.Over, SlowDeposit.KeptDays, "days"));
        }

        return new SlowVerdict(stock, slow, limits) { Checks = checks };
    }

    /// <summary>Nothing of its own falls out: the solid that is nearest to it.</summary>
    private protected virtual SolidVerdict Nearest(StockFacts stock, IReadOnlyList<SolutionState> states)
    {
        var nearest = states
            .SelectMany(s => s.Clear!.Solids
                .Where(x => x.Solid.Role is SolidRole.FormsReadily or SolidRole.SolubleSalt
                    && IsOwn(x.Solid)
                    && Forming.StaysDissolvedBecause(s.Mix, x.Solid) is null)
                .Select(x => (State: s, x.Solid, x.Index)))
            .OrderByDescending(x => Rounding.SixDigits(x.Index))
            .FirstOrDefault();
        if (nearest.Solid is null)
        {
            var solids = ConstantSet.Product.Solids
                .Where(s => s.Owner == Name)
                .Select(s => s.Called)
                .Distinct(StringComparer.Ordinal)
                .ToList();
            var what = solids.Count > 3 ? "a solid of this rule" : string.Join(" or of ", solids);
            return new SilentVerdict(stock)
            {
                Checks =
                [Check.That($"it holds all the ions of {what}, in a form in which they can meet", false)]
            };
        }

        var past = new Check("past the limit", Math.Pow(10, nearest.Index), Relation.Over, 1);
        return new NearestVerdict(stock, nearest.State, nearest.Solid, null)
        {
            Checks = past.Holds
                ? [past, Check.That("something is left of it once all that falls out more readily has settled", false)]
                : [past],
        };
    }

    /// <summary>Why it matters, a full sentence.</summary>
    private protected abstract string Why(Solid solid);

    /// <summary>What to do.</summary>
    /// <param name="suppliers">At most two.</param>
    private protected virtual IEnumerable<Way> Ways(StockFacts stock, Solid solid, IReadOnlyList<Supplier> suppliers) =>
    [
        suppliers.Any(s => s.IsWater) ? new("make this stock with rain or reverse-osmosis water")
            : suppliers.Count == 2 ? Apart(suppliers)
            : new("make the stock weaker"),
    ];

    private protected static Way Apart(IReadOnlyList<Supplier> suppliers) =>
        new($"keep {suppliers[0].Name} and {suppliers[1].Name} in different parts");

    internal bool IsOwn(Solid solid) => solid.Owner == Name;

    /// <summary>The two suppliers, the one whose line should change first.</summary>
    private protected IReadOnlyList<Supplier> Suppliers(StockFacts stock, Solid solid)
    {
        var suppliers = Supplier.In(stock, solid);
        return BlamesTheAnion && suppliers.Count == 2 ? [suppliers[1], suppliers[0]] : suppliers;
    }

    protected override Finding Describe(SolidVerdict verdict, RuleContext context) => verdict switch
    {
        DepositVerdict deposit => FallsOut(deposit, context),
        SlowVerdict slow => Grows(slow, context),
        _ => throw new ArgumentException($"A verdict of the kind {verdict.GetType().Name} never fires.", nameof(verdict)),
    };

    private protected virtual Finding FallsOut(DepositVerdict verdict, RuleContext context)
    {
        var (stock, deposit) = (verdict.Stock, verdict.Deposit);
        var suppliers = Suppliers(stock, deposit.Solid);
        var guess = Wording.FollowsPh(deposit.Solid) ? GuessedPh.Of(stock) : null;
        var message = new Lazy<string>(() => Joined(
            What(stock, deposit, suppliers),
            Why(deposit.Solid),
            PhGuess.Sentence(guess) + Remedy(verdict, suppliers, context),
            deposit.State.Validity));
        var certainty = DepositWords.CertaintyOf(stock, deposit.State, deposit.Sureness);
        var odds = PhGuess.Weaken(DepositWords.OddsOf(deposit, certainty, DepositWords.ReagentsKnown(stock)), guess);
        return Raise(stock, context, suppliers, deposit.Solid, message, odds, certainty) with
        {
            Measured = new Measured($"{deposit.Solid.Called} that falls out", deposit.GramsPerLitre, verdict.Limits.Visible, "g/L"),
            Values = [.. Numbers(verdict)],
        };
    }

    private static Finding Grows(SlowVerdict verdict, RuleContext context)
    {
        var (stock, slow) = (verdict.Stock, verdict.Deposit);
        var suppliers = Supplier.In(stock, slow.Solid);
        var kept = stock.Stock.Keep?.For is { } time ? $"kept for {Say.Days(time.Value.Days)}" : "kept for long";
        var message =
            $"Up to {Say.Grams(slow.GramsPerLitre)}/L of {slow.Solid.Called} can grow in '{stock.Stock.Name}' over weeks: "
                + $"{Wording.Brings(suppliers)}, "
            + $"together {Wording.Times(Rounding.SixDigits(slow.Index), slow.Solid)} at {Wording.Celsius(slow.State.Temperature)}. "
            + $"It forms slowly, so a fresh stock looks clear; one {kept} may not. "
            + context.AdviceFor(stock).Sentence([.. suppliers.Count == 2 ? [Apart(suppliers)] : Array.Empty<Way>(),
                new("mix less at a time")]);
        return context.Find(
            suppliers.Count > 0 ? suppliers[0].Place : stock.Stock.Place, message, Harm.Loss, Odds.Possible, Certainty.Estimate) with
        {
            Related = [.. suppliers.Skip(1).Select(s => new RelatedPlace(s.Place, $"brings the {s.Brings}"))],
            Measured = new Measured($"{slow.Solid.Called} that can form", slow.GramsPerLitre, verdict.Limits.Visible, "g/L"),
            Values =
            [
                new NamedValue("can fall out", slow.GramsPerLitre, "g/L"),
                new NamedValue("saturation index", Rounding.SixDigits(slow.Index), ""),
                new NamedValue("temperature", slow.State.Temperature.Celsius, "°C"),
            ],
        };
    }

    private protected Finding Raise(
        StockFacts stock, RuleContext context, IReadOnlyList<Supplier> suppliers, Solid solid, Lazy<string> message, Odds odds,
        Certainty certainty)
    {
        var place = suppliers.Count > 0 ? suppliers[0].Place : stock.Stock.Place;
        var path = IdPath.Of(context.Facts.Workspace, place);
        return context.Find(place, Owner.EachSolidApart ? $"{path}#{Slug.Of(solid.Name)}" : path, message, Harm.Loss, odds, certainty) with
        {
            Related = [.. suppliers.Skip(1).Select(s => new RelatedPlace(s.Place, $"brings the {s.Brings}"))],
        };
    }

    /// <summary>The ways out and the nearest change at which it stays clear, as far as the hazard gate lets them be said.</summary>
    private protected string Remedy(DepositVerdict verdict, IReadOnlyList<Supplier> suppliers, RuleContext context)
    {
        var advice = context.AdviceFor(verdict.Stock);
        var ways = Ways(verdict.Stock, verdict.Deposit.Solid, suppliers).Select(w => Tried(w, verdict, advice)).OfType<Way>().ToList();
        return advice.Sentence(
            verdict.Deposit.State.Moment == StateMoment.Turned
                ? [new("make less of it and use it up sooner", Puts.Keeping), .. ways]
                : ways,
            Wording.NearestClear(verdict, advice));
    }

    /// <summary>
    /// A way with acid or warmth as far as it was found to keep this deposit dissolved; null where it does not. What acid harms beside is
    /// said all the same.
    /// </summary>
    private static Way? Tried(Way way, DepositVerdict verdict, VesselAdvice advice)
    {
        var (state, nearest) = (verdict.Deposit.State, verdict.Nearest);
        if (way.Puts == Puts.Warmth)
        {
            return nearest.Temperature > state.Temperature ? way : null;
        }

        if (way.Puts != Puts.Acid || way.Replaces || verdict.Stock.Chemistry.Mix.StandsInItsSilicateAlkali
            || !advice.Allows(way.Puts, way.ToPh))
        {
            return way;
        }

        var ph = way.ToPh ?? (nearest.Ph is { } clear && clear < state.PhBeforeDeposit ? Math.Floor(clear * 10) / 10 : null);
        var limits = DepositLimits.Default.With(verdict.Deposit.Owner.Name, verdict.Limits);
        return ph is { } there && AcidTrial.StaysClear(verdict.Stock, verdict.Deposit.Solid, there, limits)
            ? way with { ToPh = there } : null;
    }

    /// <summary>The sentences in one line; why it matters and reasons for doubt only where they fit.</summary>
    private protected static string Joined(string what, string why, string remedy, Validity validity)
    {
        var message = $"{what} {why} {remedy}";
        message = message.Length <= MostCharacters ? message : $"{what} {remedy}";
        return validity.Trust != Trust.InRange && validity.Reasons is [var doubt, ..] && message.Length + doubt.Length < MostCharacters
            ? $"{message} {doubt}"
            : message;
    }

    private static string What(StockFacts stock, JudgedDeposit deposit, IReadOnlyList<Supplier> suppliers)
    {
        var names = deposit.Deposits.Select(d => d.Solid.Called).Distinct(StringComparer.Ordinal).Take(MostNames).ToList();
        var amount = $"{Say.Grams(deposit.GramsPerLitre)}/L of {Say.List(names)}";
        var subject = deposit.Sureness switch
        {
            Sureness.Clear =>
                $"{amount} {(names.Count == 1 ? "falls" : "fall")} out of '{stock.Stock.Name}' {Wording.When(stock, deposit)}",
            Sureness.NearTheLimit => $"{amount} can fall out of '{stock.Stock.Name}' {Wording.When(stock, deposit)}",
            _ => $"Up to {amount} can settle out of '{stock.Stock.Name}' {Wording.When(stock, deposit)}",
        };
        var doubt = deposit.Sureness switch
        {
            Sureness.Clear => "",
            Sureness.NearTheLimit =>
                $" (saturation index {Say.Number(deposit.Index)}, known to ±{Say.Number(deposit.Doubt)})",
            _ => $" (it usually takes {Say.Number(Math.Pow(10, deposit.Solid.StartsInStorage))} times to start without crystals already "
                + "there)",
        };
        return $"{subject}: {Wording.BringsTimes(suppliers, deposit.Index, deposit.Solid, fallsOut: true)}{doubt}.";
    }

    private protected static IEnumerable<NamedValue> Numbers(DepositVerdict verdict)
    {
        var (deposit, nearest) = (verdict.Deposit, verdict.Nearest);
        yield return new NamedValue(deposit.Owner.IsOfSalts ? "crystallises" : "falls out", deposit.GramsPerLitre, "g/L");
        yield return new NamedValue("saturation index", deposit.Index, "");
        yield return new NamedValue("temperature", deposit.State.Temperature.Celsius, "°C");
        if (!deposit.Owner.IsOfSalts)
        {
            foreach (var before in PhGuess.Values(deposit.State, before: true))
            {
                yield return before;
            }
        }

        if (nearest.Factor is { } factor)
        {
            yield return new NamedValue("clear at this part of the strength", Rounding.SixDigits(factor), "");
        }

        if (nearest.Dilution is { } dilution)
        {
            yield return new NamedValue("clear at a dose of 1 to", dilution, "");
        }

        if (nearest.Temperature is { } temperature)
        {
            yield return new NamedValue("clear at", Rounding.SixDigits(temperature.Celsius), "°C");
        }

        if (!deposit.Owner.IsOfSalts && nearest.Ph is { } ph && Wording.FollowsPh(deposit.Solid))
        {
            yield return new NamedValue("clear at pH", Rounding.SixDigits(ph), "");
        }
    }

    /// <summary>
    /// Another part, another salt, a weaker stock, acid, warmth, distilled water, or less of it; what helps is found out by trying.
    /// </summary>
    protected override IEnumerable<RepairProposal> Repair(SolidVerdict verdict, Finding finding, RepairContext context)
    {
        var proposals = SolidRepairs.Of(
            (verdict as DepositVerdict)?.Nearest,
            verdict is DepositVerdict { Deposit: { Owner.IsOfSalts: false, Solid: var solid } } ? solid : null,
            finding,
            context);

        // Above the window of its chelate the iron is lost in the end, however clear the bottle is made at first.
        return verdict is DepositVerdict { Deposit.Solid: var rust } && rust.Composition.Any(c => c.Key == Component.FerricIron)
            ? proposals.Select(p => p.Providing(after =>
                after.FindStock(finding.Place.File) is not { } stock || !ChelateOutsideItsPh.IsTooAlkaline(stock)))
            : proposals;
    }
}
