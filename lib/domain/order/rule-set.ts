import { ok, type Result, refuse } from "../refusal";
import { type TemperatureUnit, temperatureUnitLabels } from "./labels";
import type { Setpoint } from "./setpoint";
import type { UseTerms } from "./use-terms";

/** The set of rules a customer is audited by, and what it asks beyond the order itself. */
export const ruleSets = ["none", "audited-heat-treatment"] as const;
export type RuleSet = (typeof ruleSets)[number];
export const ruleSetLabels: Readonly<Record<RuleSet, string>> = {
  none: "None",
  "audited-heat-treatment": "Audited heat treatment",
};

/**
 * What the laboratory does under the set. The figure of the largest interval is no constant here: each line states it
 * with the edition it was taken from, since the standard is bought and what stands in the choices is from memory.
 */
export const ruleSetPhrases: Readonly<Record<RuleSet, readonly string[]>> = {
  none: [],
  "audited-heat-treatment": [
    "Each line states its largest interval between setpoints, and keeps to it",
    "Each sensor names its lot and its roll; of a roll both ends are measured",
    "Nothing is stated beyond the lowest and the highest calibrated setpoint: tables end there",
  ],
};

type RuledLine = {
  readonly temperatureUnit: TemperatureUnit;
  readonly setpoints: readonly Setpoint[];
  readonly useTerms: UseTerms;
};
type RuledProblem = {
  readonly field: "intervalChoice" | "setpoints" | "useTo";
  readonly message: string;
};

// Half a millikelvin: 250 °F apart is 138.8…9 °C, and no setpoint is meant more finely than that.
const SLACK_CELSIUS = 0.0005;

/** What the set asks of a line and the line does not keep, at its field. */
export const ruleSetProblems = (ruleSet: RuleSet, line: RuledLine): readonly RuledProblem[] => {
  if (ruleSet === "none") return [];
  const { setpoints, useTerms } = line;
  const most = useTerms.largestIntervalCelsius;
  if (most === null)
    return [
      {
        field: "intervalChoice",
        message: "The rule set asks for a largest interval between setpoints. Choose where it comes from.",
      },
    ];
  const wide = setpoints.find((one, index) => {
    const next = setpoints[index + 1];
    return next !== undefined && next.celsius - one.celsius > most + SLACK_CELSIUS;
  });
  const after = wide && setpoints[setpoints.indexOf(wide) + 1];
  const unit = temperatureUnitLabels[line.temperatureUnit];
  const [lowest, highest] = [setpoints[0], setpoints.at(-1)];
  const isBeyond =
    lowest && highest && useTerms.useFromCelsius !== null && useTerms.useToCelsius !== null
      ? lowest.celsius > useTerms.useFromCelsius + SLACK_CELSIUS ||
        highest.celsius < useTerms.useToCelsius - SLACK_CELSIUS
      : false;
  return [
    ...(wide && after
      ? [
          {
            field: "setpoints" as const,
            message: `${wide.typed} and ${after.typed} ${unit} lie further apart than the rule set allows. Add a setpoint between them.`,
          },
        ]
      : []),
    ...(isBeyond
      ? [
          {
            field: "useTo" as const,
            message:
              "The range of use reaches beyond the setpoints, and the rule set allows no extrapolation. Add setpoints at its ends, or narrow it.",
          },
        ]
      : []),
  ];
};

type Identity = {
  readonly serial: string;
  readonly build: { readonly lot?: string | undefined; readonly roll?: string | undefined };
};

/** Intake under the set: a sensor whose lot or roll nobody knows proves nothing for its roll. */
export const decideRuleSetIntake = (ruleSet: RuleSet, sensors: readonly Identity[]): Result<"identified"> => {
  if (ruleSet === "none") return ok("identified");
  const withoutLot = sensors.filter(({ build }) => !build.lot);
  const withoutRoll = sensors.filter(({ build }) => !build.roll);
  const open = sensors.filter((one) => withoutLot.includes(one) || withoutRoll.includes(one));
  return open.length === 0
    ? ok("identified")
    : refuse(
        "rule",
        `This order is under “${ruleSetLabels[ruleSet]}”: write lot and roll of ${open.map(({ serial }) => serial).join(", ")}. Nothing was stored.`,
        {
          ...(withoutLot.length > 0 ? { lot: "The lot is needed under this rule set." } : {}),
          ...(withoutRoll.length > 0 ? { roll: "The roll is needed under this rule set." } : {}),
        },
      );
};
