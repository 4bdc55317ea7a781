using System.Globalization;
using System.Text;
using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Order;
using RecipeLint.Advice.Slips;
using RecipeLint.Advice.Splitting;
using RecipeLint.Advice.Stretching;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Tests.Hazards;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports.BenchSheets;
using RecipeLint.Reports.Diagnosis;
using RecipeLint.Reports.Dissolve;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>
/// Pairs of the catalogue, 50 g of each in a litre, before every command that advises. An ordinary run takes every pair that textbooks keep
/// apart and a seeded sample of the others; RECIPELINT_LONG=1 takes one pair for each two classes of substances that do and bring the same, and
/// holds them to a table of their own.
/// </summary>
public sealed class HazardMatrixTests
{
    private const int Sampled = 24, DiagnosedOrdinarily = 60;

    private static readonly string[] Seen =
    [
        "white powder at the bottom", "swimming pool smell, my eyes water", "the bottle bulges and hisses", "clear, nothing wrong", "brown flocs",
    ];

    private static readonly string[] TankSeen = ["white crust on the drippers", "swimming pool smell, my eyes water"];

    private static bool Long => Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1";

    [Fact]
    public void NoCommandAdvisesWhatCanHurtSomebody()
    {
        var ids = SubstanceCatalogue.BuiltIn.Substances.Select(s => s.Id).ToList();
        var all = ids.SelectMany((a, i) => ids.Skip(i + 1).Select(b => (One: a, Other: b))).ToList();
        var dangerous = all.Where(p => TextbookPairs.Of(p.One, p.Other).Count > 0).ToList();
        var random = new Random(20260301);
        var others = all.Except(dangerous).ToList();
        var sampled = Long ? CatalogueClasses.FirstOfEach(others) : [.. Enumerable.Range(0, Sampled).Select(_ => others[random.Next(others.Count)])];
        HashSet<(string, string)> diagnosed = Long
            ? [.. CatalogueClasses.FirstOfEach(dangerous)]
            : [.. dangerous.Where((_, i) => i % ((dangerous.Count / DiagnosedOrdinarily) + 1) == 0)];
        var asked = dangerous.Select(p => (Pair: p, Seen: diagnosed.Contains(p) ? Seen : []))
            .Concat(sampled.Select((p, i) => (Pair: p, Seen: Long ? [Seen[i % Seen.Length]] : Seen))).ToList();
        var judged = asked.AsParallel().AsOrdered().Select(a => Judge(a.Pair.One, a.Pair.Other, a.Seen)).ToList();
        var table = new SortedDictionary<string, int[]>(StringComparer.Ordinal);
        foreach (var said in judged.SelectMany(j => j.Said))
        {
            var row = table.TryGetValue(said.Command, out var known) ? known : table[said.Command] = new int[4];
            row[(said.Harmful ? 0 : 2) + (said.Refused ? 0 : 1)]++;
        }

        var faults = judged.SelectMany(j => j.Faults).ToList();
        Assert.True(faults.Count == 0, $"{faults.Count} faults\n{string.Join('\n', faults.Take(Long ? 2000 : 40))}");
        Assert.InRange(dangerous.Count, 300, 2000);
        Repository.AssertGolden(
            $"../../RecipeLint.Tests/Tables/{(Long ? "hazard-matrix-whole.md" : "hazard-matrix.md")}", Table(table, all.Count, dangerous.Count, sampled.Count));
    }

    /// <summary>Two names in a line and no amounts: whatever textbooks keep apart is told of before anybody asks how much.</summary>
    [Fact]
    public void EveryPairThatTextbooksKeepApartIsToldOfWithoutAmounts()
    {
        var ids = SubstanceCatalogue.BuiltIn.Substances.Select(s => s.Id).ToList();
        var apart = ids.SelectMany((a, i) => ids.Skip(i + 1).Select(b => (One: a, Other: b)))
            .Where(p => TextbookPairs.Of(p.One, p.Other).Count > 0).ToList();
        var silent = apart.Where(p => NamedMix.Dangers($"{p.One} + {p.Other}").Count == 0).ToList();

        Assert.InRange(apart.Count, 300, 2000);
        Assert.True(silent.Count == 0, $"{silent.Count} silent: {string.Join("; ", silent.Take(40))}");
    }

