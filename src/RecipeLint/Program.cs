using RecipeLint;

return WholeProcess.Run(args);
