using System.Globalization;
using Newtonsoft.Json;
using Newtonsoft.Json.Linq;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using Sarif = Microsoft.CodeAnalysis.Sarif;

namespace RecipeLint.Reports;

/// <summary>
/// Writes logs through the SARIF library and its JSON library, which only this class, <see cref="SarifContracts"/> and
/// <see cref="SarifLogMerger"/> know.
/// </summary>
internal static class SarifLogWriter
{
    internal const string Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
    private const string Root = "%SRCROOT%";
    private const string MessageId = "found";
    private const int MaxRelated = 100;
    private const int MaxSnippetBytes = 4000;

    // Shared, because it keeps what it learns about the library's types.
    private static readonly SarifContracts _resolver = new();

    public static void Write(TextWriter writer, Report report, SarifOptions options)
    {
        var log = new Sarif.SarifLog
        {
            SchemaUri = new Uri(Schema),
            Version = Sarif.SarifVersion.Current,
            Runs = [Run(report, options)],
        };
        Write(writer, log);
    }

    public static void Write(TextWriter writer, Sarif.SarifLog log)
    {
        using var json = new JsonTextWriter(writer)
        {
            Formatting = Formatting.Indented,
            Culture = CultureInfo.InvariantCulture,
            CloseOutput = false,
        };
        var settings = new JsonSerializerSettings { Culture = CultureInfo.InvariantCulture, ContractResolver = _resolver };
        JsonSerializer.Create(settings).Serialize(json, log);
    }

