import { wireCertificatesView } from "@/lib/views/machine/wire-certificates";
import { jsonResponse, programRoute } from "@/lib/web/program-route";
import { afterOf } from "../after";

export const GET = programRoute("certificates:read", async (program, request) =>
  jsonResponse(await wireCertificatesView(program, afterOf(request))),
);
