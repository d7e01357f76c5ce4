import { assessGate } from "@/lib/domain/gate/assess-gate";
import type { GateAssessment, GateRow, GivenReason } from "@/lib/domain/gate/assessment";
import { defaultGatePolicy } from "@/lib/domain/gate/default-policy";
import type { GatePlace, GatePlan, GateSensor } from "@/lib/domain/gate/plan";
import type { EquipmentCandidate, ReferenceCandidate } from "@/lib/domain/run/load-candidates";

/** An invented run that the gate lets through without a word; each test spoils one thing. */

export const day = "2026-10-15";

const equipment = (tag: string, kind: EquipmentCandidate["kind"]): EquipmentCandidate => ({
  id: tag,
  tag,
  kind,
  state: "in-service",
  calibration: {
    certificate: `C-${tag}`,
    performedOn: "2026-02-18",
    dueOn: day,
    issuer: "Institute",
    isIssuerApproved: true,
    isRejected: false,
  },
  waiting: null,
  service: [],
});

export const reference: ReferenceCandidate = {
  ...equipment("REF-1", "reference"),
  type: "S",
  protection: "alumina-sheath",
  range: { fromCelsius: 300, toCelsius: 600 },
};

/** A new mineral-insulated type K, 3 mm, 600 mm long with a fibreglass lead. */
export const sensor: GateSensor = {
  tag: "T-1",
  type: "K",
  protection: "metal-sheath",
  orderNumber: "O-1",
  orderState: "accepted",
  providerName: null,
  orderedCelsius: [300, 400, 500, 600],
  maximumCelsius: null,
  use: { fromCelsius: 300, toCelsius: 600 },
  largestIntervalCelsius: 100,
  intervalRule: "",
  tolerance: { standard: "IEC 60584-1:2013", class: "1" },
  build: {
    sheath: "mineral-insulated",
    sheathMillimetre: 3,
    sheathMaterial: "nickel-chromium",
    lengthMillimetre: 600,
    leadInsulation: "fibreglass",
    isUsed: false,
  },
  history: { highestCelsius: null, deepestMillimetre: null },
};

const place = (name: string, kind: GatePlace["kind"], more: Partial<GatePlace>): GatePlace => ({
  place: name,
  channel: `10${name}`,
  kind,
  tag: null,
  type: null,
  junction: "ICE-1",
  junctionCelsius: 0,
  immersionMillimetre: kind === "shorted" ? null : 400,
  ...more,
});

export const plan: GatePlan = {
  run: "R-1",
  day,
  setpointsCelsius: [300, 400, 500, 600],
  configuration: {
    id: "block",
    name: "Block",
    kind: "equalising-block",
    places: 2,
    minimumCelsius: 300,
    maximumCelsius: 600,
    immersionMillimetre: 400,
    tubeMillimetre: 60,
    bores: [{ place: "2", diameterMillimetre: 3.5 }],
    furnaceProblem: null,
    characterisation: { performedOn: "2026-03-10", validUntil: day },
  },
  places: [
    place("1", "reference", { tag: "REF-1", type: "S" }),
    place("2", "sensor", { tag: "T-1", type: "K" }),
    place("3", "shorted", {}),
  ],
  sensors: [sensor],
  references: [reference],
  voltmeter: equipment("VM-1", "voltmeter"),
  scanner: equipment("SC-1", "scanner"),
  junctions: [equipment("ICE-1", "junction")],
  leads: [],
  junctionThermometers: [equipment("PRT-1", "reference")],
  procedure: { name: "Comparison, revision 2", state: "current" },
  bench: {
    warmUpHours: 1,
    shortedZeroMicrovolt: -1,
    channels: [
      { channel: "101", microvolt: 1 },
      { channel: "102", microvolt: -2 },
      { channel: "103", microvolt: 1 },
    ],
    voltagePoint: { appliedMicrovolt: 10500.2, readMicrovolt: 10502.2 },
    junctions: [{ junction: "ICE-1", statedCelsius: 0, thermometerCelsius: 0.03, thermometer: "PRT-1" }],
  },
  tips: [
    { place: "1", check: { riseMicrovolt: 20, onlyThisChannel: true } },
    { place: "2", check: { riseMicrovolt: 20, onlyThisChannel: true } },
  ],
  otherRuns: [],
  lastTime: null,
};

export const withSensor = (more: Partial<GateSensor>): Partial<GatePlan> => ({
  sensors: [{ ...sensor, ...more }],
  // Another type stands in the place's own record too.
  ...(more.type
    ? { places: plan.places.map((one) => (one.kind === "sensor" ? { ...one, type: more.type! } : one)) }
    : {}),
});
export const withBuild = (more: Partial<GateSensor["build"]>): Partial<GatePlan> =>
  withSensor({ build: { ...sensor.build, ...more } });
export const withBench = (more: Partial<GatePlan["bench"]>): Partial<GatePlan> => ({
  bench: { ...plan.bench, ...more },
});
export const withConfiguration = (more: Partial<GatePlan["configuration"]>): Partial<GatePlan> => ({
  configuration: { ...plan.configuration, ...more },
});
/** Fields set to undefined are left out, as a form that says nothing leaves them. */
export const unstated = <K extends keyof GateSensor["build"]>(...keys: readonly K[]): Partial<GatePlan> =>
  withSensor({
    build: Object.fromEntries(
      Object.entries(sensor.build).filter(([key]) => !keys.some((one) => one === key)),
    ),
  });

export const assessed = (more: Partial<GatePlan> = {}, given: readonly GivenReason[] = []): GateAssessment =>
  assessGate({ ...plan, ...more }, defaultGatePolicy, given);

export const rowsOf = (assessment: GateAssessment): readonly GateRow[] =>
  assessment.headings.flatMap(({ rows }) => rows);

/** What the gate complains of: "code severity subject,subject". */
export const complaints = (more: Partial<GatePlan>, given: readonly GivenReason[] = []): readonly string[] =>
  rowsOf(assessed(more, given))
    .filter(({ severity }) => severity !== "ok")
    .map(({ code, severity, subjects }) => [code, severity, subjects.join(",")].join(" ").trim());
