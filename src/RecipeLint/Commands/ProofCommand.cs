using System.CommandLine;
using RecipeLint.Advice.Slips;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Reports.Diagnosis;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Prints what to weigh and measure after mixing, and which slips that would show.</summary>
internal static class ProofCommand
{
    public static Command Build(Surroundings world)
    {
        var file = new Argument<string>("file") { Description = "A stock file." };
        var all = new Option<bool>("--all") { Description = "Every slip with its figures, not only what fits on one screen." };
        var config = SharedOptions.Config();
        var noConfig = SharedOptions.NoConfig();
        var command =
            new Command("proof", "Print the check to do after mixing: expected weight, EC and pH, and which slips they would show.")
        {
            file, all, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var input = StockInput.Open(world, "proof", parsed.GetValue(file)!, parsed.GetValue(config), parsed.GetValue(noConfig));
            var proof = Proof.Of(input.Workspace, input.Stock).Checked(input.Workspace, world.Today);
            world.Out.Write(ProofReport.Write(proof, parsed.GetValue(all)));
            return ExitCodes.OfAdvice(
                ProofReport.Refused(proof) is not null || UnknownContents.Of(proof.Stock) is not null, proof.Objections);
        });
        return command;
    }
}
