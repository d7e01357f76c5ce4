import { portalResultsFile } from "@/lib/views/portal/results-file";
import { currentActor } from "@/lib/web/auth";
import { notHere, refusedResponse } from "../../certificates/document-response";
import { streamResponse } from "../stream-response";

/** `?order=O-…`: its results as a table, one row each; without, all of the customer's. */
export async function GET(request: Request): Promise<Response> {
  const actor = await currentActor();
  if (actor?.kind !== "customer") return notHere();
  try {
    const table = await portalResultsFile(actor, new URL(request.url).searchParams.get("order"));
    return streamResponse(table, { name: "results.csv", type: "text/csv; charset=utf-8; header=present" });
  } catch (error) {
    return refusedResponse(error);
  }
}
