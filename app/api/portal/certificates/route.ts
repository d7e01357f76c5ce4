import { downloadZip } from "@/lib/operations/certificate/download-zip";
import { renderPending } from "@/lib/operations/certificate/render-pending";
import { portalCertificateSetView } from "@/lib/views/portal/certificate-set";
import { currentActor } from "@/lib/web/auth";
import { notHere, refusedResponse } from "../../certificates/document-response";
import { streamResponse } from "../stream-response";

const now = () => new Date();

/** `?order=O-…`: its certificates as one ZIP; without, all of the customer's. */
export async function GET(request: Request): Promise<Response> {
  const actor = await currentActor();
  if (actor?.kind !== "customer") return notHere();
  const order = new URL(request.url).searchParams.get("order");
  try {
    let set = await portalCertificateSetView(actor, order);
    const pending = set.flatMap(({ size, token }) => (size === null ? [token] : []));
    if (pending.length > 0) {
      await renderPending(now, pending);
      set = await portalCertificateSetView(actor, order);
    }
    if (set.length === 0) return notHere();
    const { chunks, length } = downloadZip(actor, set, now);
    return streamResponse(chunks, { name: "certificates.zip", type: "application/zip", length });
  } catch (error) {
    return refusedResponse(error);
  }
}
