import type { DccProblem } from "./dcc-certificate";
import { childNamed, childrenNamed, type XmlElement } from "./xml-element";

const demanded = { usedMethods: "the method", influenceConditions: "the conditions" } as const;

/**
 * DCC 3.3 lets methods and conditions stand for all results, for one, for a table or for a quantity, and demands
 * (in its rules beside the schema) that each quantity of a result is reached by one of them.
 */
export const checkCoverage = (root: XmlElement): readonly DccProblem[] => {
  const found: DccProblem[] = [];
  const measurement = childNamed(root, "measurementResults");
  const visit = (element: XmlElement, known: ReadonlySet<string>): void => {
    const here = new Set([
      ...known,
      ...Object.keys(demanded).filter((name) => childNamed(element, name) !== null),
    ]);
    if (element.name === "quantity") {
      for (const [name, what] of Object.entries(demanded))
        if (!here.has(name))
          found.push({
            code: "structure",
            path: element.path,
            line: element.line,
            message: `For this quantity no ${name} is given, neither here nor above it: DCC 3.3 wants ${what} of each result. Ask the issuer to add it.`,
          });
      return;
    }
    for (const name of ["measurementResult", "results", "result", "data", "list", "quantity"])
      for (const child of childrenNamed(element, name)) visit(child, here);
  };
  if (measurement) visit(measurement, new Set());
  return found;
};
