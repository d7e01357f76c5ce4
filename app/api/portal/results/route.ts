import { csvLine } from "@/lib/documents/csv-line";
import { resultColumns } from "@/lib/domain/history/results-table";
import type { Actor } from "@/lib/domain/staff/actor";
import { portalResults } from "@/lib/views/portal/results";
import { currentActor } from "@/lib/web/auth";
import { notHere, refusedResponse } from "../../certificates/document-response";
import { streamResponse } from "../stream-response";

const encoder = new TextEncoder();

async function* table(
  first: IteratorResult<readonly (readonly string[])[]>,
  rest: ReturnType<typeof portalResults>,
) {
  // With its mark, so that a spreadsheet takes it for UTF-8.
  yield encoder.encode(`\uFEFF${csvLine(resultColumns)}`);
  if (first.done) return;
  yield encoder.encode(first.value.map(csvLine).join(""));
  for await (const rows of rest) yield encoder.encode(rows.map(csvLine).join(""));
}

const answerTo = async (actor: Actor, order: string | null): Promise<Response> => {
  const results = portalResults(actor, order);
  // The first rows are asked for before anything is sent: what is not there is answered as such.
  const first = await results.next();
  return streamResponse(table(first, results), {
    name: "results.csv",
    type: "text/csv; charset=utf-8; header=present",
  });
};

/** `?order=O-…`: its results as a table, one row each; without, all of the customer's. */
export async function GET(request: Request): Promise<Response> {
  const actor = await currentActor();
  if (actor?.kind !== "customer") return notHere();
  try {
    return await answerTo(actor, new URL(request.url).searchParams.get("order"));
  } catch (error) {
    return refusedResponse(error);
  }
}
