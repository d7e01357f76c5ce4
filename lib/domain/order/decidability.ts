import { decidability } from "@/lib/metrology/conformity/decidability";
import { decidableClasses } from "@/lib/metrology/conformity/decidable-classes";
import type { ConformityRule } from "@/lib/metrology/conformity/guard-band";
import { roundHalfEven } from "@/lib/metrology/number/decimal";
import { roundUncertainty } from "@/lib/metrology/reporting/round-uncertainty";
import { typeset } from "@/lib/metrology/reporting/typeset";
import type { DecisionRule, ToleranceRef, TypeLetter } from "../evidence/schema";
import { publishedSetOf, toleranceAt } from "../evidence/tolerance-at";
import { type AskedTolerance, askedTolerance } from "./asked-tolerance";
import type { ExpectedUncertainty } from "./expected-uncertainty";
import { type TemperatureUnit, temperatureUnitLabels } from "./labels";
import type { Setpoint } from "./setpoint";
import { toleranceText } from "./setpoint-tolerances";

export type PointDecidability = {
  readonly position: number;
  /** "600 °F". */
  readonly setpoint: string;
  /** `no-question`: no class, or one and no rule. `unknown`: no U can be expected. */
  readonly state: "decidable" | "not-decidable" | "no-tolerance-defined" | "no-question" | "unknown";
  /** "about 1.8 °C", or "" where none can be expected. */
  readonly expected: string;
  /** The whole of it in one sentence. */
  readonly sentence: string;
  /** What would make it decidable; empty where it is. */
  readonly help: readonly string[];
};

type Line = AskedTolerance & {
  readonly position: number;
  readonly typeLetter: TypeLetter;
  readonly setpoints: readonly Setpoint[];
};

const ruleName: Readonly<Record<DecisionRule["kind"], string>> = {
  none: "no decision rule",
  simple: "simple acceptance",
  guarded: "guarded acceptance",
  "guarded-binary": "guarded acceptance, pass or fail",
  "target-risk": "guarded acceptance by target risk",
};

/** A difference in the customer's unit, to two digits and as many more as are asked for: "1.8 °C". */
const size = (celsius: number, unit: TemperatureUnit, more = 0): string => {
  const inUnit = unit === "F" ? celsius * 1.8 : celsius;
  const rounded = roundUncertainty(inUnit, 2);
  if (!rounded.ok) return `0 ${temperatureUnitLabels[unit]}`;
  const text =
    more === 0 ? rounded.value.text : roundHalfEven(inUnit, Math.max(0, rounded.value.decimals + more));
  return `${typeset(text)} ${temperatureUnitLabels[unit]}`;
};

/** How many digits more two sizes need to be told apart; two that differ less than that are written as they are. */
const moreToTell = (one: number, other: number, unit: TemperatureUnit): number =>
  [0, 1, 2].find((more) => {
    const [left, right] = [size(one, unit, more), size(other, unit, more)];
    return Number.parseFloat(left) !== Number.parseFloat(right);
  }) ?? 0;

/** A tolerance as it is written: no digit lost, none added beyond the hundredth. */
const limit = (celsius: number, unit: TemperatureUnit): string =>
  `± ${toleranceText(celsius, unit).replace(/\.?0+$/, "")} ${temperatureUnitLabels[unit]}`;

/** IEC numbers its classes, E230 names them. */
const className = (toleranceClass: string): string =>
  /^\d$/.test(toleranceClass) ? `class ${toleranceClass}` : `${toleranceClass} tolerances`;

