import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { certifiedRange, deviationOf } from "../evidence/reference-correction";
import type { Evidence, TypeLetter } from "../evidence/schema";
import { composeEvidence, type EvidenceParts } from "../run/compose-evidence";
import type { Protection } from "./labels";

/** What a run would be measured with, as it stands today: everything the budget draws on but the readings. */
export type Bench = Pick<
  EvidenceParts,
  "budget" | "configuration" | "references" | "voltmeter" | "scanner"
> & {
  readonly junction: EvidenceParts["places"][number]["junction"];
  /** What the furnace reaches. */
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
};

type Reference = Bench["references"][number];

export type AskedPoint = {
  readonly typeLetter: TypeLetter;
  readonly protection: Protection;
  readonly celsius: number;
};

/** Two, as the procedure loads them; fewer where no more is certified there. */
const REFERENCES = 2;

/** The references certified at the temperature; those that may stand beside base metal first. */
export const referencesFor = (bench: Bench, celsius: number): readonly Reference[] => {
  const there = bench.references.filter(({ correction }) => {
    const { fromCelsius, toCelsius } = certifiedRange(correction);
    return celsius >= fromCelsius && celsius <= toCelsius;
  });
  const isSheathed = ({ protection }: Reference) => protection === "alumina-sheath";
  return [...there.filter(isSheathed), ...there.filter((one) => !isSheathed(one))].slice(0, REFERENCES);
};

const SECONDS = [0, 10, 20] as const;

const readings = (channel: string, microvolt: number) => ({
  channel,
  seconds: [...SECONDS],
  microvolts: SECONDS.map(() => microvolt),
  polarity: SECONDS.map((): 1 => 1),
});

/**
 * A run that has not been measured: one sensor exactly on its reference function, references exactly on their
 * certificates, furnace exactly at the setpoint. Evaluated, it gives the U that the point can be expected to have, by the
 * same lines and the same code as the result later. Null where a reference function ends before the setpoint.
 */
export const idealRun = (
  bench: Bench,
  references: readonly Reference[],
  { typeLetter, protection, celsius }: AskedPoint,
): Evidence | null => {
  const { junction, budget } = bench;
  const indicated = (type: Reference["type"], deviation: number): number | null => {
    const hot = emf(referenceFunctions[type], celsius);
    const cold = emf(referenceFunctions[type], junction.celsius);
    return hot.ok && cold.ok ? hot.value + deviation - cold.value : null;
  };
  const sensor = indicated(typeLetter, 0);
  const read = references.map((reference) => {
    const deviation = deviationOf(reference.correction, referenceFunctions[reference.type])(celsius).value;
    return indicated(reference.type, deviation);
  });
  if (sensor === null || read.some((one) => one === null)) return null;
  const place = (name: string, item: EvidenceParts["places"][number]["item"], channel = name) => ({
    place: name,
    item,
    channel,
    junction,
    tipCheckRiseMicrovolt: null,
  });
  const { zero } = budget.comparison;
  const shorted = zero.kind === "shorted-channel" ? [zero.channel] : [];
  return composeEvidence({
    ...bench,
    run: { number: "expected", startedAt: null },
    laboratory: "",
    // Corrections move readings, not U.
    voltmeter: { ...bench.voltmeter, corrections: [] },
    references,
    sensors: [
      {
        id: "sensor",
        serial: "expected",
        type: typeLetter,
        construction: "",
        protection,
        tolerance: null,
        decisionRule: { kind: "none" },
        uncertaintyDigits: 2,
      },
    ],
    places: [
      place("sensor", { kind: "sensor", id: "sensor" }),
      ...references.map(({ id }, i) => place(`reference ${i + 1}`, { kind: "reference", id })),
      ...shorted.map((channel) => place("zero", { kind: "shorted" }, channel)),
    ],
    setpoints: [{ id: "setpoint", nominalCelsius: celsius }],
    channels: [
      readings("sensor", sensor),
      ...read.map((microvolt, i) => readings(`reference ${i + 1}`, microvolt as number)),
      ...shorted.map((channel) => readings(channel, 0)),
    ],
    windows: [{ setpoint: "setpoint", fromSeconds: 0, toSeconds: 20 }],
    states: [],
  });
};
