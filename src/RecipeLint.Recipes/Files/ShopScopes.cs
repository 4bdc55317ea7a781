using System.Collections.Concurrent;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// Which settings and which lists of substances serve a file. The nearest recipelint.json from the file upwards to the repository root
/// holds. A *.substances.json or *.profile.json serves its own folder and everything below; below a recipelint.json it serves that whole
/// shop, so that a shop may keep its products and profiles in folders of their own. A file is judged alike whether it is asked about alone
/// or with its folder.
/// </summary>
internal sealed class ShopScopes(IFileTree files, string root, SourceStore store, LoadOptions options, ServingFiles served)
{
    private readonly Dictionary<string, ShopSettings> _settings = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, SubstanceFile> _substances = new(StringComparer.Ordinal);
    private readonly HashSet<string> _triedSubstances = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (SubstanceCatalogue Catalogue, IReadOnlySet<string> Unread)> _catalogues =
        new(StringComparer.Ordinal);
    private readonly HashSet<(string, string)> _clashes = [];
    private readonly SortedDictionary<string, ProfileDocument> _profiles = new(StringComparer.Ordinal);
    private readonly HashSet<string> _triedProfiles = new(StringComparer.Ordinal);
    private readonly HashSet<string> _extending = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string[]> _extended = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, ShopSettings> _forFile = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, HouseRuleDocument> _houseRules = new(StringComparer.Ordinal);
    private readonly HashSet<string> _triedHouseRules = new(StringComparer.Ordinal);
    private ShopSettings? _chosen;

    public IReadOnlyList<SubstanceFile> SubstanceFiles => [.. _substances.Values];

    public IReadOnlyList<ProfileDocument> Profiles => [.. _profiles.Values];

    /// <summary>Reads the settings file named by the user, if one was.</summary>
    public UnusablePath? ReadChosen()
    {
        if (options.NoConfig || options.ConfigFile is not { } named)
        {
            return null;
        }

        var full = files.FullPath(named);
        if (files.Kind(full) != EntryKind.File)
        {
            return new UnusablePath(named, files.Kind(full) == EntryKind.Missing ? "does not exist" : "is not a regular file");
        }

        _chosen = ReadSettings(store.PathOf(full));
        return store.Failures.TryGetValue(store.PathOf(full), out var failure) ? new UnusablePath(named, failure) : null;
    }

    /// <summary>Settings for a file of the workspace, from what has been read; asks the disk for nothing.</summary>
    public ShopSettings SettingsFor(string file) => ForPath(Nearest(file), file);

    /// <summary>The settings with what they say of a file's path.</summary>
    private ShopSettings ForPath(ShopSettings settings, string file) =>
        settings.Paths.Count == 0 ? settings : _forFile.GetOrAdd(file, f => SettingsMerge.For(settings, f));

    private ShopSettings Nearest(string file)
    {
        if (options.NoConfig || _chosen is not null)
        {
            return _chosen ?? new ShopSettings();
        }

        foreach (var folder in FilePaths.Upwards(FilePaths.FolderOf(FilePaths.Join(root, file)), root))
        {
            if (_settings.TryGetValue(store.PathOf(FilePaths.Join(folder, DocumentKinds.SettingsFileName)), out var settings))
            {
                return settings;
            }
        }

        return new ShopSettings();
    }

    /// <summary>The same once everything is read: each folder is looked up once, whoever asks.</summary>
    public Func<string, ShopSettings> Settled()
    {
        var byFolder = new ConcurrentDictionary<string, ShopSettings>(StringComparer.Ordinal);
        return file => ForPath(byFolder.GetOrAdd(FilePaths.FolderOf(FilePaths.Join(root, file)), (_, f) => Nearest(f), file), file);
    }

    /// <summary>Reads the settings that hold for a file, if they have not been read yet.</summary>
    public ShopSettings ReadSettingsFor(string file)
    {
        if (!options.NoConfig && _chosen is null && NearestSettings(FilePaths.FolderOf(FilePaths.Join(root, file))) is { } nearest)
        {
            ReadSettings(nearest);
        }

        return SettingsFor(file);
    }

