import { tolerance } from "@/lib/metrology/conformity/tolerance";
import { emf } from "@/lib/metrology/thermocouple/emf";
import type { ReferenceFunction } from "@/lib/metrology/thermocouple/reference-function";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import type { Bench, Mounted, Reference, Sensor } from "../bench";
import { CARRY_LIMIT_CELSIUS } from "../compare-point";
import type { EvidenceFinding } from "../evaluation";
import { referencesAt } from "../reference-stage";
import type { SetpointInWindow } from "../setpoint-windows";

/**
 * Own misfit beyond three times the class 2 tolerance, while the other's type fits three times better, on
 * both channels: types R and S, 8 °C apart at 300 °C, are then told apart down to about 250 °C.
 */
const TOLERANCES_OFF = 3;
const BETTER_BY = 3;
/** Class 2 where the standard has none at the temperature (below its range; K and N above 1200 °C). */
const TOLERANCE_ELSEWHERE_CELSIUS = 9;

type Item = Mounted<Sensor | Reference> & { readonly isReference: boolean };

/** Where the furnace is taken to be, and how far it may be from there. */
type Yardstick = { readonly celsius: number; readonly allowance: number };

/**
 * Two channels of different types, each with an emf that fits the other's type: most likely swapped.
 * Between two sensors the references tell the temperature; a reference that is itself under suspicion
 * cannot be asked, and the nominal stands in for it, with the 5 °C the furnace may be away from it.
 */
export function findSwappedChannels(bench: Bench, setpoints: readonly SetpointInWindow[]): EvidenceFinding[] {
  const items: Item[] = [
    ...bench.references.map((item) => ({ ...item, isReference: true })),
    ...bench.sensors.map((item) => ({ ...item, isReference: false })),
  ];
  const found = new Map<string, EvidenceFinding>();
  for (const at of setpoints) {
    const nominal = { celsius: at.setpoint.nominalCelsius, allowance: CARRY_LIMIT_CELSIUS };
    const measured = measuredYardstick(at) ?? nominal;
    const microvolts = items.map((item) => microvoltInWindow(item, at));
    items.forEach((a, i) => {
      items.slice(i + 1).forEach((b, offset) => {
        const key = `${a.place.channel}\n${b.place.channel}`;
        if (found.has(key) || a.item.type === b.item.type) return;
        const yardstick = a.isReference || b.isReference ? nominal : measured;
        const isSwapped =
          fitsOther(a, b, microvolts[i] ?? null, yardstick) &&
          fitsOther(b, a, microvolts[i + 1 + offset] ?? null, yardstick);
        if (isSwapped) found.set(key, report(a, b, at));
      });
    });
  }
  return [...found.values()];
}

function measuredYardstick(at: SetpointInWindow): Yardstick | null {
  const middle = (at.window.fromSeconds + at.window.toSeconds) / 2;
  const references = referencesAt(at.references, middle);
  if (!references.ok) return null;
  const isNear = Math.abs(references.value.celsius - at.setpoint.nominalCelsius) <= CARRY_LIMIT_CELSIUS;
  return isNear ? { celsius: references.value.celsius, allowance: 0 } : null;
}

function microvoltInWindow(item: Item, at: SetpointInWindow): number | null {
  const channel = at.channels.get(item.place.channel);
  return channel?.ok ? channel.value.microvolt : null;
}

/** The emf on a's channel is far from a's type and close to b's. */
function fitsOther(a: Item, b: Item, microvolt: number | null, { celsius, allowance }: Yardstick): boolean {
  if (microvolt === null) return false;
  const own = misfitCelsius(a.reference, a.junction.celsius, microvolt, celsius);
  const other = misfitCelsius(b.reference, a.junction.celsius, microvolt, celsius);
  const limit = tolerance(a.item.type, "2", celsius);
  const large = TOLERANCES_OFF * (limit.kind === "defined" ? limit.celsius : TOLERANCE_ELSEWHERE_CELSIUS);
  return own > large + allowance && Math.max(0, other - allowance) * BETTER_BY < own;
}

/** How far the emf is from what the type gives at the temperature, in °C of that type. */
function misfitCelsius(
  reference: ReferenceFunction,
  junctionCelsius: number,
  microvolt: number,
  celsius: number,
): number {
  const expected = emf(reference, celsius);
  const junction = emf(reference, junctionCelsius);
  const slope = seebeck(reference, celsius);
  if (!expected.ok || !junction.ok || !slope.ok) return Number.POSITIVE_INFINITY;
  return Math.abs(microvolt + junction.value - expected.value) / slope.value;
}

function report(a: Item, b: Item, at: SetpointInWindow): EvidenceFinding {
  const name = ({ item, place }: Item): string =>
    `channel ${place.channel} (${item.serial}, type ${item.type})`;
  return {
    code: "swapped-channels",
    path: `${a.placePath}.channel`,
    message: `At setpoint ${at.setpoint.id} ${name(a)} and ${name(b)} each fit the other's type: most likely the two channels are swapped. Check the connections; correct the load if they were swapped for the whole run.`,
  };
}
