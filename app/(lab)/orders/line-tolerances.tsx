import { TypeLetter } from "@/lib/domain/evidence/schema";
import { type TemperatureUnit, type ToleranceChoice, toleranceLabels } from "@/lib/domain/order/labels";
import { readSetpoints } from "@/lib/domain/order/setpoint";
import { setpointTolerances } from "@/lib/domain/order/setpoint-tolerances";
import type { LineDraft } from "./line-draft";

const limitOf = (typed: string): number | null => (/^\d+(\.\d+)?$/.test(typed.trim()) ? Number(typed) : null);

/** What the chosen class or limit says at each setpoint, while it is typed. */
export function LineTolerances({ line }: { readonly line: LineDraft }) {
  const typeLetter = TypeLetter.safeParse(line.typeLetter);
  const temperatureUnit = line.temperatureUnit as TemperatureUnit;
  const read = readSetpoints(line.setpoints, temperatureUnit);
  const tolerance = line.tolerance as ToleranceChoice;
  if (!typeLetter.success || !read.ok || read.setpoints.length === 0) return null;
  const points = setpointTolerances({
    typeLetter: typeLetter.data,
    temperatureUnit,
    setpoints: read.setpoints,
    tolerance,
    ownLimit: limitOf(line.ownLimit),
  });
  return (
    <div className="field-hint" aria-live="polite">
      {tolerance === "none" ? "Read as " : `${toleranceLabels[tolerance]} says: `}
      {points
        .map(({ setpoint, celsius, tolerance: said }) =>
          [setpoint, celsius && `(${celsius})`, said].filter(Boolean).join(" "),
        )
        .join("; ")}
      .
    </div>
  );
}
