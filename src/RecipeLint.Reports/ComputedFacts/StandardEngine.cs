using System.Buffers;
using RecipeLint.Analysis;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>The engine as every command runs it: all rules, and the facts document for those that shops write themselves.</summary>
public static class StandardEngine
{
    /// <param name="today">The day suppressions are held against; null leaves their last day unchecked.</param>
    public static EngineOptions On(DateOnly? today) => new() { Today = today, Rules = RuleList.All, FactsDocument = Document };

    /// <summary>The facts of a file as JSON; null where it has none.</summary>
    internal static ReadOnlyMemory<byte>? Document(Facts facts, string file)
    {
        var buffer = new ArrayBufferWriter<byte>();
        return FactsWriter.TryWrite(facts, file, buffer) ? buffer.WrittenMemory : null;
    }
}