    /// <summary>
    /// Fertilisers that are dissolved together every day are asked for their amounts and nothing else. Sugar is plain but beside a nitrate:
    /// dry together the two burn (UN 1942), and a line without amounts names no water.
    /// </summary>
    [Fact]
    public void NoPairOfPlainNutrientSaltsIsCalledADanger()
    {
        string[] plain =
        [
            "calcium-nitrate-4h2o", "potassium-nitrate", "magnesium-sulfate-7h2o", "monopotassium-phosphate", "potassium-sulfate",
            "ammonium-nitrate", "ammonium-sulfate", "magnesium-nitrate-6h2o", "potassium-chloride", "boric-acid", "zinc-sulfate-7h2o",
            "manganese-sulfate-h2o", "copper-sulfate-5h2o", "sodium-molybdate-2h2o", "fe-dtpa-hna", "fe-eddha-na", "urea", "citric-acid-h2o",
            "sodium-benzoate", "potassium-sorbate", "sucrose",
        ];
        var spoken = plain.SelectMany((a, i) => plain.Skip(i + 1).Select(b => $"{a} + {b}"))
            .Where(line => NamedMix.Dangers(line) is { Count: > 0 } dangers
                && !(line.Contains("nitrate", StringComparison.Ordinal) && line.Contains("sucrose", StringComparison.Ordinal)
                    && dangers.All(d => d.Kind == HazardKind.Fire))).ToList();

        Assert.True(spoken.Count == 0, string.Join("; ", spoken));
    }

    /// <summary>What a command did with a pair.</summary>
    private readonly record struct Saying(string Command, bool Harmful, bool Refused);

    private sealed record Judged(List<Saying> Said, List<string> Faults);

    private static Judged Judge(string one, string other, string[] descriptions)
    {
        List<Saying> said = [];
        List<string> faults = [];
        var expected = TextbookPairs.Of(one, other);
        var stock = Pair(one, other, out var workspace);
        var harmful = expected.Count > 0;
        var beaker = Of(one, other);
        if (harmful || !Long || HazardGate.Of(stock).Hazards.Count > 0 || HazardGate.Of(beaker).Hazards.Count > 0)
        {
            Advise();
        }

        foreach (var seen in descriptions)
        {
            var text = DiagnosisReport.Write(Diagnoser.Of(stock, ObservationReader.Read(seen), null), null);
            var flowing = Flowing(text);
            Say("diagnose", flowing.Contains(" danger ", StringComparison.Ordinal));
            Forbid("diagnose", flowing, seen);
        }

        return new Judged(said, faults);

        void Advise()
        {
            Say("order", MixingOrder.Of(stock).Refused is not null);
            Say("split", Splitter.Of(stock, workspace, new SplitRequest()).Plan is not { } plan || plan.Parts.All(p => !Holds(p.Stock, one) || !Holds(p.Stock, other)));
            if (harmful || descriptions.Length > 0)
            {
                Say("stretch", StockStretch.Of(workspace, stock, new DateOnly(2026, 3, 1)).Refused is not null);
            }

            Say("dissolve", DissolveReport.Refused(beaker) is not null, only: HazardGate.Of(beaker).Present.Any(h => h.IsForLeaving));
            Say("bench-sheet", BenchSheet.Of(workspace, stock, stock.Volume).Refused.Count > 0);
            if (descriptions.Length > 0 && (Long || (one.Length + other.Length) % 3 == 0))
            {
                Paper();
            }
        }

        void Paper()
        {
            Say("proof", ProofReport.Refused(Proof.Of(workspace, stock)) is not null);
            Recorded(new PairRecorded(one, other));
            var paper = new PairOnPaper(one, other);
            Say("check", paper.IsError);
            var repairs = paper.HarmfulRepairs().ToList();
            Say("check --repairs", repairs.Count == 0);
            faults.AddRange(repairs.Select(r => $"check --repairs: {one} with {other}: {r}"));
            foreach (var seen in TankSeen)
            {
                var text = Flowing(paper.TankText(seen));
                Say("diagnose a tank", text.Contains(" danger ", StringComparison.Ordinal));
                Forbid("diagnose a tank", text, seen);
            }
        }

        void Recorded(PairRecorded pair)
        {
            // A label that is refused leaves nothing that could be stuck onto a bottle.
            var label = pair.Label();
            Say("label", label is { Code: 1, Out: "" });
            var measured = pair.Measured("pH 6.9");
            Say("diagnose --measured", measured.Code == 1 && IsDangerFirst(measured.Out));
            Forbid("diagnose --measured", Flowing(measured.Out), "");
            foreach (var (met, answer) in pair.Answers())
            {
                // What is dangerous alone or as planned is refused as well; what must not happen is that the two are brought together.
                Say($"bench-sheet --actual, {met}", answer.Code == 1 && !Bringing.Any(b => answer.Out.Contains(b, StringComparison.Ordinal)));
            }
        }

        void Say(string command, bool refused, bool only = true)
        {
            said.Add(new Saying(command, harmful, refused));
            if (harmful && only && !refused)
            {
                faults.Add($"{command}: {one} with {other} ({string.Join(", ", expected)})");
            }
        }

        void Forbid(string command, string text, string seen)
        {
            string[] never =
            [
                .. TextbookPairs.IsBleach(one) || TextbookPairs.IsBleach(other) ? Acid : [],
                .. TextbookPairs.IsPeroxide(one) || TextbookPairs.IsPeroxide(other) ? Shaken : [],
                .. seen.Contains("bulges", StringComparison.Ordinal) ? [.. Shaken, .. Opened] : Array.Empty<string>(),
                .. seen.Contains("swimming pool", StringComparison.Ordinal) ? [.. Acid, .. Shaken] : Array.Empty<string>(),
            ];
            faults.AddRange(never.Where(n => text.Contains(n, StringComparison.Ordinal)).Select(n => $"{command} '{seen}': {one} with {other} says '{n}'"));
        }
    }

