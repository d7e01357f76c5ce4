import { decidability } from "@/lib/metrology/conformity/decidability";
import { decidableClasses } from "@/lib/metrology/conformity/decidable-classes";
import type { ConformityRule } from "@/lib/metrology/conformity/guard-band";
import { iec60584 } from "@/lib/metrology/conformity/iec-60584-1";
import { toleranceIn } from "@/lib/metrology/conformity/tolerance-in";
import { roundHalfEven } from "@/lib/metrology/number/decimal";
import { roundUncertainty } from "@/lib/metrology/reporting/round-uncertainty";
import { typeset } from "@/lib/metrology/reporting/typeset";
import type { DecisionRule, TypeLetter } from "../evidence/schema";
import type { ExpectedUncertainty } from "./expected-uncertainty";
import { type TemperatureUnit, type ToleranceChoice, temperatureUnitLabels } from "./labels";
import type { Setpoint } from "./setpoint";
import { toleranceText } from "./setpoint-tolerances";

export type PointDecidability = {
  readonly position: number;
  /** "600 °F". */
  readonly setpoint: string;
  /** `no-question`: no class or no rule. `unknown`: no U can be expected. */
  readonly state: "decidable" | "not-decidable" | "no-tolerance-defined" | "no-question" | "unknown";
  /** "about 1.8 °C", or "" where none can be expected. */
  readonly expected: string;
  /** The whole of it in one sentence. */
  readonly sentence: string;
  /** What would make it decidable; empty where it is. */
  readonly help: readonly string[];
};

type Line = {
  readonly position: number;
  readonly typeLetter: TypeLetter;
  readonly temperatureUnit: TemperatureUnit;
  readonly setpoints: readonly Setpoint[];
  readonly tolerance: ToleranceChoice;
};

const ruleName: Readonly<Record<DecisionRule["kind"], string>> = {
  none: "no decision rule",
  simple: "simple acceptance",
  guarded: "guarded acceptance",
  "guarded-binary": "guarded acceptance, pass or fail",
  "target-risk": "guarded acceptance by target risk",
};

/** A difference in the customer's unit, to two digits: "1.8 °C". */
const size = (celsius: number, unit: TemperatureUnit): string => {
  const rounded = roundUncertainty(unit === "F" ? celsius * 1.8 : celsius, 2);
  return `${rounded.ok ? typeset(rounded.value.text) : "0"} ${temperatureUnitLabels[unit]}`;
};

/** A tolerance as it is written: no digit lost, none added beyond the hundredth. */
const limit = (celsius: number, unit: TemperatureUnit): string =>
  `± ${toleranceText(celsius, unit).replace(/\.?0+$/, "")} ${temperatureUnitLabels[unit]}`;

/**
 * Whether the laboratory could say anything at a line's setpoints with the U it can expect, class and rule as asked
 * (ISO/IEC 17025:2017, 7.1.1 and 7.1.3: known before the order is accepted, not when the furnace has cooled).
 */
export const lineDecidability = (
  line: Line,
  rule: DecisionRule,
  expectedAt: (celsius: number) => ExpectedUncertainty,
): readonly PointDecidability[] =>
  line.setpoints.map((setpoint) => pointDecidability(line, setpoint, rule, expectedAt(setpoint.celsius)));

const pointDecidability = (
  line: Line,
  { typed, celsius }: Setpoint,
  rule: DecisionRule,
  expected: ExpectedUncertainty,
): PointDecidability => {
  const { temperatureUnit: unit, tolerance: toleranceClass, typeLetter, position } = line;
  const setpoint = `${typeset(typed.replace(/^\+/, ""))} ${temperatureUnitLabels[unit]}`;
  const where = `Type ${typeLetter} at ${setpoint}`;
  const about = expected.kind === "expected" ? `about ${size(expected.expandedCelsius, unit)}` : "";
  const base = { position, setpoint, expected: about, help: [] };
  const uClause =
    expected.kind === "expected" ? `; U ${about}` : `; what U to expect is not known: ${expected.reason}`;
  if (toleranceClass === "none" || rule.kind === "none")
    return {
      ...base,
      state: "no-question",
      sentence: `${where}: no statement of conformity is asked for${uClause}`,
    };
  const tolerance = toleranceIn(iec60584, typeLetter, toleranceClass, celsius);
  if (tolerance.kind === "not-defined")
    return {
      ...base,
      state: "no-tolerance-defined",
      sentence: `${where}, class ${toleranceClass}: no tolerance defined${uClause}`,
    };
  const asked = `${where}, class ${toleranceClass} (${limit(tolerance.celsius, unit)}), ${ruleName[rule.kind]}`;
  if (expected.kind === "unknown") return { ...base, state: "unknown", sentence: `${asked}${uClause}` };
  const judged = decidability(tolerance.celsius, rule, expected);
  if (!judged.ok) return { ...base, state: "unknown", sentence: `${asked}: ${judged.problem.message}` };
  const { kind, limitExpandedCelsius } = judged.value;
  const isDecidable = kind === "decidable";
  return {
    ...base,
    state: kind,
    sentence: `${asked}: ${isDecidable ? "decidable" : "not decidable"}${uClause}`,
    help: isDecidable
      ? []
      : helpFor(
          { typeLetter, celsius, rule, unit, toleranceCelsius: tolerance.celsius },
          expected,
          limitExpandedCelsius,
        ),
  };
};

type Wish = {
  readonly typeLetter: TypeLetter;
  readonly celsius: number;
  readonly rule: ConformityRule;
  readonly unit: TemperatureUnit;
  readonly toleranceCelsius: number;
};

/** What the laboratory could offer instead, nearest to the wish first. */
const helpFor = (
  { typeLetter, celsius, rule, unit, toleranceCelsius }: Wish,
  expected: Extract<ExpectedUncertainty, { kind: "expected" }>,
  limitExpanded: number | null,
): readonly string[] => {
  const classes = decidableClasses(iec60584, typeLetter, celsius, rule, expected);
  const offered = classes.ok
    ? classes.value.map((one) => `class ${one.toleranceClass} (${limit(one.toleranceCelsius, unit)})`)
    : [];
  const smaller =
    limitExpanded === null
      ? []
      : [
          `a U below ${size(limitExpanded, unit)}: most of it now comes from “${expected.dominant}” (${expected.configuration})`,
        ];
  const ratio = toleranceCelsius / expected.expandedCelsius;
  return [
    ...(offered.length > 0 ? [`${offered.join(" or ")}, which would be decidable`] : []),
    ...smaller,
    `a guard band of less than ${roundHalfEven(ratio, 2)} × U, or simple acceptance, if the customer agrees to the risk`,
  ];
};
