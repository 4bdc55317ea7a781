using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Json;

/// <summary>
/// The parsing inputs of JSONTestSuite by Nicolas Seriot (github.com/nst/JSONTestSuite, MIT; licence beside the files):
/// y_ must be accepted, n_ must be rejected, i_ is free to the implementation. Its two big files, one hundred thousand '['
/// and fifty thousand '[{"":', are made here instead of stored.
/// </summary>
public sealed class JsonTestSuiteTests
{
    private static readonly string Folder = Repository.PathOf("tests", "RecipeLint.Recipes.Tests", "hostile", "json-test-suite", "test_parsing");

    public static TheoryData<string> Files()
    {
        var data = new TheoryData<string>();
        data.AddRange([.. Names()]);
        return data;
    }

    [Fact]
    public void TheWholeSuiteIsHere()
    {
        var names = Names();
        Assert.Equal(95, names.Count(n => n.StartsWith("y_", StringComparison.Ordinal)));
        Assert.Equal(188, names.Count(n => n.StartsWith("n_", StringComparison.Ordinal)));
        Assert.Equal(35, names.Count(n => n.StartsWith("i_", StringComparison.Ordinal)));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void EachFileIsJudgedAsTheSuiteSays(string name)
    {
        var result = JsonReading.Read(name, BytesOf(name));

        if (name.StartsWith("y_", StringComparison.Ordinal))
        {
            Assert.NotNull(result.Source.Tree);
            // Accepted by the suite, a finding for us: the text says less than it seems to.
            var isDuplicate = name is "y_object_duplicated_key.json" or "y_object_duplicated_key_and_value.json";
            Assert.Equal(isDuplicate ? [ProblemKind.DuplicateKey] : [], result.Problems.Select(p => p.Kind));
        }
        else if (name.StartsWith("n_", StringComparison.Ordinal))
        {
            Assert.NotEmpty(result.Problems);
        }

        Assert.True(result.Source.Tree is not null || result.Problems.Count > 0, "Nothing was read and nothing was said.");
        Places.AssertAllInside(result);
    }

    private static List<string> Names() =>
    [
        .. Directory.EnumerateFiles(Folder, "*.json").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal),
        "n_structure_100000_opening_arrays.json",
        "n_structure_open_array_object.json",
    ];

    private static byte[] BytesOf(string name) => name switch
    {
        "n_structure_100000_opening_arrays.json" => Encoding.ASCII.GetBytes(new string('[', 100_000)),
        "n_structure_open_array_object.json" => Encoding.ASCII.GetBytes(string.Concat(Enumerable.Repeat("[{\"\":", 50_000)) + "\n"),
        _ => File.ReadAllBytes(Path.Combine(Folder, name)),
    };
}
