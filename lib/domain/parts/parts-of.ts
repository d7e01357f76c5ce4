import type { MeasuredSets } from "../order/options";
import type { HandBack } from "../sensor/hand-back";
import { type SetKind, setKinds } from "./decide-set";
import { type ExternalFacts, externalPart, nextOfExternal } from "./external-parts";
import { isSameSetpoint } from "./same-setpoint";

/** Where one sensor of an order stands at one setpoint. */
export const partStates = [
  "waiting",
  "not-to-be",
  "planned",
  "measured",
  "invalid",
  "not-reached",
  "in-review",
  "kept",
  "set-aside",
  "reported",
  "withdrawn",
] as const;
export type PartState = (typeof partStates)[number];

/** A run that a sensor was or is loaded in, the earlier first. */
export type PartLoad = {
  readonly run: string;
  readonly runState: string;
  readonly set: SetKind;
  readonly setpointsCelsius: readonly number[];
  /** Of its last evaluation. */
  readonly results: readonly {
    readonly celsius: number;
    readonly state: "measured" | "invalid" | "not-reached";
  }[];
  /** How the sensor left its review, if it did. */
  readonly left: "kept" | "put-back" | null;
  /** The certificate that reports this measurement. */
  readonly certificate: string | null;
  /** That certificate is withdrawn: its results are not to be used. */
  readonly isWithdrawn?: boolean;
};

export type SensorFacts = {
  readonly tag: string;
  readonly serial: string;
  readonly state: string;
  readonly sets: MeasuredSets;
  readonly isAnnealed: boolean;
  readonly isHeld: boolean;
  /** Why it is to be handed back now; null: it is not. */
  readonly handBack: HandBack | null;
  readonly setpoints: readonly { readonly typed: string; readonly celsius: number }[];
  readonly loads: readonly PartLoad[];
  /** Where its line is subcontracted; left out: done here. */
  readonly external?: ExternalFacts;
};

export type Part = {
  readonly state: PartState;
  readonly run: string | null;
  readonly certificate: string | null;
  /** The external provider that measured it; left out: measured here. */
  readonly by?: string;
};
export type SensorParts = {
  readonly tag: string;
  readonly serial: string;
  readonly rows: readonly { readonly set: SetKind; readonly cells: readonly Part[] }[];
  readonly next: string;
};

const stateIn = (load: PartLoad, celsius: number): PartState => {
  const result = load.results.find((one) => isSameSetpoint(one.celsius, celsius));
  if (load.certificate !== null)
    return result?.state === "measured"
      ? load.isWithdrawn
        ? "withdrawn"
        : "reported"
      : (result?.state ?? "not-reached");
  if (load.left === "put-back") return "set-aside";
  if (!result) return "planned";
  if (result.state !== "measured") return result.state;
  if (load.left === "kept") return "kept";
  return load.runState === "submitted" ? "in-review" : "measured";
};

/** The last run that says anything of it; what was set aside speaks only where nothing else does. */
const partAt = (facts: SensorFacts, set: SetKind, celsius: number): Part => {
  const said = facts.loads
    .filter(
      (load) =>
        load.set === set &&
        load.runState !== "abandoned" &&
        load.setpointsCelsius.some((one) => isSameSetpoint(one, celsius)),
    )
    .map((load) => ({ state: stateIn(load, celsius), run: load.run, certificate: load.certificate }));
  return (
    said.findLast(({ state }) => state !== "set-aside") ??
    said.at(-1) ?? { state: "waiting", run: null, certificate: null }
  );
};

const setsOf = (sets: MeasuredSets): readonly SetKind[] => (sets === "both" ? setKinds : [sets]);

const handBackNext: Readonly<Record<HandBack, string>> = {
  certified: "Certified: send it back.",
  unmeasured: "Not measured, by the end of its hold: send it back.",
  cancelled: "Not measured, its order is cancelled: send it back.",
};

/** What it has is withdrawn, and nothing else was reported of it. */
const isWithdrawn = (rows: SensorParts["rows"]): boolean => {
  const states = rows.flatMap(({ cells }) => cells.map(({ state }) => state));
  return states.includes("withdrawn") && !states.includes("reported");
};

const nextOf = (facts: SensorFacts, rows: SensorParts["rows"]): string => {
  const { state } = facts;
  if (state === "collected") return "Handed back.";
  const external = facts.external ? nextOfExternal(facts.external, state) : null;
  if (state === "issued" && isWithdrawn(rows))
    return "Its certificate is withdrawn: agree with the customer before it goes back.";
  if (facts.handBack !== null)
    return facts.handBack === "certified" && external ? external : handBackNext[facts.handBack];
  if (facts.external?.isAway && state === "issued") return nextOfExternal(facts.external, state);
  if (facts.isHeld) return "On hold: settle what keeps it.";
  if (external && state === "received") return external;
  if (state === "in-review") return "Waits for the signatory.";
  if (state !== "received") return "In a run: measure, evaluate and submit it.";
  const received = rows.find(({ set }) => set === "as-received");
  const isKept = received?.cells.some((cell) => cell.state === "kept") ?? false;
  if (facts.sets !== "as-received" && !facts.isAnnealed && (facts.sets === "after-anneal" || isKept))
    return "Anneal it, then plan its next run.";
  return facts.loads.some(({ left }) => left === "put-back")
    ? "Plan another run: its earlier results were set aside."
    : "Plan a run.";
};

/** It goes back, or is gone: what was not measured never will be. */
const isOver = ({ handBack, state }: SensorFacts): boolean => handBack !== null || state === "collected";

/** State of each sensor of an order at each ordered setpoint, and what comes next for it. */
export const partsOf = (sensors: readonly SensorFacts[]): readonly SensorParts[] =>
  sensors.map((facts) => {
    const rows = setsOf(facts.sets).map((set) => ({
      set,
      cells: facts.setpoints
        .map(
          ({ celsius }): Part =>
            facts.external ? externalPart(facts.external, celsius) : partAt(facts, set, celsius),
        )
        .map(
          (part): Part =>
            part.state === "waiting" && isOver(facts) ? { ...part, state: "not-to-be" } : part,
        ),
    }));
    return { tag: facts.tag, serial: facts.serial, rows, next: nextOf(facts, rows) };
  });
