import type { SensorBuild } from "../sensor/build";
import type { Grounding, Polarity, TypeCheck } from "../sensor/labels";
import { expectedLoop } from "./expected-loop";
import type { IntakeFinding } from "./findings";
import type { IntakePolicy } from "./policy";

export type MeasuredAtIntake = {
  readonly loopResistanceOhm: number | null;
  readonly insulationMegaohm: number | null;
  readonly polarity: Polarity;
  readonly typeCheck: TypeCheck;
  readonly grounding: Grounding;
  readonly build: SensorBuild;
};

const figure = (value: number): string => String(Number(value.toPrecision(3)));

const loop = (policy: IntakePolicy, typeLetter: string, sensor: MeasuredAtIntake): IntakeFinding => {
  const check = "loop-resistance";
  const ohm = sensor.loopResistanceOhm;
  if (ohm === null) return { check, verdict: "not-checked", words: "loop resistance not measured" };
  if (ohm > policy.largestLoopOhm)
    return {
      check,
      verdict: "outside",
      words: `loop resistance ${ohm} Ω is above ${policy.largestLoopOhm} Ω`,
    };
  const expected = expectedLoop(policy, typeLetter, sensor.build);
  if (!expected)
    return { check, verdict: "no-limit", words: `loop resistance ${ohm} Ω, wire or length not stated` };
  const { loopTolerancePercent: percent } = policy;
  const least = expected.ohm * (1 - percent / 100);
  const most = expected.isLeast ? Number.POSITIVE_INFINITY : expected.ohm * (1 + percent / 100);
  const against = expected.isLeast
    ? `at least ${figure(expected.ohm)} Ω − ${percent} %, its lead not counted`
    : `expected ${figure(expected.ohm)} Ω ± ${percent} %`;
  return {
    check,
    verdict: ohm < least || ohm > most ? "outside" : "within",
    words: `loop resistance ${ohm} Ω, ${against}`,
  };
};

const insulation = (policy: IntakePolicy, sensor: MeasuredAtIntake): IntakeFinding => {
  const check = "insulation";
  const megaohm = sensor.insulationMegaohm;
  if (megaohm === null) return { check, verdict: "not-checked", words: "insulation not measured" };
  // Wires welded to the sheath, or bare ones, have no insulation to it.
  if (sensor.grounding === "grounded" || sensor.grounding === "exposed")
    return {
      check,
      verdict: "no-limit",
      words: `insulation ${megaohm} MΩ; its junction is ${sensor.grounding}`,
    };
  const { isUsed } = sensor.build;
  const limits = policy.leastInsulationMegaohm;
  const least = isUsed === undefined ? limits.notKnown : isUsed ? limits.used : limits.new;
  return megaohm < least
    ? { check, verdict: "outside", words: `insulation ${megaohm} MΩ is below ${least} MΩ` }
    : { check, verdict: "within", words: `insulation ${megaohm} MΩ, at least ${least} MΩ` };
};

const polarity: Readonly<Record<Polarity, IntakeFinding>> = {
  ok: { check: "polarity", verdict: "within", words: "polarity is correct" },
  reversed: { check: "polarity", verdict: "outside", words: "polarity is reversed" },
  "not-checked": { check: "polarity", verdict: "not-checked", words: "polarity not checked" },
};

const type: Readonly<Record<TypeCheck, IntakeFinding>> = {
  ok: { check: "type", verdict: "within", words: "it reads as the type ordered" },
  "other-type": { check: "type", verdict: "outside", words: "it reads as another type than ordered" },
  "not-checked": { check: "type", verdict: "not-checked", words: "type not checked" },
};

/** Each check of a sensor held against the laboratory's policy. None refuses the sensor: it is here, and the record says how it came. */
export const assessIntake = (
  policy: IntakePolicy,
  typeLetter: string,
  sensor: MeasuredAtIntake,
): readonly IntakeFinding[] => [
  loop(policy, typeLetter, sensor),
  insulation(policy, sensor),
  polarity[sensor.polarity],
  type[sensor.typeCheck],
];
