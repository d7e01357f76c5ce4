import { csvLine } from "@/lib/domain/csv/csv-line";
import { resultColumns } from "@/lib/domain/history/results-table";
import type { Actor } from "@/lib/domain/staff/actor";
import { portalResults } from "./results";

const encoder = new TextEncoder();

/**
 * The table of results as a file, piece by piece. The first rows are asked for before anything is sent, so that what is
 * not there is answered as such.
 */
export const portalResultsFile = async (
  actor: Actor,
  order: string | null,
): Promise<AsyncGenerator<Uint8Array>> => {
  const results = portalResults(actor, order);
  const first = await results.next();
  const pieces = async function* () {
    // With its mark, so that a spreadsheet takes it for UTF-8.
    yield encoder.encode(`\uFEFF${csvLine(resultColumns)}`);
    if (first.done) return;
    yield encoder.encode(first.value.map(csvLine).join(""));
    for await (const rows of results) yield encoder.encode(rows.map(csvLine).join(""));
  };
  return pieces();
};
