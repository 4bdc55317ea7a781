using RecipeLint;

var surroundings = Surroundings.OfThisProcess();
var code = CommandLine.Run(args, surroundings);
surroundings.Out.Flush();
return code;