    private static Sarif.Run Run(Report report, SarifOptions options)
    {
        var suppressed = report.Result.Suppressed.ToDictionary(
            s => s.Finding, s => s.Suppression.Reason, (IEqualityComparer<Finding>)ReferenceEqualityComparer.Instance);
        var all = options.IncludeSuppressed
            ? report.Result.Findings.Concat(report.Result.Suppressed.Select(s => s.Finding))
            : report.Result.Findings;
        var placed = PlacedFinding.InOrder(all, report.Sources);
        var kept = Worst(placed);
        var rules = RulesOf(report, kept);
        var index = rules.Select((r, i) => (r.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        var fired = kept.Select(p => p.Finding.Rule.Id).ToHashSet(StringComparer.Ordinal);

        return new Sarif.Run
        {
            Tool = new Sarif.Tool { Driver = Driver(report, [.. rules.Select(r => Rule(r, fired.Contains(r.Id)))]) },
            Invocations = [Invocation(report, placed.Count - kept.Count, index)],
            AutomationDetails = new Sarif.RunAutomationDetails { Id = "recipelint/" },
            ColumnKind = Sarif.ColumnKind.Utf16CodeUnits,
            NewlineSequences = ["\r\n", "\n", "\r"],
            OriginalUriBaseIds = new Dictionary<string, Sarif.ArtifactLocation>
            {
                [Root] = new() { Description = new Sarif.Message { Text = "The root folder of the checked recipes." } },
            },
            Results = [.. kept.Select(p => Result(p, index[p.Finding.Rule.Id], suppressed.GetValueOrDefault(p.Finding), report))],
        };
    }

    /// <summary>The worst results when there are too many, still in the order of the report.</summary>
    private static List<PlacedFinding> Worst(IReadOnlyList<PlacedFinding> placed)
    {
        if (placed.Count <= SarifReport.MaxResults)
        {
            return [.. placed];
        }

        var worst = placed.Select((p, i) => (Placed: p, Index: i))
            .OrderByDescending(p => p.Placed.Finding.Level).ThenBy(p => p.Index).Take(SarifReport.MaxResults);
        return [.. worst.OrderBy(p => p.Index).Select(p => p.Placed)];
    }

    private static List<RuleDescriptor> RulesOf(Report report, List<PlacedFinding> kept) =>
    [
        .. report.Rules.Concat(kept.Select(p => p.Finding.Rule)).Concat(report.Result.Suppressed.Select(s => s.Finding.Rule))
            .DistinctBy(r => r.Id).OrderBy(r => r.Id, StringComparer.Ordinal),
    ];

    private static Sarif.ToolComponent Driver(Report report, List<Sarif.ReportingDescriptor> rules)
    {
        // A build may append "+" and a revision, which is not part of what was released.
        var version = report.ToolVersion.Split('+')[0];
        return new Sarif.ToolComponent
        {
            Name = "RecipeLint",
            Version = version,
            SemanticVersion = version,
            InformationUri = new Uri("urn:recipelint:tool"),
            ShortDescription =
                new Sarif.MultiformatMessageString { Text = "Checks nutrient recipes and stock solutions before anyone mixes them." },
            Rules = rules,
        };
    }

    private static Sarif.ReportingDescriptor Rule(RuleDescriptor rule, bool fired)
    {
        // Full help for the rules that speak in this log; the others would make a clean log a thousand times larger than its content.
        var help = fired
            ? new Sarif.MultiformatMessageString
            {
                Text = MarkdownText.Render(rule.Explanation.Value).TrimEnd(),
                Markdown = rule.Explanation.Value.TrimEnd(),
            }
            : new Sarif.MultiformatMessageString { Text = $"Run 'recipelint explain {rule.Id}' for the explanation." };
        var descriptor = new Sarif.ReportingDescriptor
        {
            Id = rule.Id,
            Name = SarifText.PascalCase(rule.Name),
            ShortDescription = new Sarif.MultiformatMessageString { Text = SarifText.Shorten(Sentences.Ended(rule.Title)) },
            FullDescription = new Sarif.MultiformatMessageString { Text = SarifText.FullDescription(rule) },
            Help = help,
            HelpUri = SarifText.HelpUri(rule),
            DefaultConfiguration = new Sarif.ReportingConfiguration { Level = LevelOf(rule.Level) },
            MessageStrings =
                new Dictionary<string, Sarif.MultiformatMessageString> { [MessageId] = new() { Text = SarifText.Template(rule) } },
        };
        descriptor.SetProperty("precision", Precision(rule.Certainty));
        descriptor.SetProperty("problem.severity", rule.Level == Level.Note ? "recommendation" : Words.Of(rule.Level));

        // Not through the library's tag collection: it creates a HashSet by reflection, which native code does not have.
        descriptor.SetProperty("tags", new JArray(rule.Family, Words.Of(rule.Certainty)));
        if (fired)
        {
            descriptor.SetProperty("sources", Sources(rule));
        }

        return descriptor;
    }

    /// <summary>What the rule rests on: its works first, then each default and constant with where it comes from.</summary>
    private static JArray Sources(RuleDescriptor rule) => new(
        rule.Sources.Select(s => new JObject { ["source"] = s.Text, ["confidence"] = s.Confidence })
            .Concat(RuleGround.Of(rule).Select(g => new JObject { ["of"] = g.What, ["source"] = g.Source })));

    private static Sarif.Invocation Invocation(Report report, int leftOut, Dictionary<string, int> index)
    {
        var notifications = report.Result.Faults.Select(fault => new Sarif.Notification
        {
            Level = Sarif.FailureLevel.Error,
            Message = new Sarif.Message { Text = SarifText.Literal(Sentences.Ended(fault.Message)) },
            AssociatedRule = index.TryGetValue(fault.RuleId, out var i)
                ? new Sarif.ReportingDescriptorReference { Id = fault.RuleId, Index = i }
                : null,
        }).ToList();
        if (leftOut > 0)
        {
            notifications.Add(LeftOut(leftOut));
        }

        return new Sarif.Invocation
        {
            ExecutionSuccessful = report.Result.Faults.Count == 0,
            ToolExecutionNotifications = notifications.Count == 0 ? null : notifications,
        };
    }

    internal static Sarif.Notification LeftOut(long results)
    {
        var text = string.Create(
            CultureInfo.InvariantCulture, $"{results} more results are left out; the {SarifReport.MaxResults} gravest are here.");
        return new Sarif.Notification { Level = Sarif.FailureLevel.Warning, Message = new Sarif.Message { Text = text } };
    }

    private static Sarif.Result Result(PlacedFinding placed, int ruleIndex, string? suppressedBecause, Report report)
    {
        var finding = placed.Finding;
        var related = placed.Related.Take(MaxRelated).ToList();
        var result = new Sarif.Result
        {
            RuleId = finding.Rule.Id,
            RuleIndex = ruleIndex,
            Level = LevelOf(finding.Level),
            Message = new Sarif.Message
            {
                Text = SarifText.Message(finding.Message, [.. related.Select(r => r.Label)]),
                Id = MessageId,
                Arguments = [Printable.WellFormed(finding.IdPath.Length == 0 ? finding.Place.File : finding.IdPath)],
            },
            Locations = [new Sarif.Location { PhysicalLocation = Physical(placed.Spot, withContext: true) }],
            PartialFingerprints = new Dictionary<string, string> { ["recipelint/v1"] = Fingerprint.Of(finding) },
        };
        if (related.Count > 0)
        {
            result.RelatedLocations = [.. related.Select((r, i) => new Sarif.Location
            {
                Id = i + 1,
                Message = new Sarif.Message { Text = SarifText.Literal(Sentences.Ended(r.Label)) },
                PhysicalLocation = Physical(r.Spot, withContext: false),
            })];
        }

        if (suppressedBecause is not null)
        {
            result.Suppressions =
                [new Sarif.Suppression { Kind = Sarif.SuppressionKind.External, Justification = Printable.WellFormed(suppressedBecause) }];
        }

        if (report.Repairs?.GetValueOrDefault(finding) is { Count: > 0 } repairs)
        {
            result.Fixes = [.. repairs.Where(r => r.Patches.Values.All(p => p.Edits.Count > 0)).Select(r => Fix(r, report))];
        }

        SetProperties(result, finding);
        return result;
    }

    private static Sarif.Fix Fix(VerifiedRepair repair, Report report)
    {
        var fix = new Sarif.Fix
        {
            Description =
                new Sarif.Message { Text = SarifText.Literal(string.Join(' ', RepairText.Lines(repair).Select(Sentences.Ended))) },
            ArtifactChanges = [.. repair.Patches.Select(p => Change(p.Key, p.Value, report))],
        };
        fix.SetProperty("repair", repair.Name);
        fix.SetProperty("kind", repair.Repair.Kind == RepairKind.Safe ? "safe" : repair.Shifts.Count > 0 ? "other-recipe" : "chemistry");
        return fix;
    }

    private static Sarif.ArtifactChange Change(string file, PatchResult patch, Report report)
    {
        var (uri, isRelative) = SarifText.UriOf(file);
        return new Sarif.ArtifactChange
        {
            ArtifactLocation = new Sarif.ArtifactLocation { Uri = uri, UriBaseId = isRelative ? Root : null },
            Replacements =
            [
                .. patch.Edits.Select(edit => new Sarif.Replacement
                {
                    DeletedRegion = RegionOf(edit.Span, report.Sources.GetValueOrDefault(file) ?? patch.Before),
                    InsertedContent = edit.Text.Length == 0 ? null : new Sarif.ArtifactContent { Text = edit.Text },
                }),
            ],
        };
    }

    /// <summary>An empty region, start and end the same, is the point of an insertion (SARIF 2.1.0 section 3.57.3).</summary>
    private static Sarif.Region RegionOf(ByteSpan span, SourceFile source)
    {
        var (start, end) = source.ToLines(span);
        return new Sarif.Region { StartLine = start.Line, StartColumn = start.Column, EndLine = end.Line, EndColumn = end.Column };
    }

    private static void SetProperties(Sarif.Result result, Finding finding)
    {
        result.SetProperty("certainty", Words.Of(finding.Certainty));
        if (finding.Measured is { } measured)
        {
            result.SetProperty("measured", new JObject
            {
                ["name"] = Printable.WellFormed(measured.Name),
                ["value"] = measured.Value,
                ["limit"] = measured.Limit,
                ["unit"] = measured.Unit,
            });
        }

        if (finding.Values.Count > 0)
        {
            result.SetProperty("values", new JArray(finding.Values.Select(v =>
                new JObject { ["name"] = Printable.WellFormed(v.Name), ["value"] = v.Value, ["unit"] = v.Unit })));
        }

        if (finding.Suggestions.Count > 0)
        {
            result.SetProperty("suggestions", new JArray(finding.Suggestions.Select(Printable.WellFormed)));
        }
    }

    private static Sarif.PhysicalLocation Physical(Spot spot, bool withContext)
    {
        var (uri, isRelative) = SarifText.UriOf(spot.File);
        var location = new Sarif.PhysicalLocation
        {
            ArtifactLocation = new Sarif.ArtifactLocation { Uri = uri, UriBaseId = isRelative ? Root : null },
            Region = Region(spot),
        };
        if (withContext && spot.Source is { } source && SourceContext.Around(source, spot.Bytes) is { } context)
        {
            location.ContextRegion = Region(spot with { Bytes = context, Lines = source.ToLines(context) });
        }

        return location;
    }

    private static Sarif.Region Region(Spot spot)
    {
        var (start, end) = spot.Lines;
        var region = new Sarif.Region { StartLine = start.Line, StartColumn = start.Column, EndLine = end.Line, EndColumn = end.Column };
        if (spot.Source is { } source && spot.Bytes.Length is > 0 and <= MaxSnippetBytes)
        {
            region.Snippet = new Sarif.ArtifactContent { Text = source.Excerpt(spot.Bytes) };
        }

        return region;
    }

    private static Sarif.FailureLevel LevelOf(Level level) => level switch
    {
        Level.Error => Sarif.FailureLevel.Error,
        Level.Warning => Sarif.FailureLevel.Warning,
        _ => Sarif.FailureLevel.Note,
    };

    private static string Precision(Certainty certainty) => certainty switch
    {
        Certainty.Computed => "very-high",
        Certainty.Estimate => "high",
        _ => "medium",
    };
}
