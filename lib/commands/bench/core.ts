import { benchHeavyEvaluation } from "./evaluate-heavy";
import { benchMonteCarlo } from "./monte-carlo";
import { printFigure } from "./print-figure";
import { benchReferenceFunction } from "./reference-functions";

// Pure computation with nothing else loaded; bench.ts starts it in a process of its own.
for (const type of ["K", "N", "R", "S"] as const) {
  for (const figure of await benchReferenceFunction(type)) printFigure(figure);
}
printFigure(await benchHeavyEvaluation());
const monteCarlo = await benchMonteCarlo();
printFigure(monteCarlo.figure, { name: "trials", count: monteCarlo.trials });
for (const note of monteCarlo.notes) console.log(`  ${note}`);
