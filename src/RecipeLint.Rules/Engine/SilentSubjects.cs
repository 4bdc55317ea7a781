using RecipeLint.Recipes;
using RecipeLint.Recipes.Json;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// The stocks, or the recipes, of one part of a run with the rules that are known to have nothing to say of each, and those that turn out
/// to while they are judged.
/// </summary>
internal sealed class SilentSubjects
{
    private readonly SilentRules? _memory;
    private readonly (FileBasis? Basis, ulong[]? Known, ulong[] Learned)[] _subjects = [];

    /// <param name="files">Of the subjects, in their order among the facts.</param>
    /// <param name="digests">Of the files that were looked at before.</param>
    public SilentSubjects(
        IReadOnlyList<string> files, Workspace workspace, EngineOptions options, Dictionary<SourceFile, byte[]> digests)
    {
        _memory = options.Silent;
        if (_memory is null)
        {
            return;
        }

        _subjects = new (FileBasis?, ulong[]?, ulong[])[files.Count];
        for (var i = 0; i < _subjects.Length; i++)
        {
            var basis = FileBasis.Of(workspace, files[i], digests);
            var known = basis is { } whole ? _memory.Of(whole) : null;
            _subjects[i] = (basis, known, known is null && basis is not null ? new ulong[(options.Rules.Count + 63) / 64] : []);
        }
    }

    /// <param name="subject">Its number among the facts.</param>
    /// <param name="rule">Its number among the rules of the run.</param>
    public bool IsSilent(int subject, int rule) =>
        _memory is not null && _subjects[subject].Known is { } known && (known[rule / 64] & (1UL << (rule % 64))) != 0;

    /// <summary>The rule has looked at the subject alone and has nothing to say of it.</summary>
    public void Learn(int subject, int rule)
    {
        if (_memory is not null && _subjects[subject].Learned is { Length: > 0 } learned)
        {
            learned[rule / 64] |= 1UL << (rule % 64);
        }
    }

    /// <summary>Keeps what was learned for other parts.</summary>
    public void Keep()
    {
        foreach (var (basis, _, learned) in _subjects)
        {
            if (learned.Length > 0)
            {
                _memory!.Keep(basis!.Value, learned);
            }
        }
    }
}
