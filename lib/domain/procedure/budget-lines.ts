import type { BudgetInputs } from "../run/budget-inputs";

type SensorInputs = NonNullable<BudgetInputs["sensors"]["K"]>;
type Shared = "referenceRepeatability" | "heaterPickup" | "stability";
type OfSensor = "repeatability" | "inhomogeneity" | "lead";
export type BudgetLine = BudgetInputs[Shared] | SensorInputs[OfSensor];

/** Where a line stands in the budget's inputs, such as "sensors.K.lead", and what people call it. */
export type NamedLine = { readonly place: string; readonly label: string; readonly line: BudgetLine };

export const sharedLines: readonly (readonly [Shared, string])[] = [
  ["referenceRepeatability", "Repeatability of the references"],
  ["heaterPickup", "Heater pick-up"],
  ["stability", "Stability within the window"],
];

export const sensorLines: readonly (readonly [OfSensor, string])[] = [
  ["repeatability", "Repeatability"],
  ["inhomogeneity", "Inhomogeneity"],
  ["lead", "Lead"],
];

type Letter = keyof BudgetInputs["sensors"];

export const lettersOf = (budget: BudgetInputs): readonly Letter[] =>
  (Object.keys(budget.sensors) as Letter[]).toSorted();

/** The figures that differ from laboratory to laboratory, in the order the form shows them. */
export const budgetLines = (budget: BudgetInputs): readonly NamedLine[] => [
  ...sharedLines.map(([key, label]) => ({ place: key, label, line: budget[key] })),
  ...lettersOf(budget).flatMap((letter) => {
    const inputs = budget.sensors[letter];
    if (!inputs) return [];
    return sensorLines.map(([key, label]) => ({
      place: `sensors.${letter}.${key}`,
      label: `Type ${letter}: ${label.toLowerCase()}`,
      line: inputs[key],
    }));
  }),
];

export const correlationPlaces = [
  ["voltmeter", "Voltmeter, between the readings of reference and sensor"],
  ["junction", "Reference junction, between reference and sensor"],
  ["references.calibration", "References: their certificates"],
  ["references.drift", "References: their drift"],
  ["references.own", "References: what each has of its own"],
] as const;
export type CorrelationPlace = (typeof correlationPlaces)[number][0];
