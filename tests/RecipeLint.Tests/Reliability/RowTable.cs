using System.Globalization;
using System.Text;
using RecipeLint.Reports.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>A table of the repository that has a row for each test; RECIPELINT_UPDATE=1 writes it anew, otherwise each test finds its row there.</summary>
internal sealed class RowTable(string name, string head, Func<IEnumerable<string>> rows)
{
    private readonly string _path = Path.Combine(Repository.Root, "tests", "RecipeLint.Tests", "Tables", name);

    public void AssertHolds(string row)
    {
        Assert.True(File.Exists(_path), $"{name} is missing; run once with RECIPELINT_UPDATE=1 and read it.");
        Assert.Contains(row, File.ReadAllLines(_path));
    }

    /// <summary>The table holds exactly these rows.</summary>
    public void AssertWhole(int count)
    {
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            var each = rows().ToList();
            var text = new StringBuilder(head).Append('\n').AppendJoin('\n', each).Append('\n').Append(Held(each.Count));
            File.WriteAllText(_path, text.ToString(), new UTF8Encoding(false));
        }

        Assert.EndsWith(Held(count), File.ReadAllText(_path), StringComparison.Ordinal);
        Assert.Equal(count, File.ReadAllLines(_path).Count(l => l.StartsWith("| ", StringComparison.Ordinal)) - head.Split('\n').Count(l => l.StartsWith("| ", StringComparison.Ordinal)));
    }

    /// <summary>Said in the table itself: a commit with a row that does not hold has a test that fails.</summary>
    private static string Held(int count) => string.Create(CultureInfo.InvariantCulture, $"\n{count} of {count} rows hold: one that does not fails its test.\n");

    /// <summary>Text for a cell.</summary>
    public static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).Replace('\n', ' ').Trim();
}
