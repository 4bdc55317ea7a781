using System.Globalization;
using System.Text;

namespace RecipeLint.Install;

/// <summary>
/// Scripts that let a shell complete commands, options and rule names; made from the definitions that parse the arguments.
/// </summary>
internal static class CompletionScripts
{
    public static IReadOnlyList<string> Shells { get; } = ["bash", "zsh", "fish", "powershell"];

    /// <param name="shell">One of <see cref="Shells"/>.</param>
    public static string For(string shell, IReadOnlyList<CommandOutline> commands) => shell switch
    {
        "bash" => Bash(commands),
        "zsh" => Zsh(commands),
        "fish" => Fish(commands),
        _ => PowerShell(commands),
    };

    private static string Bash(IReadOnlyList<CommandOutline> commands)
    {
        var names = string.Join(' ', commands.Select(c => c.Name));
        var text = new StringBuilder();
        text.Append("# bash completion for recipelint. In ~/.bashrc: source <(recipelint completion bash)\n");
        text.Append("_recipelint() {\n  local cur=\"${COMP_WORDS[COMP_CWORD]}\" prev=\"${COMP_WORDS[COMP_CWORD-1]}\" command=\"\" i\n  "
            + "COMPREPLY=()\n");

        // bash makes three words of --option=value.
        text.Append("  if [[ $cur == \"=\" ]]; then cur=\"\"; elif [[ $prev == \"=\" ]]; then prev=\"${COMP_WORDS[COMP_CWORD-2]}\"; fi\n");
        text.Append("  for ((i = 1; i < COMP_CWORD; i++)); do\n    case \"${COMP_WORDS[i]}\" in\n");
        text.Append(
            CultureInfo.InvariantCulture,
            $"      {names.Replace(" ", "|", StringComparison.Ordinal)}) command=\"${{COMP_WORDS[i]}}\"; break ;;\n    esac\n  done\n");
        text.Append("  case \"$command $prev\" in\n");
        foreach (var (command, option) in commands.SelectMany(c => c.Options.Select(o => (c, o)))
            .Where(p => p.o.Takes != TakenValue.Nothing))
        {
            var pattern = string.Join('|', option.Names.Select(n => $"\"{command.Name} {n}\""));
            var reply = option.Takes switch
            {
                TakenValue.OneOf => $"COMPREPLY=($(compgen -W \"{string.Join(' ', option.Words)}\" -- \"$cur\"))",
                TakenValue.File => "COMPREPLY=($(compgen -f -- \"$cur\"))",
                _ => ":",
            };
            text.Append(CultureInfo.InvariantCulture, $"    {pattern}) {reply}; return ;;\n");
        }

        text.Append("  esac\n  case \"$command\" in\n");
        text.Append(
            CultureInfo.InvariantCulture, $"    \"\") COMPREPLY=($(compgen -W \"{names} --help --version\" -- \"$cur\")); return ;;\n");
        foreach (var command in commands)
        {
            var options = string.Join(' ', command.Options.SelectMany(o => o.Names).Append("--help"));
            text.Append(
                CultureInfo.InvariantCulture,
                $"    {command.Name})\n      if [[ $cur == -* ]]; then COMPREPLY=($(compgen -W \"{options}\" -- \"$cur\")); return; fi\n");
            text.Append(command.Argument switch
            {
                TakenValue.OneOf => $"      COMPREPLY=($(compgen -W \"{string.Join(' ', command.ArgumentWords)}\" -- \"$cur\")) ;;\n",
                TakenValue.File => "      COMPREPLY=($(compgen -f -- \"$cur\")) ;;\n",
                _ => "      ;;\n",
            });
        }

        return text.Append("  esac\n}\ncomplete -o filenames -F _recipelint recipelint\n").ToString();
    }

    private static string Zsh(IReadOnlyList<CommandOutline> commands)
    {
        var text = new StringBuilder();
        text.Append(
            "#compdef recipelint\n# zsh completion for recipelint. In ~/.zshrc, after compinit: source <(recipelint completion zsh)\n");
        text.Append("_recipelint() {\n  local -a commands\n  commands=(\n");
        foreach (var command in commands)
        {
            text.Append(CultureInfo.InvariantCulture, $"    '{command.Name}:{ZshText(command.Description)}'\n");
        }

        text.Append("  )\n  if (( CURRENT == 2 )); then\n    _describe -t commands command commands\n    return\n  fi\n  local "
            + "command=$words[2]\n  shift words\n  (( CURRENT-- ))\n");
        text.Append("  case $command in\n");
        foreach (var command in commands)
        {
            text.Append(CultureInfo.InvariantCulture, $"    {command.Name})\n      _arguments");
            foreach (var option in command.Options)
            {
                var after = option.Takes switch
                {
                    TakenValue.Nothing => "",
                    TakenValue.OneOf => $":{option.ValueName!.Replace('|', ' ')}:({string.Join(' ', option.Words)})",
                    TakenValue.File => $":{option.ValueName}:_files",
                    _ => $":{ZshText(option.ValueName!)}: ",
                };
                foreach (var name in option.Names)
                {
                    // The value may be the next word or follow an equals sign.
                    var equals = option.Takes != TakenValue.Nothing && name.StartsWith("--", StringComparison.Ordinal) ? "=" : "";
                    text.Append(CultureInfo.InvariantCulture, $" \\\n        '{name}{equals}[{ZshText(option.Description)}]{after}'");
                }
            }

            text.Append(command.Argument switch
            {
                TakenValue.OneOf => $" \\\n        '*:word:({string.Join(' ', command.ArgumentWords)})'",
                TakenValue.File => " \\\n        '*:file:_files'",
                _ => "",
            });
            text.Append(" \\\n        '--help[Show help.]' ;;\n");
        }

        return text.Append("  esac\n}\ncompdef _recipelint recipelint\n").ToString();
    }

