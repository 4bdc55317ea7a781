using RecipeLint;
using RecipeLint.Shell;

var surroundings = Surroundings.OfThisProcess();
var code = CommandLine.Run(args, surroundings);
surroundings.Out.Flush();
return code;
