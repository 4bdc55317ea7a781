using System.Text.Json;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Schema;

/// <summary>Turns failed schema keywords into problems: drops the echoes of one cause, finds the place, chooses the words.</summary>
internal sealed class SchemaProblems(SourceFile file, JsonTree tree, SchemaDocument schema)
{
    // When a value fails in several ways the first of these is the cause.
    private static readonly string[] _byWeight = ["type", "const", "enum", "minItems", "minLength", "minimum", "maximum", "pattern"];

    private readonly ProblemList _problems = new();

    /// <summary>Keys of an object that are unknown but read like a missing one, by object and missing key.</summary>
    private readonly HashSet<(string Pointer, string Key)> _misspelt = [];

    private readonly HashSet<string> _withUnknownKey = [];

    public IReadOnlyList<Problem> From(IReadOnlyList<SchemaFailure> failures)
    {
        var found = new List<Found>();
        foreach (var failure in failures)
        {
            if (tree.Find(new JsonPointer(failure.Pointer)) is not { } item)
            {
                continue;
            }

            var spot = schema.Follow(failure.EvaluationPath);
            if (spot is null || !spot.IsCondition)
            {
                found.Add(new Found(item, spot, failure.Keyword, failure.Pointer));
            }
        }

        // Unknown keys first: they explain missing ones.
        foreach (var failure in InFileOrder(found.Where(f => f.IsFalse)))
        {
            AddForbidden(failure);
        }

        foreach (var failure in InFileOrder(found.Where(f => f.Keyword == "required")))
        {
            AddMissing(failure);
        }

        foreach (var group in InFileOrder(found.Where(f => !f.IsFalse && f.Keyword != "required")).GroupBy(f => f.Pointer))
        {
            AddShape(group.MinBy(f => Weight(f.Keyword))!);
        }

        var spoken = found.Select(f => f.Item).ToHashSet();
        foreach (var number in file.BeyondNumbers.Where(n => !spoken.Contains(n) && ReferenceEquals(tree.Find(n.Pointer), n)))
        {
            _problems.Add(new Problem(
                ProblemKind.WrongShape, Opening(number), SchemaWords.BeyondNumber(SchemaWords.NameOf(number), number)));
        }

        return
        [
            .. _problems.Close()
                .Select((problem, index) => (Problem: problem, Index: index, file.Resolve(problem.Place).Start))
                .OrderBy(p => p.Start)
                .ThenBy(p => p.Index)
                .Select(p => p.Problem),
        ];
    }

    /// <summary>What makes a document too big to be evaluated, at its first value too many; null when nothing does.</summary>
    public static Problem? TooMuch(SourceFile file, JsonTree tree)
    {
        var pending = new Stack<JsonItem>([tree.Root]);
        for (var count = 1; pending.TryPop(out var item); count++)
        {
            if (count > SchemaCheck.ValueLimit)
            {
                return new Problem(
                    ProblemKind.WrongShape, OpeningOf(file, item), SchemaWords.TooMany("The file", "values", SchemaCheck.ValueLimit));
            }

            if (item.Items.Count > SchemaCheck.EntryLimit)
            {
                return TooLong(item, item.Items[SchemaCheck.EntryLimit], "entries");
            }

            if (item.Members.Count > SchemaCheck.EntryLimit)
            {
                return TooLong(item, item.Members[SchemaCheck.EntryLimit].Value, "keys");
            }

            // Pushed backwards, so that they come off in the order of the file.
            for (var i = item.Members.Count - 1; i >= 0; i--)
            {
                pending.Push(item.Members[i].Value);
            }

            for (var i = item.Items.Count - 1; i >= 0; i--)
            {
                pending.Push(item.Items[i]);
            }
        }

        return null;

        Problem TooLong(JsonItem whole, JsonItem first, string what) => new(
            ProblemKind.WrongShape, OpeningOf(file, first), SchemaWords.TooMany(SchemaWords.NameOf(whole), what, SchemaCheck.EntryLimit));
    }

    private static IEnumerable<Found> InFileOrder(IEnumerable<Found> found) => found.OrderBy(f => f.Item.Span.Start);

    private static int Weight(string keyword)
    {
        var index = Array.IndexOf(_byWeight, keyword);
        return index < 0 ? _byWeight.Length : index;
    }