    private static string Fish(IReadOnlyList<CommandOutline> commands)
    {
        var text = new StringBuilder(
            "# fish completion for recipelint: recipelint completion fish > ~/.config/fish/completions/recipelint.fish\n");
        foreach (var command in commands)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"complete -c recipelint -f -n __fish_use_subcommand -a {command.Name} -d '{FishText(command.Description)}'\n");
        }

        foreach (var command in commands)
        {
            var when = $"-n '__fish_seen_subcommand_from {command.Name}'";
            foreach (var option in command.Options)
            {
                var names = string.Join(
                    ' ', option.Names.Select(n => n.StartsWith("--", StringComparison.Ordinal) ? "-l " + n[2..] : "-s " + n[1..]));
                var after = option.Takes switch
                {
                    TakenValue.Nothing => "",
                    TakenValue.OneOf => $" -x -a '{string.Join(' ', option.Words)}'",
                    TakenValue.File => " -r -F",
                    _ => " -x",
                };
                text.Append(
                    CultureInfo.InvariantCulture, $"complete -c recipelint {when} {names}{after} -d '{FishText(option.Description)}'\n");
            }

            if (command.Argument == TakenValue.OneOf)
            {
                text.Append(
                    CultureInfo.InvariantCulture, $"complete -c recipelint {when} -f -a '{string.Join(' ', command.ArgumentWords)}'\n");
            }
        }

        return text.ToString();
    }

    private static string PowerShell(IReadOnlyList<CommandOutline> commands)
    {
        var text = new StringBuilder();
        text.Append(
            "# PowerShell completion for recipelint. In $PROFILE: recipelint completion powershell | Out-String | Invoke-Expression\n");
        text.Append("Register-ArgumentCompleter -Native -CommandName recipelint -ScriptBlock {\n    param($wordToComplete, $commandAst, "
            + "$cursorPosition)\n    $commands = [ordered]@{\n");
        foreach (var command in commands)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"        '{command.Name}' = @({PowerShellList(command.Options.SelectMany(o => o.Names).Append("--help"))})\n");
        }

        text.Append("    }\n    $values = @{\n");
        foreach (var (command, option) in commands.SelectMany(c => c.Options.Select(o => (c, o))).Where(p => p.o.Takes == TakenValue.OneOf))
        {
            foreach (var name in option.Names)
            {
                text.Append(CultureInfo.InvariantCulture, $"        '{command.Name} {name}' = @({PowerShellList(option.Words)})\n");
            }
        }

        text.Append("    }\n    $arguments = @{\n");
        foreach (var command in commands.Where(c => c.Argument == TakenValue.OneOf))
        {
            text.Append(CultureInfo.InvariantCulture, $"        '{command.Name}' = @({PowerShellList(command.ArgumentWords)})\n");
        }

        text.Append("""
                }
                $words = @($commandAst.CommandElements | ForEach-Object { $_.ToString() })
                $command = $words | Select-Object -Skip 1 | Where-Object { $commands.Contains($_) } | Select-Object -First 1
                $previous = if ($wordToComplete) { $words[-2] } else { $words[-1] }
                $offered = if (-not $command -or $command -eq $wordToComplete) { $commands.Keys }
                    elseif ($values.ContainsKey("$command $previous")) { $values["$command $previous"] }
                    elseif ($wordToComplete.StartsWith('-')) { $commands[$command] }
                    else { $arguments[$command] }
                $offered | Where-Object { $_ -like "$wordToComplete*" } | ForEach-Object {
                    [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
                }
            }

            """);
        return text.ToString();
    }

    private static string PowerShellList(IEnumerable<string> words) => string.Join(", ", words.Select(w => $"'{w}'"));

    private static string ZshText(string text) =>
        text.Replace("'", "'\\''", StringComparison.Ordinal)
            .Replace("[", "\\[", StringComparison.Ordinal)
            .Replace("]", "\\]", StringComparison.Ordinal)
            .Replace(":", "\\:", StringComparison.Ordinal);

    private static string FishText(string text) =>
        text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("'", "\\'", StringComparison.Ordinal);
}
