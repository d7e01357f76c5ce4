import { gapWords } from "@/lib/domain/equipment/record-gaps";
import type { Equipment } from "@/lib/domain/equipment/types";

const units = { celsius: "°C", microvolt: "µV" } as const;

const range = ({ fromCelsius, toCelsius }: Equipment["requirement"]): string =>
  fromCelsius === undefined && toCelsius === undefined
    ? ""
    : `, from ${fromCelsius ?? "its lowest"} to ${toCelsius ?? "its highest"} °C`;

const requirement = ({ requirement: asked }: Equipment): string =>
  asked.largestExpanded === undefined || asked.unit === undefined
    ? range(asked).replace(/^, f/, "F")
    : `U at most ${asked.largestExpanded} ${units[asked.unit]}${range(asked)}`;

const every = (count: number | null, unit: string): string =>
  count === null ? "none planned" : `every ${count} ${unit}${count === 1 ? "" : "s"}`;

/** The record of ISO/IEC 17025 6.4.13 besides certificates and logbook; letters are those of the clause. */
export const recordItems = (equipment: Equipment) => [
  { label: "Serial number (a, b)", value: equipment.serial },
  { label: "Maker and model (b)", value: [equipment.maker, equipment.model].filter(Boolean).join(", ") },
  { label: "Firmware (a)", value: equipment.firmware },
  { label: "Received on (c)", value: equipment.receivedOn ?? "" },
  { label: "Where it is (d)", value: equipment.location },
  ...(equipment.kind === "furnace"
    ? []
    : [
        { label: "Calibrated (e)", value: every(equipment.calibrationIntervalMonths, "month") },
        { label: "Fit for its use (e)", value: requirement(equipment) },
      ]),
  { label: "Checked between calibrations", value: every(equipment.checkIntervalDays, "day") },
  { label: "Maintained (g)", value: every(equipment.maintenanceIntervalDays, "day") },
];

export const gapsInWords = (gaps: readonly (keyof typeof gapWords)[]): string =>
  gaps.map((gap) => gapWords[gap]).join(", ");