    private void AddForbidden(Found failure)
    {
        var place = new Place(file.Path, failure.Item.Pointer, PlacePart.Key);
        var tokens = place.Pointer.Tokens;
        var key = tokens.Count > 0 ? tokens[^1] : "";
        var holder = ParentOf(failure.Item);
        if (failure.Spot is not { } spot || holder is null)
        {
            AddUnexplained(failure);
        }
        else if (spot.DependsOn is { } other)
        {
            AddExclusive(place, key, other, holder);
        }
        else if (spot.Selectors() is var selectors && selectors.Contains(key)
            && selectors.FirstOrDefault(s => s != key && holder[s] is not null) is { } chosen)
        {
            AddExclusive(place, key, chosen, holder);
        }
        else if (_problems.IsFull(ProblemKind.UnknownKey))
        {
            _problems.Skip(ProblemKind.UnknownKey, () => place);
        }
        else
        {
            AddUnknown(place, key, failure.Item, holder, SchemaWords.KeysOf(spot.Holder));
        }
    }

    private void AddUnknown(Place place, string key, JsonItem value, JsonItem holder, IReadOnlyList<string> allowed)
    {
        var known = allowed.Where(k => k != "$schema").ToList();
        var free = known.Where(k => holder[k] is null).ToList();
        var ofLabel = LabelWords.AreOfLabel(known);
        var advised = ofLabel
            ? LabelWords.Advice(key, value, holder)
            : KeyAliases.OtherBasis(key, value, known, holder) ?? KeyAliases.Elsewhere(key, known) ?? AsSubstance(key, value, known)
                ?? OtherLevel(key, holder);
        if (advised is { } advice)
        {
            _withUnknownKey.Add(holder.Pointer.Value);
            _problems.Add(new Problem(ProblemKind.UnknownKey, place, $"The key \"{Wording.Shorten(key)}\" is not known here. {advice}"));
            return;
        }

        IReadOnlyList<string> nearest = SchemaWords.IsRemark(key) && free.Contains("note") ? ["note"]
            : (ofLabel ? LabelWords.Key(key, known) : KeyAliases.SameThing(key, known)) is { } meant ? [meant]
            : Spelling.Nearest(key, known.Where(k => KeyAliases.MayBeSlip(key, k)));
        var there = nearest.Count > 0 && holder[nearest[0]] is not null ? nearest[0] : null;
        IReadOnlyList<string> suggestions = there is null ? [.. nearest.Where(free.Contains)] : [];
        _withUnknownKey.Add(holder.Pointer.Value);
        foreach (var suggestion in suggestions)
        {
            _misspelt.Add((holder.Pointer.Value, suggestion));
        }

        _problems.Add(new Problem(
            ProblemKind.UnknownKey, place, SchemaWords.UnknownKey(key, suggestions, there, free))
        { Suggestions = suggestions });
    }

    /// <summary>"KNO3": "10 g": a substance that stands where its key belongs; null for any other key.</summary>
    private static string? AsSubstance(string key, JsonItem value, List<string> known)
    {
        if (!known.Contains("add") || SubstanceCatalogue.BuiltIn.Find(key) is SubstanceLookup.Unknown)
        {
            return null;
        }

        var amount = value.Kind == JsonKind.Text ? Wording.Shorten(value.Text) : "10 g";
        return $"It is a substance: write {{ \"add\": \"{Wording.Shorten(key)}\", \"amount\": \"{amount}\" }}.";
    }

    /// <summary>A key that stands one level too deep or too high; null where it is at home at neither.</summary>
    private string? OtherLevel(string key, JsonItem holder)
    {
        var above = schema.KeysAtTop();
        if (holder.Pointer.Tokens is [var inside]
            && (above.Contains(key) ? key : KeyAliases.SameThing(key, above)) is { } outer
            && outer is not ("format" or "note"))
        {
            return $"\"{outer}\" belongs one level up, beside \"{inside}\".";
        }

        if (holder.Pointer.Value.Length > 0 || KeyAliases.SameThing(key, above) is not null)
        {
            return null;
        }

        return above.Select(k => (Group: k, Key: KeyIn(schema.KeysBelow(k)))).FirstOrDefault(b => b.Key is not null)
            is { Key: { } below } found
            ? below == key ? $"It belongs into \"{found.Group}\"." : $"It belongs into \"{found.Group}\", as \"{below}\"."
            : null;

        string? KeyIn(IReadOnlyList<string> keys) => keys.Contains(key) ? key : KeyAliases.SameThing(key, keys);
    }

