using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tests.Agreement;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>What somebody put in comes before what was seen: the gate hears of it, and nothing is advised that it forbids.</summary>
public sealed class InterventionTests
{
    private static readonly Dictionary<string, (string Substance, double Grams)[]> Bottles = new(StringComparer.Ordinal)
    {
        ["part A"] = [("calcium-nitrate-4h2o", 120), ("potassium-nitrate", 30), ("fe-dtpa-hna", 2)],
        ["part B"] = [("magnesium-sulfate-7h2o", 45), ("monopotassium-phosphate", 22), ("potassium-sulfate", 20)],
        ["trace"] = [("manganese-sulfate-h2o", 2), ("copper-sulfate-5h2o", 0.3), ("zinc-sulfate-7h2o", 0.8)],
        ["ammonium"] = [("ammonium-sulfate", 40), ("monoammonium-phosphate", 20), ("magnesium-sulfate-7h2o", 30)],
        ["pH down"] = [("nitric-38", 200)],
        ["pH up"] = [("potassium-carbonate", 50)],
        ["bleach"] = [("sodium-hypochlorite-12.5", 200)],
        ["silicate"] = [("potassium-silicate-29be", 100)],
        ["peroxide"] = [("hydrogen-peroxide-12", 300)],
        ["lye"] = [("potassium-hydroxide", 200)],
    };

    [Theory]
    [InlineData("part B", "someone topped it up with bleach", HazardKind.Chlorine)]
    [InlineData("pH down", "poured bleach in by mistake", HazardKind.Chlorine)]
    [InlineData("part B", "my son put pool chlorine in and now it smells", HazardKind.Chlorine)]
    [InlineData("ammonium", "rinsed the bottle with bleach and filled it without washing", HazardKind.Chloramines)]
    [InlineData("bleach", "put ammonia window cleaner in it", HazardKind.Chloramines)]
    [InlineData("bleach", "cleaned the bottle with limescale remover first, yellow green air over it", HazardKind.Chlorine)]
    [InlineData("bleach", "the helper added vinegar against the smell", HazardKind.Chlorine)]
    [InlineData("bleach", "yellow-green air above the liquid", HazardKind.Chlorine)]
    [InlineData("bleach", "I put a bit essig in it and now it smell of swimming bath", HazardKind.Chlorine)]
    [InlineData("pH down", "I poured Chlorbleiche in", HazardKind.Chlorine)]
    [InlineData("bleach", "added Salmiak, stings in the eye", HazardKind.Chloramines)]
    [InlineData("pH up", "added Zitronensäure, foams like crazy", HazardKind.CarbonDioxidePressure)]
    [InlineData("lye", "I dropped an alu can in it, it bubbles", HazardKind.Hydrogen)]
    [InlineData("pH down", "a galvanized nail fell in, bubbles on it", HazardKind.Hydrogen)]
    [InlineData("part B", "my son put drain cleaner in, its boiling hot", HazardKind.Heat)]
    [InlineData("part A", "someone poured something from an unmarked can in, dunno what, its hot", HazardKind.UnknownContents)]
    [InlineData("part A", "it's hot, somebody poured something unknown into it", HazardKind.UnknownContents)]
    [InlineData("part A", "dont know what is in this bottle, label gone, it feels hot", HazardKind.UnknownContents)]
    [InlineData("trace", "added peroxide yesterday, bottle hard as a rock", HazardKind.OxygenPressure)]
    [InlineData("ammonium", "smells of ammonia since i put potash lye in", HazardKind.Ammonia)]
    [InlineData("pH up", "i poured ph down in it and it fizzed over, cap blew off", HazardKind.CarbonDioxidePressure)]
    [InlineData("pH down", "added h2o2 35% for sterilising, cap is bulging", HazardKind.OxygenPressure)]
    [InlineData("part B", "the guy from the pool cleaning emptied his chlorine into it", HazardKind.Chlorine)]
    [InlineData("part A", "spilled some pesticide into it", HazardKind.UnknownContents)]
    [InlineData("bleach", "mixed with the acid for cleaning lines", HazardKind.Chlorine)]
    [InlineData("peroxide", "bottle gone fat like a football", HazardKind.OxygenPressure)]
    [InlineData("bleach", "the cap hisses a bit", HazardKind.OxygenPressure)]
    [InlineData("pH down", "lime sulphur went in by mistake, rotten", HazardKind.HydrogenSulfide)]
    [InlineData("pH down", "I poured lime sulphur into it, yellow cloud", HazardKind.HydrogenSulfide)]
    [InlineData("pH down", "potassium permanganate was added, purple and warm", HazardKind.Runaway)]
    [InlineData("pH down", "put wood ash and aluminium foil in, fizzing", HazardKind.Hydrogen)]
    [InlineData("lye", "an aluminium spoon fell in, tiny bubbles, warm", HazardKind.Hydrogen)]
    [InlineData("pH down", "cyanide went in", HazardKind.HydrogenCyanide)]
    [InlineData("part A", "tipped a splash of frobnicate into it, milky, warm", HazardKind.UnknownContents)]
    [InlineData("pH down", "campden tablets were put in, it stings", HazardKind.SulfurDioxide)]
    [InlineData("bleach", "pool acid went in", HazardKind.Chlorine)]
    [InlineData("pH down", "spilled it on the concrete floor and it foams", HazardKind.CarbonDioxidePressure)]
    [InlineData("part B", "topped up with toilet cleaner by mistake", HazardKind.UnknownContents)]
    [InlineData("part B", "added drain cleaner", HazardKind.UnknownContents)]
    [InlineData("part B", "worker fainted next to the tank", HazardKind.PersonIll)]
    [InlineData("trace", "my colleague collapsed when he opened it", HazardKind.PersonIll)]
    [InlineData("part A", "I feel sick since I bent over it", HazardKind.PersonIll)]
    [InlineData("part A", "caught fire when spilled on sawdust", HazardKind.Fire)]
    [InlineData("part B", "lid shot off", HazardKind.FermentationPressure)]
    [InlineData("pH down", "warm to the touch", HazardKind.Heat)]
    [InlineData("part B", "should i add bleach?", HazardKind.Chlorine)]
    [InlineData("pH up", "can I pour acid in", HazardKind.CarbonDioxidePressure)]
    public void WhatCanHurtIsHeard(string bottle, string seen, HazardKind kind)
    {
        var diagnosis = Diagnose(bottle, seen);
        Assert.Contains(diagnosis.Hazards.Hazards, h => h.Kind == kind && h.Grade >= HazardGrade.Suspected);
        Assert.NotNull(BottleHazards.Refuses(["shake"], diagnosis.Hazards));
        Assert.NotNull(BottleHazards.Refuses(["heat"], diagnosis.Hazards));
        Assert.NotNull(BottleHazards.Refuses(["acid"], diagnosis.Hazards));
    }

