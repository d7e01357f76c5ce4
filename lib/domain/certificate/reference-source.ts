import { isWithinIecRange } from "@/lib/metrology/thermocouple/is-within-iec-range";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import type { MeasuredPoint } from "../evidence/evaluation";
import { type Said, say } from "./catalogue/message";

type Place = Pick<MeasuredPoint, "type" | "nominalCelsius">;

const standard = "IEC 60584-1:2013";
const monograph = "NIST Monograph 175";

/** IEC 60584-1:2013 restricts type K to 1300 °C; the function above it stands in NIST Monograph 175 alone. */
export const isBeyondStandard = ({ type, nominalCelsius }: Place): boolean =>
  !isWithinIecRange(referenceFunctions[type], nominalCelsius);

/** Said in the row of such a point. */
export const beyondStandard = say("row.beyond-standard", { monograph, standard });

/** Where the reference functions of these points stand; `at` writes a temperature as the results do. */
export const referenceSource = (points: readonly Place[], at: (celsius: number) => string): Said => {
  const beyond = points.filter(isBeyondStandard);
  if (beyond.length === 0) return standard;
  if (beyond.length === points.length) return monograph;
  const listed = beyond.map(({ nominalCelsius }) => at(nominalCelsius)).join(", ");
  return say("source.mixed", { standard, points: listed, monograph });
};
