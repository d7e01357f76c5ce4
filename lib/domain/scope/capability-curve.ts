import { capabilityAt } from "@/lib/metrology/reporting/capability-at";
import type { StoredScopeLine } from "./line";

type Ranged = Pick<StoredScopeLine, "capability" | "fromCelsius" | "toCelsius">;
type At = { readonly celsius: number; readonly expandedCelsius: number };

const at = ({ capability }: Ranged, celsius: number): At[] => {
  const value = capabilityAt(capability, celsius);
  return value.ok ? [{ celsius, expandedCelsius: value.value }] : [];
};

/** The line in `steps` equal steps, with the points of its table where it is one: what a drawing joins. */
export const capabilityCurve = (line: Ranged, steps = 60): readonly At[] => {
  const { capability, fromCelsius, toCelsius } = line;
  const even = Array.from({ length: steps + 1 }, (_, step) =>
    step === steps ? toCelsius : fromCelsius + ((toCelsius - fromCelsius) * step) / steps,
  );
  const own = capability.kind === "table" ? capability.points.map(({ celsius }) => celsius) : [];
  const within = own.filter((celsius) => celsius > fromCelsius && celsius < toCelsius);
  return [...new Set([...even, ...within])].toSorted((a, b) => a - b).flatMap((celsius) => at(line, celsius));
};

/** The ends and each whole hundred between: what a table shows. */
export const capabilityRows = (line: Ranged): readonly At[] => {
  const { fromCelsius, toCelsius } = line;
  const first = Math.floor(fromCelsius / 100) * 100 + 100;
  const hundreds = Array.from(
    { length: Math.max(0, Math.ceil((toCelsius - first) / 100)) },
    (_, i) => first + i * 100,
  );
  return [fromCelsius, ...hundreds, toCelsius].flatMap((celsius) => at(line, celsius));
};
