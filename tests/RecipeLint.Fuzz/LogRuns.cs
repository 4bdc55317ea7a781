namespace RecipeLint.Fuzz;

/// <summary>SARIF logs of the shops, changed as values and as bytes, put together by 'merge'.</summary>
internal static class LogRuns
{
    private static readonly Lazy<IReadOnlyList<byte[]>> _logs = new(() =>
    [
        .. Corpus.Instance.Shops.Where((_, i) => i % 29 == 0).Select(s => System.Text.Encoding.UTF8.GetBytes(
            ProgramRun.Run(s.Files.ToDictionary(f => f.Path, f => f.Bytes), "", ["check", ".", "--format", "sarif"]).Output)),
    ]);

    public static Execution Of(Random random)
    {
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        for (var left = random.Next(1, 4); left > 0; left--)
        {
            var bytes = Words.Pick(random, _logs.Value);
            for (var changes = random.Next(0, 6); changes > 0; changes--)
            {
                bytes = random.Next(12) == 0 ? ShopMutator.Bytes(random, bytes) : ShopMutator.Values(random, bytes, ["a.stock.json"]);
            }

            files[$"{left}.sarif"] = bytes;
        }

        return ProgramRun.Of(files, ["merge", .. files.Keys]);
    }
}