    /// <summary>Reads one settings file for its own sake.</summary>
    public ShopSettings ReadSettings(string path)
    {
        if (!_settings.TryGetValue(path, out var settings))
        {
            var own = options.Profiles is null ? [] : ProfilesFor(path);
            settings = store.Read(
                path,
                DocumentKind.Settings,
                (fields, item) => new SettingsReader(
                    fields,
                    KnownProfiles(own),
                    (name, place, at) =>
                    {
                        var (catalogue, unread) = CatalogueFor(at.File);
                        return new SubstanceNames(catalogue, unread).Find(name, place, at);
                    }).Read(item))
                ?? new ShopSettings { File = path, IsReadable = false };
            settings = settings with
            {
                ProfileFile = own.FirstOrDefault(p => p.Name == settings.Profile?.Value)?.File,
                HouseRules = HouseRulesFor(path, FoldersOf(settings)),
            };
            settings = settings.Extends is { } other ? WithBase(settings, path, other) : settings;
            _settings.Add(path, settings);
        }

        return settings;
    }

    /// <summary>The settings with those of the file they extend; only with themselves after saying why that cannot be.</summary>
    private ShopSettings WithBase(ShopSettings settings, string path, Located<string> other)
    {
        var full = FilePaths.Resolve(FilePaths.FolderOf(store.FullPathOf(path)), other.Value);
        var shown = Wording.Shorten(other.Value);
        var (kind, wrong) = full is null || !FilePaths.IsWithin(full, root) || !StaysInside(full)
            ? (ProblemKind.ReferenceLeavesRepository, $"'{shown}' leads out of the repository. Only settings inside it can be extended.")
            : files.Kind(full) != EntryKind.File ? (ProblemKind.MissingReference, $"The settings file '{shown}' does not exist.")
            : !_extending.Add(path) || _extending.Contains(store.PathOf(full))
                ? (ProblemKind.ReferenceLoop, $"'{shown}' extends this file in turn, so neither has an end. Take one of the two out.")
            : (default, "");
        if (wrong.Length > 0)
        {
            _extending.Remove(path);
            store.Report([new Problem(kind, other.Place, wrong)]);
            return settings;
        }

        _extended[path] = [store.PathOf(full!)];
        var merged = SettingsMerge.Of(settings, ReadSettings(store.PathOf(full!)));
        _extending.Remove(path);
        return merged;
    }

    public SubstanceFile? ReadSubstances(string path)
    {
        if (_triedSubstances.Add(path)
            && store.ReadShared(
                served, path, DocumentKind.Substances, (fields, item, _) => new SubstanceFileReader(fields).Read(item)) is { } read)
        {
            _substances.Add(path, read);
        }

        return _substances.GetValueOrDefault(path);
    }

    public ProfileDocument? ReadProfile(string path)
    {
        if (_triedProfiles.Add(path)
            && store.ReadShared(
                served, path, DocumentKind.Profile, (fields, item, _) => new ProfileFileReader(fields, options.Profiles).Read(item))
                is { } read)
        {
            _profiles.Add(path, read);
        }

        return _profiles.GetValueOrDefault(path);
    }

    public HouseRuleDocument? ReadHouseRule(string path)
    {
        if (_triedHouseRules.Add(path)
            && store.ReadShared(
                served, path, DocumentKind.HouseRule, (fields, item, source) => new HouseRuleReader(fields, source).Read(item))
                is { } read)
        {
            _houseRules.Add(path, read);
        }

        return _houseRules.GetValueOrDefault(path);
    }

