import { buildLines } from "../sensor/build-draft";
import { conditionLabels, groundingLabels, polarityLabels, typeCheckLabels } from "../sensor/labels";
import type { SensorAtIntake } from "../sensor/schema";

export type Fact = { readonly label: string; readonly value: string };

const withUnit = (value: number | null, unit: string): string => (value === null ? "" : `${value} ${unit}`);

/** Everything a sensor of a list says of itself, line by line; not stated = empty. */
const factsOf = (sensor: SensorAtIntake): readonly Fact[] => [
  { label: "Condition", value: conditionLabels[sensor.condition] },
  { label: "What deviates", value: sensor.conditionNote },
  { label: "Loop resistance", value: withUnit(sensor.loopResistanceOhm, "Ω") },
  { label: "Insulation", value: withUnit(sensor.insulationMegaohm, "MΩ") },
  { label: "Polarity", value: polarityLabels[sensor.polarity] },
  { label: "Type check", value: typeCheckLabels[sensor.typeCheck] },
  { label: "Junction", value: groundingLabels[sensor.grounding] },
  ...buildLines(sensor.build),
];

export type SharedAndOwn = {
  /** What all of them have in common. */
  readonly shared: readonly Fact[];
  /** Sensor by sensor, in their order, what is not common to all. */
  readonly own: readonly (readonly Fact[])[];
};

/** What sensors of a line share, and what each differs in. */
export const sharedAndOwn = (sensors: readonly SensorAtIntake[]): SharedAndOwn => {
  const facts = sensors.map(factsOf);
  const [first = []] = facts;
  const isShared = first.map(({ value }, at) => facts.every((each) => each[at]?.value === value));
  return {
    shared: first.filter(({ value }, at) => isShared[at] && value !== ""),
    own: facts.map((each) => each.filter(({ value }, at) => !isShared[at] && value !== "")),
  };
};
