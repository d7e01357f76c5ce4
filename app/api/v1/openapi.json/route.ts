import { openApiDocument } from "@/lib/domain/machine/openapi";
import { env } from "@/lib/web/env";
import { jsonResponse } from "@/lib/web/program-route";

export const dynamic = "force-dynamic";

/** What the interface is, for whoever writes a program for it. Nothing in it is anybody's. */
export function GET(): Response {
  return jsonResponse(openApiDocument(env().publicOrigin, "Calibration laboratory"));
}