    private void AddExclusive(Place place, string key, string other, JsonItem holder)
    {
        _problems.Add(new Problem(
            ProblemKind.WrongShape,
            place,
            $"\"{key}\" and \"{other}\" do not go together in one object: keep one of them, or write two entries.")
        {
            Related = holder[other] is { } there
                ? [new RelatedPlace(new Place(file.Path, there.Pointer, PlacePart.Key), "the other one")]
                : [],
        });
    }

    private void AddMissing(Found failure)
    {
        var pointer = failure.Pointer;
        if (failure.Spot is not { } spot)
        {
            AddUnexplained(failure);
            return;
        }

        if (spot.IsAlternative)
        {
            // Alternatives report their own miss even when another one holds; where none does, the first to come speaks for all.
            // In an entry of a list an unknown key is most likely the missing one.
            var alternatives = SchemaWords.AlternativesOf(spot.Holder);
            if (alternatives.Any(k => failure.Item[k] is not null || _misspelt.Contains((pointer, k)))
                || (pointer.Length > 0 && _withUnknownKey.Contains(pointer))
                || !_misspelt.Add((pointer, "anyOf")))
            {
                return;
            }

            _problems.Add(new Problem(
                ProblemKind.MissingKey, Opening(failure.Item), SchemaWords.MissingOneOf(SchemaWords.Offered(spot.Holder, alternatives))));
            return;
        }

        foreach (var key in SchemaWords.Strings(spot.Node, "required"))
        {
            if (failure.Item[key] is not null || !_misspelt.Add((pointer, key)))
            {
                continue;
            }

            _problems.Add(new Problem(ProblemKind.MissingKey, Opening(failure.Item), SchemaWords.MissingKey(key, spot.Property(key))));
        }
    }

    private void AddShape(Found failure)
    {
        if (failure.Spot is not { Node.ValueKind: JsonValueKind.Object } spot)
        {
            AddUnexplained(failure);
            return;
        }

        // Of a key that stands twice the evaluator may have met the earlier value; that it stands twice is told already.
        if (!file.IsPlain && new QuickSchema(spot.Node).Fits(failure.Item) == true)
        {
            return;
        }

        var kind = failure.Keyword == "type" && failure.Item.Kind == JsonKind.Number && SchemaWords.IsQuantity(spot.Node)
            ? ProblemKind.NumberWithoutUnit
            : ProblemKind.WrongShape;
        if (_problems.IsFull(kind))
        {
            _problems.Skip(kind, () => Opening(failure.Item));
            return;
        }

        var suggestions = failure.Keyword == "enum" ? Spelling.Nearest(failure.Item.Text, SchemaWords.Strings(spot.Node, "enum")) : [];
        var message = SchemaWords.Shape(failure.Keyword, SchemaWords.NameOf(failure.Item), failure.Item, spot.Node, suggestions);
        if (failure.Keyword == "type"
            && LabelWords.AreOfLabel(SchemaWords.KeysOf(spot.Node))
            && LabelWords.AsGrades(failure.Item) is { } grades)
        {
            message = $"{message} {grades}";
        }

        _problems.Add(new Problem(kind, Opening(failure.Item), message) { Suggestions = suggestions });
    }

    /// <summary>Nothing the schema refuses goes unsaid, even where we have no better words for it.</summary>
    private void AddUnexplained(Found failure) => _problems.Add(new Problem(
        ProblemKind.WrongShape, Opening(failure.Item), $"{SchemaWords.NameOf(failure.Item)} is not written as this file needs it."));

    private JsonItem? ParentOf(JsonItem item)
    {
        var pointer = item.Pointer.Value;
        var slash = pointer.LastIndexOf('/');
        return slash < 0 ? null : tree.Find(new JsonPointer(pointer[..slash]));
    }

    private Place Opening(JsonItem item) => OpeningOf(file, item);

    /// <summary>A value, or of an object or list its opening bracket, so that a finding marks one line.</summary>
    private static Place OpeningOf(SourceFile file, JsonItem item) => new(
        file.Path,
        item.Pointer,
        PlacePart.Value,
        item.Kind is JsonKind.Object or JsonKind.Array ? new ByteSpan(item.Span.Start, 1) : null);

    private sealed record Found(JsonItem Item, SchemaSpot? Spot, string Keyword, string Pointer)
    {
        /// <summary>Failed because nothing may stand here at all.</summary>
        public bool IsFalse => Keyword.Length == 0;
    }
}
