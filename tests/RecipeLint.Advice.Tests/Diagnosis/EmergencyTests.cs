using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>
/// What people type in an emergency comes before any look of a deposit. Words of a hostile reading of the program and families of words of
/// the same sort; each row holds many, parted by semicolons.
/// </summary>
public sealed class EmergencyTests
{
    private static readonly Dictionary<string, string> Bottles = new(StringComparer.Ordinal)
    {
        ["acid"] = "100 mL nitric-60 in 1 L",
        ["lye"] = "100 g potassium-hydroxide in 1 L",
        ["peroxide"] = "300 mL hydrogen-peroxide-12 in 1 L",
        ["calcium"] = "100 g calcium-nitrate-4h2o, 30 g potassium-nitrate in 1 L",
    };

    [Theory]
    [InlineData(HazardKind.PersonIll, "my nose is bleeding; he was gassed; I am blinded; asthma attack; blood in spit; sneezing since I opened it; lips turned blue; his fingernails went blue; "
        + "I cannot see; she does not wake up; electric shock from the pump; inhaled the powder; got it up my nose; breathed in the dust; he is not breathing; my colleague has cramps; "
        + "unresponsive; we called an ambulance; he staggers; nosebleed; stopped breathing; I went blind; she is confused; she is dizzy; I feel dizzy; I have a headache from it; "
        + "my colleague breathed fumes and feels dizzy; headache; dizziness since I opened it")]
    [InlineData(HazardKind.Splashed, "spilled on my trousers, leg is red; it ate a hole in my jeans; wet clothes; acid dripped into my shoe; my socks are soaked; got it all over my shirt; "
        + "it ran down my sleeve; my fingers are white; hole in my coat; splashed my jacket")]
    [InlineData(HazardKind.Swallowed, "toddler put it in mouth; splash in the mouth; my sister licked her fingers; baby got hold of it; he drank it; the kids played with it; I tasted it; "
        + "got some in my mouth; a mouthful; my grandson found it and sipped; siphoned it by mouth")]
    [InlineData(HazardKind.Burst, "the bottle exploded; lid flew off; the glass shattered; bang, glass everywhere; it erupted; boiled over; the bottle sucked itself in; the plastic melted; "
        + "it blew up; explosion; cap flew across the room; the canister ruptured; it imploded; a fountain of it; the jar burst")]
    [InlineData(HazardKind.Fire, "flames; sparks; glowing; smouldering rag; crackling; it ignited; there were flames; embers; a fireball")]
    [InlineData(HazardKind.NitrogenOxides, "orange vapour; brown fumes; red vapour; brown mist above it; purple vapour; fumes; white smoke comes off; orange gas; reddish brown smoke")]
    [InlineData(HazardKind.Chlorine, "it is green gas; yellow gas above liquid; greenish vapour; yellow fumes; green mist above the liquid")]
    [InlineData(HazardKind.AnimalHarmed, "hens are dead; fish died in the pond; fish are floating; bees died on it; dog is drooling; cow drank the rinse water; my dog licked it up; the cat vomits; "
        + "our goat will not get up; sheep drank from the tank; two ducks lie still; the horse is staggering; the koi are dying; my rabbit is not moving")]
    [InlineData(HazardKind.NotUnderstood, "my tongue is numb; contact lens; my ring went black; garlic smell; bitter almonds; smells of gas; my teeth feel odd; I am frobbed; my hair is falling out; "
        + "she feels zonked; his voice sounds odd; burnt rubber smell; a smell of burning")]
    public void AnEmergencyIsHeardAndNothingElseIsSaid(HazardKind kind, string told)
    {
        foreach (var seen in told.Split("; "))
        {
            foreach (var bottle in Bottles.Keys)
            {
                var diagnosis = Diagnose(bottle, seen);
                Assert.True(
                    diagnosis.Hazards.Hazards.Any(h => h.Kind == kind && h.Grade >= HazardGrade.Suspected) || (kind == HazardKind.NotUnderstood
                        && diagnosis.Hazards.Hazards.Any(h => h.Grade >= HazardGrade.Suspected)),
                    $"{bottle}: '{seen}' gives {string.Join(", ", diagnosis.Hazards.Hazards.Select(h => $"{h.Grade} {h.Kind}"))} "
                        + $"[{string.Join(", ", diagnosis.Observation.Signs.Select(s => s.Say))}]");
                Assert.True(diagnosis.Observation.Reread.Count == 0, $"'{seen}' is read as {string.Join(", ", diagnosis.Observation.Reread)}");
            }
        }
    }