    /// <summary>What a sheet says of a batch that may be used, and of one that something is put into.</summary>
    private static readonly string[] Bringing = ["Use it", "Mend it", "and add it"];

    private static readonly string[] Acid = ["drops of vinegar on", "hydrochloric acid on a pinch", "Any acid dissolves", "bring the pH down", "Acidify"];

    private static readonly string[] Opened = ["Try to lift it", "Stir a pinch", "on a pinch", "What did you smell", "of distilled water to each litre"];

    private static readonly string[] Shaken = ["urn the bottle over a few times", "Turn the bottle over twenty", "Warm a spoonful", "Warm it "];

    /// <summary>Nothing of a reading, of a slip or of a cause stands above what can hurt somebody.</summary>
    private static bool IsDangerFirst(string text) =>
        text.IndexOf("   danger ", StringComparison.Ordinal) is >= 0 and var at
        && !text[..at].Contains("measured", StringComparison.Ordinal) && !text[..at].Contains("\n1  ", StringComparison.Ordinal);

    private static StockFacts Pair(string one, string other, out Workspace workspace)
    {
        workspace = new Workspace
        {
            Stocks = [Bench.Stock("pair.stock.json", "1 L", Bench.Pour("0.7 L"), Bench.Add(one, "50 g"), Bench.Add(other, "50 g"), Bench.TopUp("1 L"))],
            Catalogue = SubstanceCatalogue.BuiltIn,
            SettingsFor = _ => new ShopSettings(),
        };
        return Analyzer.Analyse(workspace).Stocks.Single();
    }

    private static Beaker Of(string one, string other) => new(
        [new BeakerItem(Bench.Substance(one), new Mass(50)), new BeakerItem(Bench.Substance(other), new Mass(50))], new Volume(1),
        SolutionMix.Of(ComponentMoles.Empty, new Volume(1)));

    private static string Flowing(string text) =>
        string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    private static bool Holds(StockFacts stock, string id) => stock.Additions.Any(a => a.Substance.Id == id);

    private static string Table(SortedDictionary<string, int[]> table, int pairs, int dangerous, int sampled)
    {
        var text = new StringBuilder("# Pairs of the catalogue before every command that advises\n\n");
        text.Append(CultureInfo.InvariantCulture, $"{pairs} pairs, 50 g of each in a litre; {dangerous} of them textbooks keep apart, {sampled} others {(Long ? "stand for all the rest, one pair of each two classes that do and bring the same, each diagnosed by one description; the other commands are asked where the gate sees anything" : "are sampled in an ordinary run")}.\n");
        text.Append("A pair that textbooks keep apart and that is not refused is a fault and fails the test, but for gas that an open beaker lets off ('dissolve').\n");
        text.Append("For 'check --repairs' refused means that no repair leaves a danger and puts more into it, warms it or keeps it for another time. It, 'proof', 'label', readings, batch records and the tank are asked of the pairs that are diagnosed, of a third of them in an ordinary run.\n\n");
        text.Append("| command | kept apart: refused or warned | kept apart: let through | others: refused or warned | others: let through |\n|---|---|---|---|---|\n");
        foreach (var (command, row) in table)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {command} | {row[0]} | {row[1]} | {row[2]} | {row[3]} |\n");
        }

        return text.ToString();
    }
}
