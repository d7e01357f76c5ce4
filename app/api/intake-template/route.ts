import { notHere } from "@/app/api/certificates/document-response";
import { listTemplate } from "@/lib/domain/intake/template";
import { currentActor } from "@/lib/web/auth";

/** The empty list of sensors, to those who work here. */
export async function GET(): Promise<Response> {
  const actor = await currentActor();
  if (actor?.kind !== "staff") return notHere();
  return new Response(listTemplate(), {
    headers: {
      "cache-control": "private, no-store",
      "x-content-type-options": "nosniff",
      "content-type": "text/csv; charset=utf-8",
      "content-disposition": 'attachment; filename="sensors.csv"',
    },
  });
}
