using System.Security.Cryptography;
using System.Text;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Json;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// What the facts of a stock or a recipe follow from, as a digest (SHA-256): the bytes of its file and of every file it was read with, and
/// where those lie as seen from it. Two with one basis differ in nothing but their own names and the folder they lie in.
/// </summary>
internal readonly record struct FileBasis(UInt128 Upper, UInt128 Lower)
{
    /// <summary>
    /// Null where more than these bytes tells what the facts are: a file that was not read or has something wrong with it, and settings
    /// that go by the path of a file; or where they follow from more files than are worth knowing.
    /// </summary>
    /// <param name="digests">Of the files that were looked at before, which are mostly the same.</param>
    public static FileBasis? Of(Workspace workspace, string file, Dictionary<SourceFile, byte[]> digests)
    {
        if (workspace.WithDrawnOn(file) is not { } files)
        {
            return null;
        }

        var folder = file[..(file.LastIndexOf('/') + 1)];
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var drawn in files)
        {
            if (!workspace.Sources.TryGetValue(drawn, out var source)
                || workspace.ProblemsOf(drawn).Count > 0
                || (workspace.DrawsOn.ContainsKey(drawn) && workspace.SettingsFor(drawn).Paths.Count > 0))
            {
                return null;
            }

            if (!digests.TryGetValue(source, out var digest))
            {
                digests[source] = digest = SHA256.HashData(source.Bytes);
            }

            // Its own name is left out, all others end before a byte that no name holds.
            hash.AppendData(digest);
            hash.AppendData(Encoding.UTF8.GetBytes(
                drawn == file ? "" : drawn.StartsWith(folder, StringComparison.Ordinal) ? "./" + drawn[folder.Length..] : drawn));
            hash.AppendData([source.HadByteOrderMark ? (byte)1 : (byte)0, 0]);
        }

        var whole = hash.GetHashAndReset();
        return new FileBasis(Part(whole.AsSpan(0, 16)), Part(whole.AsSpan(16)));

        static UInt128 Part(ReadOnlySpan<byte> bytes) => System.Buffers.Binary.BinaryPrimitives.ReadUInt128LittleEndian(bytes);
    }
}
