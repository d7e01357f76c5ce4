import { tolerance } from "@/lib/metrology/conformity/tolerance";
import type { EvidenceFinding } from "../evaluation";
import type { FindingInput } from "./finding-input";

const TOLERANCES = 2;

/** A sensor twice beyond class 2 is more often a mistake in the set-up than a bad sensor. */
export function findLargeDeviations({ evidence, points }: FindingInput): EvidenceFinding[] {
  return points.flatMap((point) => {
    if (point.state !== "measured") return [];
    const limit = tolerance(point.type, "2", point.nominalCelsius);
    if (limit.kind === "not-defined" || Math.abs(point.errorCelsius) <= TOLERANCES * limit.celsius) return [];
    const index = evidence.sensors.findIndex(({ id }) => id === point.sensor);
    return [
      {
        code: "deviation-large",
        path: `sensors[${index}]`,
        message: `Sensor ${point.sensor} is off by ${point.printed.errorCelsius} °C at setpoint ${point.setpoint}, more than twice the class 2 tolerance of ${limit.celsius} °C: check its channel, type, polarity and immersion.`,
      },
    ];
  });
}
