import type { CertificateContent } from "@/lib/domain/certificate/content";
import { lowered, type Said, together, type Words } from "./words";

type Roll = NonNullable<CertificateContent["rolls"]>["of"][number];

/** Over each table: which roll, and which pieces come from which of its ends. */
export const rollHeading = ({ roll, firstEnd, secondEnd }: Roll, { caption, sentence }: Words): Said =>
  together(
    " · ",
    sentence(roll),
    together(" ", lowered(caption("firstEnd")), [firstEnd.join(", ")]),
    together(" ", lowered(caption("secondEnd")), [secondEnd.join(", ")]),
  );

/** In the unit ordered. */
export const rollUnit = ({ rows }: Roll): "°C" | "°F" => (rows[0]?.fahrenheit ? "°F" : "°C");

export const rollFigures = [
  ["firstEnd", "firstEnd"],
  ["secondEnd", "secondEnd"],
  ["averageError", "average"],
  ["halfRange", "halfRange"],
] as const;

export const rollFigure = (
  { celsius, fahrenheit }: Roll["rows"][number],
  key: (typeof rollFigures)[number][1],
): string => (fahrenheit ?? celsius)[key];
