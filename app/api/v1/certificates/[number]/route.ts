import { wireCertificateView } from "@/lib/views/machine/wire-certificates";
import { jsonResponse, notHereProblem, programRoute } from "@/lib/web/program-route";
import type { NumberContext } from "../../after";

export const GET = programRoute("certificates:read", async (program, _request, { params }: NumberContext) => {
  const certificate = await wireCertificateView(program, (await params).number);
  if (!certificate) return notHereProblem();
  const { contentHash, content, standing } = certificate;
  return jsonResponse({ contentHash, content, standing });
});
