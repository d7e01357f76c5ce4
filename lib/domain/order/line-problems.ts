import { tolerance } from "@/lib/metrology/conformity/tolerance";
import { temperatureRange } from "@/lib/metrology/thermocouple/reference-function";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import type { TypeLetter } from "../evidence/schema";
import { type TemperatureUnit, type ToleranceChoice, temperatureUnitLabels } from "./labels";
import type { Setpoint } from "./setpoint";

type Line = {
  readonly typeLetter: TypeLetter;
  readonly temperatureUnit: TemperatureUnit;
  readonly setpoints: readonly Setpoint[];
  readonly tolerance: ToleranceChoice;
};

type LineProblem = { readonly field: "setpoints" | "tolerance"; readonly message: string };

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
  if (classMessage) problems.push({ field: "tolerance", message: classMessage });
  return problems;
};

const classProblem = ({ typeLetter, tolerance: choice, setpoints }: Line): string | null => {
  if (choice === "none") return null;
  const [first, ...rest] = setpoints.map(({ celsius }) => tolerance(typeLetter, choice, celsius));
  if (first?.kind !== "not-defined" || rest.some((at) => at.kind === "defined")) return null;
  return `${first.reason}, so it would say nothing at any of these setpoints. Choose another class, or none.`;
};