    /// <summary>The folders a shop says its rules lie in, full paths; what is no folder is reported.</summary>
    private List<string> FoldersOf(ShopSettings settings)
    {
        var folders = new List<string>();
        foreach (var named in settings.HouseRuleFolders)
        {
            var full = FilePaths.Resolve(FilePaths.FolderOf(FilePaths.Join(root, settings.File!)), named.Value.TrimEnd('/'));
            folders.Add(full ?? "");
            if (full is null || files.Kind(full) != EntryKind.Folder || !FilePaths.IsWithin(full, root))
            {
                var message =
                    $"The folder '{Wording.Shorten(named.Value)}' with house rules does not exist. Name one that lies beside this file or "
                        + "below it.";
                store.Report([new Problem(ProblemKind.MissingReference, named.Place, message)]);
            }
        }

        return folders;
    }

    /// <summary>The rules of a shop, each id and name once, in the order of their paths.</summary>
    /// <param name="folders">Full paths of the folders that rules of the shop itself lie in; empty for any.</param>
    private List<HouseRuleDocument> HouseRulesFor(string file, List<string> folders)
    {
        var serving = new List<HouseRuleDocument>();
        var folder = FilePaths.FolderOf(FilePaths.Join(root, file));
        foreach (var path in Serving(folder, DocumentKind.HouseRule))
        {
            var full = FilePaths.Join(root, path);
            if ((folders.Count > 0 && FilePaths.IsWithin(full, folder) && !folders.Exists(f => FilePaths.IsWithin(full, f)))
                || ReadHouseRule(path) is not { } rule)
            {
                continue;
            }

            if (serving.Find(r => r.Id.Value == rule.Id.Value || r.Name.Value == rule.Name.Value) is not { } first)
            {
                serving.Add(rule);
            }
            else if (_clashes.Add((rule.File, rule.Id.Value)))
            {
                var (taken, by) = first.Id.Value == rule.Id.Value ? (rule.Id, first.Id) : (rule.Name, first.Name);
                store.Report(
                [
                    new Problem(
                        ProblemKind.DuplicateKey,
                        taken.Place,
                        $"'{Wording.Shorten(taken.Value)}' is taken in '{first.File}', so this rule does not speak. Give it an id and a "
                            + "name of its own.")
                    {
                        Related = [new RelatedPlace(by.Place, "first used here")],
                    },
                ]);
            }
        }

        return serving;
    }

    /// <summary>The shop's own profiles that serve a file, each name once, in the order of their paths.</summary>
    public IReadOnlyList<ProfileDocument> ProfilesFor(string file)
    {
        var serving = new List<ProfileDocument>();
        foreach (var profile in Serving(FilePaths.FolderOf(FilePaths.Join(root, file)), DocumentKind.Profile)
            .Select(ReadProfile)
            .OfType<ProfileDocument>())
        {
            if (serving.Find(p => p.Name == profile.Name) is not { } first)
            {
                serving.Add(profile);
            }
            else if (_clashes.Add((profile.File, profile.Name)))
            {
                store.Report(
                [
                    new Problem(
                        ProblemKind.DuplicateKey,
                        profile.NamePlace,
                        $"The name '{Wording.Shorten(profile.Name)}' is taken in '{first.File}', so a recipe could mean either. Give this "
                            + "profile a name of its own.")
                    {
                        Related = [new RelatedPlace(first.NamePlace, "first used here")],
                    },
                ]);
            }
        }

        return serving;
    }

    /// <summary>Names a crop may have: built in or the shop's own; null when names are not checked.</summary>
    public IReadOnlyCollection<string>? KnownProfiles(IReadOnlyList<ProfileDocument> own) =>
        own.Count == 0 ? options.Profiles : options.Profiles?.Concat(own.Select(p => p.Name)).ToList();

    /// <summary>The catalogue that serves a file, and the names in it that could not be read.</summary>
    public (SubstanceCatalogue Catalogue, IReadOnlySet<string> Unread) CatalogueFor(string file)
    {
        var serving = Serving(FilePaths.FolderOf(FilePaths.Join(root, file)), DocumentKind.Substances);
        var key = string.Join('\n', serving);
        if (!_catalogues.TryGetValue(key, out var catalogue))
        {
            var lists = serving.Select(ReadSubstances).OfType<SubstanceFile>().ToArray();
            catalogue = (Combine(lists), lists.SelectMany(l => l.UnreadNames).ToHashSet(StringComparer.Ordinal));
            _catalogues.Add(key, catalogue);
        }

        return catalogue;
    }

