using System.Reflection;
using System.Text;
using System.Text.Json;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Tests.Json;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>
/// What the readers make of whole files, every value, place and word: a *.shop under Readings holds the files, the *.read.txt beside it what
/// was read. With RECIPELINT_UPDATE=1 the latter are written anew; read them before keeping them. Shops and products are invented.
/// </summary>
public sealed class ReadingsTests
{
    private const string Head = "---- ";

    private static readonly string _folder = Repository.PathOf("tests", "RecipeLint.Recipes.Tests", "Documents", "Readings");

    public static TheoryData<string> Shops() => Names("*.shop");

    public static TheoryData<string> Lists() => Names("*.list");

    [Theory]
    [MemberData(nameof(Shops))]
    public void AShopIsReadSo(string name)
    {
        var shop = new InMemoryShop { Options = new LoadOptions { Profiles = ["generic", "leafy-greens", "lettuce", "tomato"] } };
        foreach (var (path, lines) in Parts(name + ".shop"))
        {
            shop.Add(path, string.Join('\n', lines));
        }

        Hold(name, ReadingWriter.Of(shop.Load()));
    }

    /// <summary>A list has a part for each kind of quantity that is due, with texts as JSON writes them but without quotes.</summary>
    [Theory]
    [MemberData(nameof(Lists))]
    public void QuantitiesAreReadSo(string name)
    {
        var text = new StringBuilder();
        foreach (var (due, lines) in Parts(name + ".list"))
        {
            text.Append(Head).Append(due).Append('\n');
            foreach (var line in lines)
            {
                text.Append('[').Append(line).Append(']');
                Write(text, due, JsonSerializer.Deserialize<string>($"\"{line}\"")!);
            }
        }

        Hold(name, text.ToString());
    }

    /// <summary>Nothing is kept of documents that are gone.</summary>
    [Fact]
    public void EveryReadingIsOfAFile() => Assert.Empty(
        Directory.GetFiles(_folder, "*.read.txt").Select(f => Path.GetFileName(f).Split('.')[0])
            .Except(Directory.GetFiles(_folder).Where(f => !f.EndsWith(".read.txt", StringComparison.Ordinal)).Select(f => Path.GetFileNameWithoutExtension(f))));

    private static void Write(StringBuilder text, string due, string written)
    {
        QuantityFault? fault;
        if (due.StartsWith("Tolerance ", StringComparison.Ordinal))
        {
            if (QuantityReader.TryReadTolerance(written, Enum.Parse<Dimension>(due.Split(' ')[1]), out var tolerance, out fault))
            {
                text.Append(Half(tolerance)).Append('\n');
            }
        }
        else if (QuantityReader.TryRead(written, DueOf(due), out var quantity, out fault))
        {
            text.Append(' ').Append(quantity.Dimension).Append(' ').Append(ReadingWriter.Number(quantity.Low));
            text.Append(quantity.High == quantity.Low ? "" : $"..{ReadingWriter.Number(quantity.High)}");
            text.Append(quantity.Unit.Length > 0 ? $" '{quantity.Unit}'" : "").Append(Half(quantity.Tolerance));
            text.Append(quantity.Basis is { } basis ? $" as {basis}" : "").Append('\n');
        }

        if (fault is not null)
        {
            text.Append(" ! ").Append(fault.Kind).Append(' ').Append(fault.Start).Append('+').Append(fault.Length).Append('\n');
            ReadingWriter.Details(text, fault.Message, fault.Suggestions, fault.Values, "  ");
        }
    }

    private static string Half(Tolerance? tolerance) => tolerance is not { } half ? ""
        : half.Relative is { } share ? $" ± {ReadingWriter.Number(share)} of it"
        : $" ± {ReadingWriter.Number(half.Absolute!.Value)}";

    /// <summary>"Mass", or with a basis and what is allowed: "Analyte as CaCO3 N", "Mass range tolerance".</summary>
    private static Due DueOf(string text)
    {
        var words = text.Split(' ');
        var due = (Due)typeof(Due).GetProperty(words[0], BindingFlags.Public | BindingFlags.Static)!.GetValue(null)!;
        var bases = Array.IndexOf(words, "as");
        return due with
        {
            Bases = bases < 0 ? due.Bases : words[(bases + 1)..],
            AllowRange = due.AllowRange || words.Contains("range"),
            AllowTolerance = due.AllowTolerance || words.Contains("tolerance"),
        };
    }

    private static TheoryData<string> Names(string pattern) =>
        [.. Directory.GetFiles(_folder, pattern).Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    private static IEnumerable<(string Name, List<string> Lines)> Parts(string file)
    {
        (string Name, List<string> Lines)? part = null;
        foreach (var line in File.ReadAllLines(Path.Combine(_folder, file)))
        {
            if (line.StartsWith(Head, StringComparison.Ordinal))
            {
                if (part is { } whole)
                {
                    yield return whole;
                }

                part = (line[Head.Length..], []);
            }
            else
            {
                part!.Value.Lines.Add(line);
            }
        }

        yield return part!.Value;
    }

    private static void Hold(string name, string read) =>
        Repository.Golden(Path.Combine("tests", "RecipeLint.Recipes.Tests", "Documents", "Readings", $"{name}.read.txt"), read);
}
