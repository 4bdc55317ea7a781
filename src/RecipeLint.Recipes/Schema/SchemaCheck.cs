using System.Text.Json;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Schema;

/// <summary>
/// Holds a document against the schema of its kind, the one truth of shape, and says in plain words what does not fit. One cause
/// gives one problem.
/// </summary>
internal static class SchemaCheck
{
    /// <summary>
    /// The most entries a list and keys an object may have; the schemas state the same. A file with more is not read: the evaluator spends
    /// up to a millisecond on an entry that fails, and everything after it on each that does not.
    /// </summary>
    public const int EntryLimit = 1000;

    /// <summary>The most values of any kind in a file; a shop list of a thousand products stays below it.</summary>
    public const int ValueLimit = 20_000;

    private static readonly Lazy<Checker> _stock = new(() => new Checker(DocumentKind.Stock));
    private static readonly Lazy<Checker> _recipe = new(() => new Checker(DocumentKind.Recipe));
    private static readonly Lazy<Checker> _water = new(() => new Checker(DocumentKind.Water));
    private static readonly Lazy<Checker> _substances = new(() => new Checker(DocumentKind.Substances));
    private static readonly Lazy<Checker> _settings = new(() => new Checker(DocumentKind.Settings));
    private static readonly Lazy<Checker> _profile = new(() => new Checker(DocumentKind.Profile));
    private static readonly Lazy<Checker> _houseRule = new(() => new Checker(DocumentKind.HouseRule));
    private static readonly Lazy<Checker> _batch = new(() => new Checker(DocumentKind.Batch));

    /// <summary>The problems of shape, in the order of the file. Empty for a file without a tree, whose problem is told already.</summary>
    public static IReadOnlyList<Problem> Check(DocumentKind kind, SourceFile file) => Look(kind, file).Problems;

    /// <summary>The same, and whether the file can be looked into any further: false for one with too much in it.</summary>
    internal static (IReadOnlyList<Problem> Problems, bool CanBeRead) Look(DocumentKind kind, SourceFile file)
    {
        if (file.Tree is not { } tree)
        {
            return ([], false);
        }

        if (SchemaProblems.TooMuch(file, tree) is { } tooMuch)
        {
            return ([tooMuch], false);
        }

        return (Check(kind, file, tree), true);
    }

    private static IReadOnlyList<Problem> Check(DocumentKind kind, SourceFile file, JsonTree tree) =>
        kind switch
        {
            DocumentKind.Stock => _stock.Value.Check(file, tree),
            DocumentKind.Recipe => _recipe.Value.Check(file, tree),
            DocumentKind.Water => _water.Value.Check(file, tree),
            DocumentKind.Substances => _substances.Value.Check(file, tree),
            DocumentKind.Settings => _settings.Value.Check(file, tree),
            DocumentKind.Profile => _profile.Value.Check(file, tree),
            DocumentKind.HouseRule => _houseRule.Value.Check(file, tree),
            DocumentKind.Batch => _batch.Value.Check(file, tree),
            _ => [],
        };

    private sealed class Checker
    {
        private static readonly JsonDocumentOptions _options = new()
        {
            MaxDepth = JsonReading.DepthLimit,
        };

        private readonly SchemaDocument _document;
        private readonly QuickSchema _quick;
        private readonly Lazy<SchemaEvaluator> _evaluator;

        public Checker(DocumentKind kind)
        {
            _document = SchemaDocument.Load(DocumentKinds.SchemaFileName(kind)!);
            _quick = new QuickSchema(_document.Root);
            _evaluator = new Lazy<SchemaEvaluator>(() => new SchemaEvaluator(_document.Text));
        }

        public IReadOnlyList<Problem> Check(SourceFile file, JsonTree tree)
        {
            // Most files are good, and then nothing has to be explained: the evaluator is not even loaded.
            if (file.IsPlain && _quick.Fits(tree.Root) == true)
            {
                return [];
            }

            using var json = JsonDocument.Parse(file.DecodableBytes, _options);
            var failures = _evaluator.Value.Evaluate(json.RootElement);
            return failures.Count == 0 && file.BeyondNumbers.Count == 0 ? [] : new SchemaProblems(file, tree, _document).From(failures);
        }
    }
}
