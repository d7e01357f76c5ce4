import type { z } from "zod";
import type { LeadInEvidence } from "../equipment/lead-evidence";
import type {
  ChannelReadings,
  ConfigurationEvidence,
  DecisionRule,
  Evidence,
  JunctionEvidence,
  LoadPlace,
  ReferenceEvidence,
  ScannerEvidence,
  SensorEvidence,
  SensorSetpointState,
  ToleranceRef,
  VoltmeterEvidence,
  WindowEvidence,
} from "../evidence/schema";
import type { BudgetInputs } from "./budget-inputs";

type Place = z.infer<typeof LoadPlace>;
type Junction = z.infer<typeof JunctionEvidence>;
type Sensor = z.infer<typeof SensorEvidence>;

/** All a run holds, already read into the evidence's own shapes; ids are tags and temperatures. */
export type EvidenceParts = {
  readonly run: { readonly number: string; readonly startedAt: Date | null };
  readonly laboratory: string;
  readonly budget: BudgetInputs;
  readonly configuration: z.infer<typeof ConfigurationEvidence>;
  readonly references: readonly z.infer<typeof ReferenceEvidence>[];
  readonly voltmeter: z.infer<typeof VoltmeterEvidence>;
  readonly scanner: z.infer<typeof ScannerEvidence>;
  readonly sensors: readonly (Pick<Sensor, "id" | "serial" | "type" | "protection"> & {
    readonly construction: string;
    readonly tolerance: ToleranceRef | null;
    /** A lead of the laboratory's between it and its junction; left out: what the procedure takes for its own. */
    readonly joined?: LeadInEvidence;
    /** Of a test of this very sensor; left out: the rule the procedure takes for its type. */
    readonly inhomogeneity?: Sensor["inhomogeneity"];
    /** As agreed in the sensor's own order: one load may hold sensors of several. */
    readonly decisionRule: DecisionRule;
    readonly uncertaintyDigits: 1 | 2;
    /** Why its results are reported outside the scope; left out: as the scope says. */
    readonly outsideScope?: string;
  })[];
  /** Each place with its junction as it stood there, its temperature included. */
  readonly places: readonly (Omit<Place, "junction"> & { readonly junction: Junction })[];
  readonly setpoints: readonly { readonly id: string; readonly nominalCelsius: number }[];
  readonly channels: readonly z.infer<typeof ChannelReadings>[];
  readonly windows: readonly z.infer<typeof WindowEvidence>[];
  readonly states: readonly z.infer<typeof SensorSetpointState>[];
  /** In force on the day of the run; left out: the laboratory states none. */
  readonly scope?: Evidence["scope"];
};

const composeSensor = (sensor: EvidenceParts["sensors"][number], budget: BudgetInputs): Sensor => {
  const inputs = budget.sensors[sensor.type];
  if (!inputs) throw new Error(`${budget.procedure} has no budget for type ${sensor.type}`);
  const given = budget.givenSensitivities?.[sensor.type];
  return {
    id: sensor.id,
    serial: sensor.serial,
    type: sensor.type,
    ...(sensor.construction ? { construction: sensor.construction } : {}),
    protection: sensor.protection,
    tolerance: sensor.tolerance,
    repeatability: inputs.repeatability,
    inhomogeneity: sensor.inhomogeneity ?? inputs.inhomogeneity,
    lead: sensor.joined?.lead ?? inputs.lead,
    ...(sensor.joined ? { cable: sensor.joined.cable } : {}),
    immersion: inputs.immersion,
    shunting: inputs.shunting,
    hysteresis: inputs.hysteresis,
    ...(inputs.deviationFunction ? { deviationFunction: inputs.deviationFunction } : {}),
    ...(sensor.outsideScope === undefined ? {} : { outsideScope: sensor.outsideScope }),
    ...(given ? { givenSensitivity: given } : {}),
    decisionRule: sensor.decisionRule,
    uncertaintyDigits: sensor.uncertaintyDigits,
  };
};

/** Each once. A junction has one temperature in a run: `decideCreate` refuses two. */
const composeJunctions = (places: EvidenceParts["places"]): Junction[] => [
  ...new Map(places.map(({ junction }) => [junction.id, junction])).values(),
];

const sourceOf = ({ budget, laboratory }: EvidenceParts): string =>
  [budget.source, `Procedure: ${budget.procedure}.`, laboratory && `Measured by ${laboratory}.`]
    .filter(Boolean)
    .join(" ");

/** The evidence of a run, from what is stored of it. Pure: the same parts give the same evidence. */
export const composeEvidence = (parts: EvidenceParts): Evidence => {
  const { budget, run } = parts;
  return {
    format: "emfolio-evidence",
    version: 2,
    title: `Run ${run.number}`,
    origin: budget.origin,
    source: sourceOf(parts),
    sensors: parts.sensors.map((sensor) => composeSensor(sensor, budget)),
    configuration: parts.configuration,
    load: parts.places.map(({ junction, ...place }) => ({ ...place, junction: junction.id })),
    references: parts.references.map((reference) => {
      const given = budget.givenSensitivities?.[reference.type];
      return given ? { ...reference, givenSensitivity: given } : reference;
    }),
    referenceRepeatability: budget.referenceRepeatability,
    heaterPickup: budget.heaterPickup,
    stability: budget.stability,
    correlation: budget.correlation,
    comparison: budget.comparison,
    coverage: budget.coverage,
    voltmeter: parts.voltmeter,
    scanner: parts.scanner,
    junctions: composeJunctions(parts.places),
    setpoints: [...parts.setpoints],
    scans: {
      ...(run.startedAt ? { startedAt: run.startedAt.toISOString() } : {}),
      channels: [...parts.channels],
    },
    windows: [...parts.windows],
    states: [...parts.states],
    sensitivities: budget.sensitivities,
    coverageProbability: 0.9545,
    ...(parts.scope ? { scope: parts.scope } : {}),
    // Every sensor says its own; these stand for the load, which the format asks for.
    decisionRule: parts.sensors[0]?.decisionRule ?? { kind: "none" },
    rounding: { uncertaintyDigits: parts.sensors[0]?.uncertaintyDigits ?? 2 },
  };
};
