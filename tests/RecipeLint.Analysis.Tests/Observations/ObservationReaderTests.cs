using RecipeLint.Analysis.Observations;

namespace RecipeLint.Analysis.Tests.Observations;

public sealed class ObservationReaderTests
{
    [Theory]
    [InlineData("white needles", "+white +needles")]
    [InlineData("fizzing", "+bubbles")]
    [InlineData("white crust, fizzes", "+white +crust +vinegar-fizzes")]
    [InlineData("warm to the touch", "+hot")]
    [InlineData("dissolves when it gets warm", "+warm-dissolves")]
    [InlineData("cloudy after topping up from the hose", "+cloud +tap-water")]
    [InlineData("the bottle froze and split", "+ice")]
    [InlineData("long icicles", "+needles")]
    [InlineData("smells of nail varnish remover", "+smell-aromatic")]
    [InlineData("pink slime in the pipe", "+pink +slime +walls")]
    [InlineData("somebody poured B in by mistake, now it looks like milk", "+on-joining +milky")]
    [InlineData("smells of chlorine after shocking the lines", "+smell-chlorine +walls")]
    [InlineData("fizzed when I added pH down", "+acid-gas")]
    [InlineData("when I poured in nitric acid the tank foamed", "+acid-gas")]
    [InlineData("poured vinegar on the white crust, it fizzed", "+white +crust +vinegar-fizzes")]
    [InlineData("gone to jelly after I added some pH down", "+jelly +on-acid")]
    [InlineData("went all milky after the acid", "+milky +on-acid")]
    [InlineData("white crystals gone after I added acid", "+white +crystals +strong-acid-dissolves")]
    [InlineData("after adding vinegar it cleared up", "+vinegar-dissolves")]
    [InlineData("i got some on my hand and it is burning", "+splashed")]
    [InlineData("acid splashed in worker's eye when dosing", "+splashed +on-dosing")]
    [InlineData("it spat at me when I poured water", "+splashed")]
    [InlineData("my fingers sting since I stirred it", "+splashed")]
    [InlineData("didnt get any on my hands, white needles", "+white +needles")]
    [InlineData("stirred by hand, it burns with a flame", "+flame-burns")]
    [InlineData("was green now its orange with mud", "+liquid-changed +orange +sediment")]
    [InlineData("was green, now brown", "+liquid-changed +brown")]
    [InlineData("dog licked the stock", "+animal-harmed")]
    [InlineData("never hot", "")]
    [InlineData("neither hot", "")]
    [InlineData("no fizz", "")]
    [InlineData("I have not tried acid", "")]
    [InlineData("can I dissolve it with vinegar", "")]
    [InlineData("would hot water help", "")]
    [InlineData("dissolves in acid?", "")]
    [InlineData("may I heat it to dissolve it", "")]
    [InlineData("white crust, can I dissolve it with vinegar?", "+white +crust")]
    [InlineData("would vinegar help? it fizzes with vinegar", "+vinegar-fizzes")]
    [InlineData("leaves bleached", "")]
    [InlineData("rubber smell", "+smell")]
    [InlineData("smells of wax", "+smell")]
    [InlineData("smells of burnt rubber", "+not-understood")]
    [InlineData("ice cold and won't dissolve", "-cold-dissolves")]
    [InlineData("smells like egg white", "+smell")]
    [InlineData("the colour is dark", "+liquid-darker")]
    [InlineData("no longer smells of ammonia", "-smell-ammonia")]
    [InlineData("lid flew off", "+burst +neck")]
    [InlineData("orange vapour", "+brown-fumes")]
    [InlineData("spilled on my trousers, leg is red", "+splashed")]
    [InlineData("lips turned blue", "+collapsed")]
    [InlineData("sparks", "+burns-by-itself")]
    [InlineData("sparks over a flame", "+flame-sparks")]
    [InlineData("I added part B by mistake and it went milky", "+on-joining +milky")]
    [InlineData("the child has tasted it", "+swallowed")]
    [InlineData("the cat never drank of it", "-swallowed")]
    [InlineData("sparkly flakes", "+glittering +plates")]
    [InlineData("the level went down, white crust round the cap", "+white +crust +neck")]
    [InlineData("white sludge on the bottem", "+white +sediment +bottom")]
    [InlineData("black bottoms on the tomatoes", "")]
    [InlineData("white spots on the leaves after spraying", "")]
    [InlineData("leaves not yellow but growth slow", "")]
    [InlineData("everythings fine, no problem", "+normal")]
    [InlineData("somebody tipped some of part B into it, now milk", "+on-joining +milky")]
    [InlineData("clear, but when diluted goes cloudy", "+liquid-clear +on-dosing +cloud")]
    [InlineData("leaves burnt at the edges and new leaves yellow between the veins", "")]
    [InlineData("roots brown and slimy", "")]
    [InlineData("lower leaves pale, white crust on the drippers", "+white +crust +walls")]
    [InlineData("roots are brown and there is white crust on the drippers", "+white +crust +walls")]
    [InlineData("thin shiny white leaves at the bottom", "+white +plates +pearly +bottom")]
    [InlineData("sprinkled it in, after flushing", "")]
    [InlineData("no fizz with vinegar", "-vinegar-fizzes")]
    [InlineData("doesn't dissolve when warmed", "-warm-dissolves")]
    [InlineData("does not dissolve in hot water or vinegar", "-warm-dissolves -vinegar-dissolves")]
    [InlineData("dissolves in vinegar without fizzing", "+vinegar-dissolves -vinegar-fizzes")]
    [InlineData("vinegar: nothing", "-vinegar-dissolves -vinegar-fizzes")]
    [InlineData("vinegar did nothing", "-vinegar-dissolves -vinegar-fizzes")]
    [InlineData("dissolves in strong acid only", "+strong-acid-dissolves -vinegar-dissolves")]
    [InlineData("a lot of distilled water dissolves it", "+water-dissolves")]
    [InlineData("gone after a warm water bath", "+warm-dissolves")]
    [InlineData("lye turns it brown", "+alkali-browns")]
    [InlineData("cotton wool on the surface", "+threads +surface")]
    [InlineData("no smell", "+smell-none")]
    [InlineData("smells of rotten eggs", "+smell-rotten-eggs")]
    [InlineData("sugar-like crystals at the bottom", "+crystals +bottom")]
    [InlineData("whte nedles", "+white +needles")]
    [InlineData("chars over a flame", "+flame-burns")]
    [InlineData("cleared up when I shook it", "+shake-dissolves")]
    [InlineData("it floats", "+floats")]
    [InlineData("no crystals but slimy", "-crystals +slime")]
    [InlineData("clear, no sediment", "+liquid-clear -sediment -deposit")]
    [InlineData("clear after stirring", "+shake-dissolves")]
    [InlineData("stringy like egg white", "+slime")]
    [InlineData("egg white foam on top", "+slime +foam")]
    [InlineData("smells of eggs", "+smell-rotten-eggs")]
    [InlineData("no rotten egg smell", "-smell-rotten-eggs")]
    [InlineData("it stings", "+eyes-water")]
    [InlineData("choking", "+eyes-water")]
    [InlineData("my eyes burn", "+eyes-water")]
    [InlineData("my throat feels scratchy", "+eyes-water")]
    [InlineData("it took my breath away", "+eyes-water")]
    [InlineData("nobody coughed", "-eyes-water")]
    [InlineData("doesn't sting, no smell of chlorine", "-eyes-water -smell-chlorine")]
    [InlineData("smelled no chlorine", "-smell-chlorine")]
    [InlineData("does not smell of ammonia", "-smell-ammonia")]
    [InlineData("neither slime nor smell", "-slime +smell-none")]
    [InlineData("not bulging", "-pressure")]
    [InlineData("I felt nothing strange", "+normal")]
    [InlineData("redecorated the greenhouse", "")]
    [InlineData("cloud after the acid went in", "+cloud +on-acid")]
    [InlineData("cloud when the concentrate went in", "+cloud +on-dosing")]
    [InlineData("white crust on the drippers", "+white +crust +walls")]
    [InlineData("water-clear again with a few drops of nitric acid", "+strong-acid-dissolves")]
    [InlineData("plain water takes it off", "+water-dissolves")]
    [InlineData("acid takes it off", "+strong-acid-dissolves")]
    [InlineData("vinegar takes it off", "+vinegar-dissolves")]
    [InlineData("vinegar doesn't take it off", "-vinegar-dissolves")]
    [InlineData("vinegar fizzes", "+vinegar-fizzes")]
    [InlineData("water dissolves it", "+water-dissolves")]
    [InlineData("wipes off with a wet cloth", "+water-dissolves")]
    [InlineData("rinses off with water", "+water-dissolves")]
    [InlineData("only at the bottom", "+bottom")]
    [InlineData("skin on top", "+skin +surface")]
    [InlineData("gone when warm", "+warm-dissolves")]
    [InlineData("smells of swimming pool", "+smell-chlorine")]
    [InlineData("smells like a swiming pool", "+smell-chlorine")]
    [InlineData("smells of amonia", "+smell-ammonia")]
    [InlineData("smells of vinegar", "+smell-vinegar")]
    [InlineData("smells of yeast", "+smell-yeasty")]
    [InlineData("the bottle is swollen and hissing", "+pressure")]
    [InlineData("bottle ballooned", "+pressure")]
    [InlineData("the drippers are blocked", "+walls")]
    [InlineData("I cracked the lid", "+neck")]
    [InlineData("dark red like wine", "+red")]
    [InlineData("cloudy after the ph was raised", "+cloud +on-alkali")]
    [InlineData("cloudy after potassium hydroxide", "+cloud +on-alkali")]
    [InlineData("white where both stocks come together", "+white +on-joining")]
    [InlineData("sand that came with the water", "+sand +tap-water")]
    [InlineData("comes back after shaking", "-shake-dissolves")]
    public void EverydayWordsBecomeSigns(string text, string expected)
    {
        var signs = ObservationReader.Read(text).Signs.Select(s => (s.Present ? "+" : "-") + s.Sign.Id);

        Assert.Equal(expected.Split(' ', StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal), signs.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("blue solution", "blue")]
    [InlineData("the liquid turned yellow", "yellow")]
    [InlineData("clear and green, no deposit", "green")]
    public void TheColourOfTheLiquidIsNotThatOfADeposit(string text, string colour)
    {
        var observation = ObservationReader.Read(text);

        Assert.Equal(colour, observation.LiquidColours.Single().Id);
        Assert.DoesNotContain(observation.Signs, s => s.Sign.Kind == SignKind.Colour);
    }

    [Theory]
    [InlineData("2 weeks", "weeks")]
    [InlineData("about 3 hours", "hours")]
    [InlineData("10 minutes", "at-mixing")]
    [InlineData("overnight", "days")]
    [InlineData("next morning", "days")]
    [InlineData("4 months", "months")]
    [InlineData("after a cold night", "after-cooling")]
    public void TimesAreReadFromFiguresAndWords(string text, string expected) =>
        Assert.Contains(TimeWords.Read(text).Signs, s => s.Present && s.Sign.Id == expected);

    [Fact]
    public void UnknownWordsAreNamedOnceAndOrdinaryOnesAreNot()
    {
        var observation = ObservationReader.Read("The xyzzyq lies at the bottom of my bottle, xyzzyq again");

        Assert.Equal(["xyzzyq"], observation.Unknown);
    }

    [Fact]
    public void WhatIsToldBothWaysIsLeftOut()
    {
        var observation = ObservationReader.Read("it floats. it does not float");

        Assert.Equal("floats", observation.Contradictions.Single().Id);
        Assert.Empty(observation.Signs);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ,,, ;;; ...")]
    [InlineData("no no no not never")]
    [InlineData("\u0000\ud800 ' '' -- \u202e")]
    public void AnythingIsReadWithoutAnError(string text) => Assert.NotNull(ObservationReader.Read(text));
}