    /// <summary>What harms before it smells is named where its salt is in the bottle, and not taken for chlorine.</summary>
    [Theory]
    [InlineData("Sodium sulfide", HazardKind.HydrogenSulfide)]
    [InlineData("Potassium cyanide", HazardKind.HydrogenCyanide)]
    [InlineData("Sodium thiosulfate", HazardKind.SulfurDioxide)]
    public void WhatNumbsTheNoseIsNamed(string product, HazardKind kind)
    {
        var holding = Holding.Of([Held.Of(Product(product), 20)], 1);
        foreach (var seen in new[] { "headache, no smell any more", "I feel sick", "inhaled it", "she is dizzy" })
        {
            var kinds = NoticedHazards.Of(ObservationReader.Read(seen), holding);
            Assert.Contains(kind, kinds);
            Assert.DoesNotContain(HazardKind.Chlorine, kinds);
        }
    }

    /// <summary>What makes somebody dizzy need not sting: a person is ill, whatever gas it was.</summary>
    [Theory]
    [InlineData("she is dizzy", "collapsed")]
    [InlineData("I feel dizzy", "collapsed")]
    [InlineData("I have a headache from it", "collapsed")]
    [InlineData("my colleague breathed fumes and feels dizzy", "collapsed")]
    [InlineData("my colleague breathed fumes and feels dizzy", "breathed-in")]
    [InlineData("he breathed fumes", "breathed-in")]
    public void DizzyIsAPersonWhoIsIll(string seen, string sign)
    {
        var told = ObservationReader.Read(seen);
        Assert.Contains(told.Signs, s => s.Present && s.Sign.Id == sign);
        Assert.Null(told.Of("eyes-water"));
        Assert.Equal(HazardKind.PersonIll, Diagnose("calcium", seen).Hazards.Hazards[0].Kind);
    }

    /// <summary>Ordinary looks raise no alarm, and what did not happen neither.</summary>
    [Theory]
    [InlineData("nobody was hurt, white needles; no fish died, green cloud; nothing exploded; no flames; no fumes; it smells of fish; white hairs at the bottom; a skin on top; "
        + "scum in the neck; stirred by hand; my bottle is cloudy; I made it last week; chicken manure extract, brown sludge; in a PET bottle, pale crystals; sparkling flakes; glittering needles; "
        + "foggy; a white cloud at the bottom; the mist cleared; like fish scales; looks like frog spawn; baby-blue slimy clumps; orange flocs; chars over a flame; crackles on a spoon; "
        + "sparks in a flame; the bottle froze and split; nothing on my hands, white powder; my helper mixed it; white crystals on the walls; soap bubbles; brown skin; jelly on the lid; "
        + "a tongue of slime hangs from the lid; the child did not touch it; black nails of rust; the mouth of the bottle is crusted; clear as water; white vapour over a flame")]
    public void NoAlarmWithoutCause(string told)
    {
        var raised = told.Split("; ").Select(seen => (Seen: seen, Kinds: Diagnose("calcium", seen).Hazards.Hazards.Where(h => h.Grade >= HazardGrade.Suspected)
            .Select(h => h.Kind).ToList())).Where(r => r.Kinds.Count > 0).Select(r => $"'{r.Seen}' gives {string.Join(", ", r.Kinds)}").ToList();
        Assert.True(raised.Count == 0, string.Join('\n', raised));
    }

    [Fact]
    public void NoDescriptionOfADepositRaisesAnAlarm()
    {
        string[] signs = ["burst", "not-understood", "animal-harmed", "breathed-in", "burns-by-itself", "collapsed"];
        var all = TextbookCases.All.Concat(HoldOutCases.All).Concat(EverydayCases.All).Concat(ShedCases.All).Concat(GrowerCases.All).Concat(FreshEyesCases.All);
        var raised = all.Where(c => ObservationReader.Read(c.Seen).Signs.Any(s => s.Present && signs.Contains(s.Sign.Id)))
            .Select(c => $"{c}: {string.Join(", ", ObservationReader.Read(c.Seen).Signs.Select(s => s.Say))}").ToList();
        Assert.True(raised.Count == 0, string.Join('\n', raised));
    }

    /// <summary>A statement on somebody is never answered by 'nothing wrong'.</summary>
    [Fact]
    public void NothingIsCalledWrongWithNobodyHurt() => Assert.True(
        Diagnose("calcium", "looks fine, but my tongue is numb").Hazards.ForLeaving is not null);

    private static RecipeLint.Chemistry.Substances.Substance Product(string name) => new()
    {
        Id = name.Replace(' ', '-').ToLowerInvariant(),
        Name = name,
        Kind = RecipeLint.Chemistry.Substances.SubstanceKind.Product,
        Content = RecipeLint.Chemistry.Composition.ElementContent.Empty,
    };

    private static BottleDiagnosis Diagnose(string bottle, string seen) =>
        Diagnoser.Of(DiagnosisCase.StockOf(Bottles[bottle]), ObservationReader.Read(seen), null);
}
