import { isWithinIecRange } from "@/lib/metrology/thermocouple/is-within-iec-range";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import type { EvidenceFinding } from "../evaluation";
import type { FindingInput } from "./finding-input";

/** A result of type K above 1300 °C is no result against IEC 60584-1:2013, though the function goes on. */
export function findBeyondStandard({ evidence, points }: FindingInput): EvidenceFinding[] {
  return points.flatMap((point) => {
    const reference = referenceFunctions[point.type];
    if (point.state !== "measured" || isWithinIecRange(reference, point.nominalCelsius)) return [];
    const index = evidence.setpoints.findIndex(({ id }) => id === point.setpoint);
    return [
      {
        code: "beyond-iec-60584-1",
        path: `setpoints[${index}].nominalCelsius`,
        message: `Setpoint ${point.setpoint} lies outside the range that IEC 60584-1:2013 gives type ${point.type} (to ${reference.iecRange?.toCelsius} °C): the deviation of sensor ${point.sensor} there is from the function of NIST Monograph 175, and no tolerance of the standard holds.`,
      },
    ];
  });
}
