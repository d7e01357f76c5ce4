import type { z } from "zod";
import type { CalibrationInput } from "@/lib/domain/calibration/schema";
import { electrical, metrology } from "./providers";
import type { Teller } from "./teller";

type Parent = NonNullable<z.input<typeof CalibrationInput>["parents"]>[number];

/** From an accredited laboratory's standard on to the unit. */
const onwards = (unit: string): Parent[] => [
  {
    kind: "national-standard",
    title: `National standard of the ${unit.toLowerCase()}`,
    route: "nmi",
    below: 1,
  },
  { kind: "si", title: unit, route: "realisation", below: 2 },
];

/** Behind the voltmeter: volts, whatever it reads them from. All of it invented. */
export const behindVoltmeter: Parent[] = [
  {
    kind: "laboratory-standard",
    title: "Reference standard of the issuer",
    issuer: electrical.name,
    route: "accredited",
  },
  ...onwards("Volt"),
];

/** Behind our own check of the scanner: the voltmeter that read its shorted channels, about zero. */
export const behindScanner = ({ day }: Teller): Parent[] => [
  {
    kind: "laboratory-standard",
    title: "Voltmeter VM-01, about zero",
    identity: "70418",
    issuer: electrical.name,
    certificate: "CE-2207",
    route: "accredited",
    performedOn: day(232),
    validUntil: day(-133),
    expanded: 0.2,
    unit: "µV",
    coverageFactor: 2,
  },
  ...onwards("Volt"),
];

/** Behind our own check of the ice bath: the platinum thermometer that stood in it. */
export const behindIceBath = ({ day }: Teller): Parent[] => [
  {
    kind: "laboratory-standard",
    title: "Platinum thermometer PRT-01",
    identity: "P-2214",
    issuer: metrology.name,
    certificate: "NTL-26-10977",
    route: "accredited",
    performedOn: day(152),
    validUntil: day(-213),
    expanded: 0.01,
    unit: "°C",
    coverageFactor: 2,
  },
  ...onwards("Kelvin"),
];
