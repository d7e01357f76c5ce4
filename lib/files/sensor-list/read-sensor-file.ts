import {
  type ListLine,
  type ListProblem,
  type ListSensor,
  readSensorList,
} from "@/lib/domain/intake/read-list";
import { readTextTable } from "./read-text-table";

export type SensorFileRead =
  | { readonly ok: true; readonly format: "CSV" | "XLSX"; readonly sensors: readonly ListSensor[] }
  | { readonly ok: false; readonly problems: readonly string[] };

/** "Row 4, column polarity: …", as the file's own program counts and names. */
const place = ({ row, column, message }: ListProblem): string => `Row ${row}, column ${column}: ${message}`;

/** A list of sensors from its bytes, or everything that is wrong with it. */
export const readSensorFile = (
  bytes: Uint8Array,
  lines: readonly ListLine[],
  chosen: number | null,
): SensorFileRead => {
  const table = readTextTable(bytes);
  if (!table.ok) {
    const { row, column, message } = table.problem;
    const where = [row === null ? "" : `Row ${row}`, column === null ? "" : `column ${column}`].filter(
      Boolean,
    );
    return { ok: false, problems: [where.length > 0 ? `${where.join(", ")}: ${message}` : message] };
  }
  const read = readSensorList(table.table, lines, chosen);
  return read.ok
    ? { ok: true, format: table.table.format, sensors: read.sensors }
    : { ok: false, problems: read.problems.map(place) };
};
