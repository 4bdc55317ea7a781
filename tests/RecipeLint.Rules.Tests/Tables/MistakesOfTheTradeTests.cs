using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Tables;

/// <summary>What goes wrong between a recipe and the plant, each with the rules that look for it. A rule that is renamed or dropped is missed here.</summary>
public sealed class MistakesOfTheTradeTests
{
    public static TheoryData<string, string[]> Mistakes => new()
    {
        { "a file cut off or malformed", ["malformed-file", "wrong-encoding"] },
        { "a key twice", ["duplicate-key"] },
        { "a key nobody knows", ["unknown-key"] },
        { "a substance nobody knows", ["unknown-substance"] },
        { "a unit nobody knows, or none", ["unknown-unit", "number-without-unit"] },
        { "a file referred to that is not there, or in a circle", ["missing-reference", "reference-loop"] },
        { "an amount nobody means", ["implausible-amount"] },
        { "a stock nobody uses", ["unused-stock"] },
        { "a scale, measure or site that is not the shop's", ["unknown-equipment"] },
        { "an EC in ppm of 500 or 700, a gallon of two sizes", ["ambiguous-unit"] },
        { "a name that fits two hydrates", ["ambiguous-substance"] },
        { "a formula and a molar mass that disagree", ["formula-mass-disagrees"] },
        { "a technical grade of unknown assay", ["undeclared-assay"] },
        { "a label over 100 %, P2O5 read as P", ["impossible-analysis", "target-missed"] },
        { "calcium with sulfate", ["calcium-with-sulfate"] },
        { "calcium with phosphate", ["calcium-with-phosphate"] },
        { "phosphate in a trace stock", ["phosphate-in-trace-stock"] },
        { "iron with phosphate", ["iron-with-phosphate"] },
        { "magnesium ammonium phosphate", ["magnesium-ammonium-phosphate"] },
        { "silicate with acid or a metal", ["silicate-with-acid-or-metal"] },
        { "carbonate or hard water in a stock", ["carbonate-in-stock"] },
        { "molybdate with calcium", ["molybdate-with-calcium"] },
        { "a pH too high for an unchelated metal", ["metal-hydroxide"] },
        { "calcium with citrate or oxalate", ["calcium-with-citrate"] },
        { "a salt past its solubility at the coldest", ["salt-past-its-solubility"] },
        { "a double salt", ["double-salt"] },
        { "EDTA as acid out of a strongly acid stock", ["chelating-acid-drops-out"] },
        { "benzoic or sorbic acid crystals in the cold", ["preservative-drops-out"] },
        { "iron with benzoate", ["iron-with-benzoate"] },
        { "any other solid, and what cannot be told", ["any-other-solid", "solution-not-judged"] },
        { "a deposit in the tank, after the pH is set and with its water", ["tank-precipitate"] },
        { "too little chelating agent", ["chelate-short"] },
        { "a chelate robbed of its iron", ["chelate-robbed"] },
        { "a chelate outside its pH", ["chelate-outside-its-ph"] },
        { "iron(II) that rusts in storage", ["unprotected-ferrous-iron"] },
        { "a chelate in the light", ["chelate-in-light"] },
        { "nitrogen of a chelate counted for the plant", ["chelate-nitrogen-counted"] },
        { "carbon and no preservative", ["carbon-without-preservative"] },
        { "a preservative too weak at this pH", ["preservative-too-weak"] },
        { "a preservative too strong, for the plant or its solubility", ["preservative-too-strong"] },
        { "a preservative with an oxidiser", ["preservative-with-oxidiser"] },
        { "no acid in a trace stock", ["no-acid-in-trace-stock"] },
        { "a stock at a pH that does not keep", ["stock-ph-outside-range"] },
        { "vinegar that evaporates", ["weak-acid-volatile"] },
        { "kept longer than the chemistry lasts", ["shelf-life-too-long", "unprotected-ferrous-iron", "chelate-in-light"] },
        { "a weight below the display step", ["below-scale-resolution"] },
        { "a weight below the minimum", ["below-minimum-weight"] },
        { "more than the scale carries", ["over-scale-capacity"] },
        { "an element known too badly, and because of what", ["element-too-uncertain"] },
        { "a dosing device too coarse", ["measure-too-coarse"] },
        { "a slip of the dose that takes an element out of its range", ["dose-without-margin"] },
        { "made up or added to", ["doses-shift-the-volume"] },
        { "one syringe for both parts", ["shared-dosing-syringe"] },
        { "a batch that lasts longer than it keeps", ["batch-outlasts-shelf-life"] },
        { "a vessel too small or too coarse", ["vessel-too-small", "vessel-too-coarse"] },
        { "an element low, high or toxic", ["element-low", "element-high", "element-toxic"] },
        { "a ratio out of its range", ["ratio-out-of-range"] },
        { "an element missing", ["element-missing"] },
        { "a target missed, with the slip named", ["target-missed"] },
        { "charges that do not balance", ["charge-imbalance", "unbalanced-water"] },
        { "an EC or pH outside its window", ["ec-outside-window", "ph-outside-window"] },
        { "a load of sodium or chloride", ["sodium-or-chloride-load"] },
        { "alkalinity left", ["alkalinity-not-neutralised"] },
        { "an acid that brings too much of its nutrient", ["acid-brings-too-much"] },
        { "a water unfit by hardness, boron, iron or sodium", ["water-unfit"] },
        { "a load of heavy metals", ["contaminant-load"] },
        { "an order in which something drops out", ["metal-before-chelate-or-acid", "concentrate-onto-concentrate", "slow-dissolver-last"] },
        { "too little water to dissolve", ["too-little-water-to-dissolve"] },
        { "topped up past the volume, or never to it", ["topped-up-past-volume", "no-final-volume-step"] },
        { "no filter after a technical sulfate", ["no-filter-after-technical-sulfate"] },
        { "salts that chill the water", ["cools-on-dissolving"] },
        { "a label that leaves things out", ["label-incomplete", "hazardous-substance-without-caution"] },
        { "stocks that look alike, the concentrated one not marked", ["stocks-look-alike"] },
        { "no rinse after a small weight", ["missing-rinse-for-small-weight"] },
        { "water poured onto acid", ["water-onto-acid"] },
        { "nitric acid with acetic acid or other organics", ["nitric-with-organic"] },
        { "bleach with acid or ammonium", ["hypochlorite-with-acid", "hypochlorite-with-ammonium"] },
        { "an oxidiser with organic matter", ["oxidiser-with-organic"] },
        { "harm to the unborn or to water life", ["reprotoxic-notice", "aquatic-hazard-notice"] },
        { "a concentrate poured down a drain", ["concentrate-to-drain", "aquatic-hazard-notice"] },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void HasItsRule(string mistake, string[] rules)
    {
        Assert.NotEmpty(rules);
        Assert.All(rules, r => Assert.True(RuleBook.Find(r) is not null && RuleList.All.Any(l => l.Name == r), $"{mistake}: there is no rule '{r}'"));
    }
}