    /// <summary>The settings, lists of substances and profiles that hold for a file.</summary>
    public IEnumerable<string> ServingOf(string file)
    {
        var folder = FilePaths.FolderOf(FilePaths.Join(root, file));
        IEnumerable<string> serving = [.. Serving(folder, DocumentKind.Substances), .. Serving(folder, DocumentKind.Profile)];
        var shop = SettingsFor(file);
        return shop.File is { } settings
            ? [.. serving, settings, .. Extended(settings), .. shop.HouseRules.Select(r => r.File)]
            : serving;
    }

    /// <summary>What a water, list, profile, rule or settings file is judged by: settings, what those extend, others of its kind.</summary>
    public IEnumerable<string> HeldAgainst(string path)
    {
        var folder = FilePaths.FolderOf(FilePaths.Join(root, path));
        IEnumerable<string> others = DocumentKinds.FromFileName(path) switch
        {
            DocumentKind.Substances => Serving(folder, DocumentKind.Substances),
            DocumentKind.Profile => Serving(folder, DocumentKind.Profile),
            DocumentKind.HouseRule => Serving(folder, DocumentKind.HouseRule),
            DocumentKind.Settings when SettingsFor(path).Prices.Count > 0 =>
                [.. _extended.GetValueOrDefault(path, []), .. Serving(folder, DocumentKind.Substances)],
            DocumentKind.Settings => _extended.GetValueOrDefault(path, []),
            _ => [],
        };
        return others.Append(SettingsFor(path).File).OfType<string>().Where(f => f != path);
    }

    /// <summary>The built-in catalogue with every list that was read; of two equal ids the first by path stays.</summary>
    public SubstanceCatalogue WholeCatalogue() => _substances.Count == 0
        ? SubstanceCatalogue.BuiltIn
        : SubstanceCatalogue.BuiltIn.With(_substances.Values.SelectMany(f => f.Substances).Select(s => s.Substance)).Catalogue;

    private SubstanceCatalogue Combine(SubstanceFile[] lists)
    {
        if (lists.Length == 0)
        {
            return SubstanceCatalogue.BuiltIn;
        }

        var addition = SubstanceCatalogue.BuiltIn.With(lists.SelectMany(l => l.Substances).Select(s => s.Substance));
        foreach (var clash in addition.Clashes)
        {
            var own = lists.SelectMany(l => l.Substances).Last(s => ReferenceEquals(s.Substance, clash.Added));
            var other = lists.SelectMany(l => l.Substances).FirstOrDefault(s => ReferenceEquals(s.Substance, clash.Existing));
            if (_clashes.Add((own.Place.File, clash.Added.Id)))
            {
                store.Report([IdClashProblem.Of(clash, own, other)]);
            }
        }

        return addition.Catalogue;
    }

    private string? NearestSettings(string folder)
    {
        foreach (var at in FilePaths.Upwards(folder, root))
        {
            var candidate = FilePaths.Join(at, DocumentKinds.SettingsFileName);
            if (files.Kind(candidate) == EntryKind.File)
            {
                return store.PathOf(candidate);
            }
        }

        return null;
    }

    /// <summary>What a settings file extends, directly or through others.</summary>
    private IEnumerable<string> Extended(string settings)
    {
        for (var at = settings; _extended.TryGetValue(at, out var next); at = next[0])
        {
            yield return next[0];
        }
    }

    private string[] Serving(string folder, DocumentKind kind) => [.. served.Of(folder, kind).Select(store.PathOf)];

    private bool StaysInside(string path) => FilePaths.IsWithin(files.ResolveLinks(path), files.ResolveLinks(root));
}
