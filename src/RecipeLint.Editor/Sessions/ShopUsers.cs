using RecipeLint.Recipes;

namespace RecipeLint.Editor.Sessions;

/// <summary>Which file of a large shop draws on which, so that a change is judged with all that it reaches. Full paths.</summary>
internal sealed class ShopUsers
{
    private readonly SortedDictionary<string, HashSet<string>> _drawsOn = new(StringComparer.Ordinal);
    private readonly SortedSet<string> _files = new(StringComparer.Ordinal);

    private ShopUsers()
    {
    }

    public IReadOnlyList<string> Files => [.. _files];

    public static ShopUsers Of(Workspace workspace)
    {
        var users = new ShopUsers();
        users.Learn(workspace);
        return users;
    }

    /// <summary>Takes over what a run has read.</summary>
    public void Learn(Workspace workspace)
    {
        string Full(string file) => file.StartsWith('/') ? file : $"{workspace.Root.TrimEnd('/')}/{file}";
        _files.UnionWith(workspace.Sources.Keys.Select(Full));
        foreach (var (file, below) in workspace.DrawsOn)
        {
            _drawsOn[Full(file)] = [.. below.Select(Full)];
        }
    }

    /// <summary>
    /// The file and all that draw on it, directly or through others. A settings file is judged alone: it serves everything.
    /// </summary>
    public IReadOnlyList<string> Of(string path)
    {
        var found = new SortedSet<string>(StringComparer.Ordinal);
        var open = new Queue<string>([path]);
        while (open.TryDequeue(out var at))
        {
            if (found.Add(at) && found.Count <= Desk.WholeShop)
            {
                foreach (var user in _drawsOn.Where(d => d.Value.Contains(at)).Select(d => d.Key))
                {
                    open.Enqueue(user);
                }
            }
        }

        return [.. found];
    }
}
