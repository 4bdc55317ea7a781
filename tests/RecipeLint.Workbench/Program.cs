using RecipeLint.Workbench;

return Bench.Run(args, Console.Out, Console.Error);
