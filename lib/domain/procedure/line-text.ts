import type { BudgetLine } from "./budget-lines";

const units = { celsius: "°C", microvolt: "µV", relative: "of the emf" } as const;

const figureOf = (line: BudgetLine): string => {
  switch (line.kind) {
    case "standard":
      return `u = ${line.standard} ${units[line.unit]}`;
    case "rectangular":
      return `± ${line.halfWidth} ${units[line.unit]}`;
    case "expanded":
      return `U = ${line.expanded} ${units[line.unit]}, k = ${line.coverageFactor}`;
    case "tolerance-share":
      return `± ${line.share} of the tolerance, class ${line.toleranceClass}`;
    case "block-means":
      return `from the window’s own readings, blocks of ${line.blockSeconds} s`;
    case "zero":
      return "none";
  }
};

/** A line in words: its figure, from where it acts, and where it comes from. */
export const lineText = (line: BudgetLine): { readonly figure: string; readonly source: string } => {
  const from =
    "fromCelsius" in line && line.fromCelsius !== undefined ? ` from ${line.fromCelsius} °C on` : "";
  return { figure: `${figureOf(line)}${from}`, source: line.kind === "zero" ? line.reason : line.source };
};