const nameOf = (ref: ToleranceRef): string =>
  "kind" in ref
    ? "own limit"
    : `${ref.standard === "IEC 60584-1:2013" ? "" : `${ref.standard} `}${className(ref.class)}`;

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
  const { temperatureUnit: unit, typeLetter, position } = line;
  const ref = askedTolerance(line);
  const setpoint = `${typeset(typed.replace(/^\+/, ""))} ${temperatureUnitLabels[unit]}`;
  const where = `Type ${typeLetter} at ${setpoint}`;
  const aboutWith = (more: number) =>
    expected.kind === "expected" ? `about ${size(expected.expandedCelsius, unit, more)}` : "";
  const about = aboutWith(0);
  const base = { position, setpoint, expected: about, help: [] };
  const uClause =
    expected.kind === "expected" ? `; U ${about}` : `; what U to expect is not known: ${expected.reason}`;
  if (ref === null)
    return {
      ...base,
      state: "no-question",
      sentence: `${where}: no statement of conformity is asked for${uClause}`,
    };
  const tolerance = toleranceAt(ref, typeLetter, celsius);
  if (tolerance.kind === "not-defined")
    return {
      ...base,
      state: "no-tolerance-defined",
      sentence: `${where}, ${nameOf(ref)}: no tolerance defined${uClause}`,
    };
  const within = `${where}, ${nameOf(ref)} (${limit(tolerance.celsius, unit)})`;
  // A customer's request names a class, and who takes it over agrees the rule: the class is not passed over meanwhile.
  if (rule.kind === "none")
    return {
      ...base,
      state: "no-question",
      sentence: `${within}: asked for, but no decision rule is agreed, so nothing would be stated${uClause}`,
    };
  const asked = `${within}, ${ruleName[rule.kind]}`;
  if (expected.kind === "unknown") return { ...base, state: "unknown", sentence: `${asked}${uClause}` };
  const judged = decidability(tolerance.celsius, rule, expected);
  if (!judged.ok) return { ...base, state: "unknown", sentence: `${asked}: ${judged.problem.message}` };
  const { kind, limitExpandedCelsius, limitToleranceCelsius } = judged.value;
  if (kind === "decidable") return { ...base, state: kind, sentence: `${asked}: decidable${uClause}` };
  // "U about 2.0 °F; a U below 2.0 °F would help" tells nobody what is missing.
  const more =
    limitExpandedCelsius === null ? 0 : moreToTell(expected.expandedCelsius, limitExpandedCelsius, unit);
  return {
    ...base,
    expected: aboutWith(more),
    state: kind,
    sentence: `${asked}: not decidable; U ${aboutWith(more)}`,
    help: helpFor(
      { ref, typeLetter, celsius, rule, unit, toleranceCelsius: tolerance.celsius },
      expected,
      limitExpandedCelsius,
      limitToleranceCelsius,
      more,
    ),
  };
};

type Wish = {
  readonly ref: ToleranceRef;
  readonly typeLetter: TypeLetter;
  readonly celsius: number;
  readonly rule: ConformityRule;
  readonly unit: TemperatureUnit;
  readonly toleranceCelsius: number;
};

/** What the laboratory could offer instead, nearest to the wish first. */
const helpFor = (
  { ref, typeLetter, celsius, rule, unit, toleranceCelsius }: Wish,
  expected: Extract<ExpectedUncertainty, { kind: "expected" }>,
  limitExpanded: number | null,
  limitTolerance: number,
  more: number,
): readonly string[] => {
  const set = publishedSetOf(ref);
  const classes = set && decidableClasses(set, typeLetter, celsius, rule, expected);
  const offered = classes?.ok
    ? classes.value.map((one) => `${className(one.toleranceClass)} (${limit(one.toleranceCelsius, unit)})`)
    : [];
  const smaller =
    limitExpanded === null
      ? []
      : [
          `a U below ${size(limitExpanded, unit, more)}: most of it now comes from “${expected.dominant}” (${expected.configuration})`,
        ];
  const ratio = toleranceCelsius / expected.expandedCelsius;
  return [
    ...(set === null
      ? [
          `a limit wider than ± ${size(limitTolerance, unit, moreToTell(limitTolerance, toleranceCelsius, unit))}`,
        ]
      : []),
    ...(offered.length > 0 ? [`${offered.join(" or ")}, which would be decidable`] : []),
    ...smaller,
    rule.kind === "target-risk"
      ? "a larger risk of false acceptance, or simple acceptance, if the customer agrees to it"
      : `a guard band of less than ${roundHalfEven(ratio, 2)} × U, or simple acceptance, if the customer agrees to the risk`,
  ];
};
