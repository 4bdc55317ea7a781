using System.Security.Cryptography;
using System.Text;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>
/// Every computed figure of every example, as one digest a file. The table is what linux-x64 gives; the native program is held to it by
/// .ci/native-parity, in the form that sha256sum reads.
/// </summary>
public sealed class FactsDigestTests
{
    [Fact]
    public void FactsOfTheExamplesAreThoseOfTheTable()
    {
        var files = Directory.EnumerateFiles(Path.Combine(Repository.Root, "examples"), "*.json", SearchOption.AllDirectories)
            .Where(f => f.EndsWith(".stock.json", StringComparison.Ordinal) || f.EndsWith(".recipe.json", StringComparison.Ordinal))
            .Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/'))
            .Order(StringComparer.Ordinal)
            .ToList();
        var table = new StringBuilder();
        foreach (var file in files)
        {
            var facts = Cli.Run("facts", file);
            if (facts.Code == 2)
            {
                // One example cannot be read far enough on purpose.
                Assert.Contains("has no facts", facts.Error, StringComparison.Ordinal);
                continue;
            }

            table.Append(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(facts.Out)))).Append("  ").Append(file).Append('\n');
        }

        Assert.True(table.ToString().Count(c => c == '\n') >= 17, $"{files.Count} files");
        Repository.AssertGolden("../../RecipeLint.Tests/Tables/facts.sha256", table.ToString());
    }
}
