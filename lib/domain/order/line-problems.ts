import { temperatureRange } from "@/lib/metrology/thermocouple/reference-function";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import type { TypeLetter } from "../evidence/schema";
import { toleranceAt } from "../evidence/tolerance-at";
import { type AskedTolerance, askedTolerance } from "./asked-tolerance";
import { temperatureUnitLabels } from "./labels";
import type { Setpoint } from "./setpoint";

type Line = AskedTolerance & {
  readonly typeLetter: TypeLetter;
  readonly setpoints: readonly Setpoint[];
};

type LineProblem = { readonly field: "setpoints" | "tolerance" | "ownLimit"; readonly message: string };

/** What no laboratory could do: temperatures where the type is not defined, a class that says nothing at any of them. */
export const lineProblems = (line: Line): readonly LineProblem[] => {
  const unit = temperatureUnitLabels[line.temperatureUnit];
  const range = temperatureRange(referenceFunctions[line.typeLetter]);
  const beyond = line.setpoints.filter(
    (setpoint) => setpoint.celsius < range.fromCelsius || setpoint.celsius > range.toCelsius,
  );
  const problems: LineProblem[] = [];
  if (beyond.length > 0)
    problems.push({
      field: "setpoints",
      message: `${beyond.map((setpoint) => `${setpoint.typed} ${unit}`).join(", ")}: type ${line.typeLetter} is defined from ${range.fromCelsius} to ${range.toCelsius} °C only.`,
    });
  const classMessage = classProblem(line);
  if (line.tolerance === "own" && askedTolerance(line) === null)
    problems.push({
      field: "ownLimit",
      message: `Write the limit in ${unit}, e.g. 2.5 for ± 2.5 ${unit}.`,
    });
  if (classMessage) problems.push({ field: "tolerance", message: classMessage });
  return problems;
};

const classProblem = (line: Line): string | null => {
  const asked = askedTolerance(line);
  if (asked === null) return null;
  const [first, ...rest] = line.setpoints.map(({ celsius }) => toleranceAt(asked, line.typeLetter, celsius));
  if (first?.kind !== "not-defined" || rest.some((at) => at.kind === "defined")) return null;
  const where = line.temperatureUnit === "F" ? `At ${line.setpoints[0]?.typed} °F: ` : "";
  return `${where}${first.reason}, so it would say nothing at any of these setpoints. Choose another class, or none.`;
};