    /// <summary>Who was hit or has swallowed of it hears of first aid before anything else.</summary>
    [Theory]
    [InlineData("someone drank from it", HazardKind.Swallowed)]
    [InlineData("a child swallowed a mouthful", HazardKind.Swallowed)]
    [InlineData("it splashed in my eye", HazardKind.Splashed)]
    [InlineData("spilled it on my skin, cloudy too", HazardKind.Splashed)]
    [InlineData("burnt my hand on it", HazardKind.Splashed)]
    public void WhoIsHurtHearsOfFirstAid(string seen, HazardKind kind)
    {
        var hazards = Diagnose("part B", seen).Hazards.Hazards;
        Assert.Equal(kind, hazards[0].Kind);
        Assert.Equal(HazardGrade.Suspected, hazards[0].Grade);
    }

    [Theory]
    [InlineData("a faint smell, faint cloudiness")]
    [InlineData("the foam collapsed")]
    [InlineData("a white skin on top")]
    [InlineData("somebody poured B in by mistake, now it looks like milk")]
    [InlineData("nobody fainted")]
    public void NobodyIsHurtByAWordAlone(string seen) =>
        Assert.DoesNotContain(Diagnose("part A", seen).Hazards.Hazards, h => h.Grade >= HazardGrade.Suspected);

    [Fact]
    public void PeroxideThatFizzesByItselfIsGasOfItsOwn() =>
        Assert.Contains("peroxide-gas", Diagnose("peroxide", "fizzing").Causes.Take(2).Select(c => c.Cause.Id));

    [Fact]
    public void SilicateThatSetIsSilicaGel() =>
        Assert.Contains("silica-gel", Diagnose("silicate", "turned to jelly").Causes.Take(2).Select(c => c.Cause.Id));

    [Fact]
    public void ConcentratesThatMetAreHeard() => Assert.Equal(
        "concentrates-joined", Diagnose("part A", "somebody poured B in by mistake, now it looks like milk").Causes[0].Cause.Id);

    /// <summary>A trial on a spoonful, a question and what did not happen are no act; and what goes in may be harmless.</summary>
    [Theory]
    [InlineData("part B", "two drops of bleach on a sample did nothing")]
    [InlineData("part B", "nobody put any bleach in")]
    [InlineData("part B", "should i add water?")]
    [InlineData("part B", "white crystals, dissolve in vinegar")]
    [InlineData("part A", "topped up with distilled water, white needles since")]
    [InlineData("trace", "brown flocs after i added some citric acid")]
    public void NothingIsSuspectedWithoutAnAct(string bottle, string seen) =>
        Assert.DoesNotContain(Diagnose(bottle, seen).Hazards.Hazards, h => h.Grade >= HazardGrade.Suspected);

    [Fact]
    public void NothingFermentsInBleach()
    {
        var causes = Diagnose("bleach", "the cap hisses a bit").Causes.Take(3).Select(c => c.Cause.Id).ToList();
        Assert.Contains("peroxide-gas", causes);
        Assert.DoesNotContain("yeast", causes);
    }

    /// <summary>The words of an act are no slips of the pen for signs.</summary>
    [Theory]
    [InlineData("spilled some water into it")]
    [InlineData("emptied the can into it")]
    public void AnActIsNoSign(string seen) => Assert.Empty(ObservationReader.Read(seen).Reread);

    [Theory]
    [InlineData("turned to jelly after I added pH down")]
    [InlineData("it went to jello after i put ph down in")]
    [InlineData("poured acid in, now its like pudding")]
    public void AcidInSilicateGels(string seen)
    {
        var first = Diagnose("silicate", seen).Causes[0];
        Assert.Equal("silica-gel", first.Cause.Id);
        Assert.True(first.Solid.GramsPerLitre > 1);
    }

    /// <summary>What the hazard texts tell a person to look out for is understood when a person tells it.</summary>
    [Fact]
    public void EveryNoticeOfAHazardIsUnderstoodAsADanger() => Assert.All(
        HazardText.All.Where(t => t.Signs.Count > 0),
        text => Assert.NotEmpty(NoticedHazards.Of(ObservationReader.Read(text.Notice), Holding.Of([], 1))));

    private static BottleDiagnosis Diagnose(string bottle, string seen) => Diagnoser.Of(
        Bottle.Of(bottle, 100, "8..25 °C", Bottles[bottle].Select(b => (b.Substance, b.Grams))).Stock, ObservationReader.Read(seen), null);
}
