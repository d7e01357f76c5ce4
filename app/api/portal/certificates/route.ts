import { zipLength, zipStream } from "@/lib/documents/zip-stream";
import type { Actor } from "@/lib/domain/staff/actor";
import { downloadBatches } from "@/lib/operations/certificate/download-batches";
import { renderPending } from "@/lib/operations/certificate/render-pending";
import { portalCertificateSetView } from "@/lib/views/portal/certificate-set";
import { currentActor } from "@/lib/web/auth";
import { notHere, refusedResponse } from "../../certificates/document-response";
import { streamResponse } from "../stream-response";

const now = () => new Date();

async function* entries(actor: Actor, tokens: readonly string[]) {
  for await (const batch of downloadBatches(actor, tokens, now))
    yield batch.map(({ number, bytes }) => ({ name: `${number}.pdf`, bytes }));
}

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
    const files = set.map(({ number, size }) => ({ name: `${number}.pdf`, size: size ?? 0 }));
    const tokens = set.map(({ token }) => token);
    return streamResponse(zipStream(entries(actor, tokens)), {
      name: order === null ? "certificates.zip" : `certificates-${set.length}.zip`,
      type: "application/zip",
      length: zipLength(files),
    });
  } catch (error) {
    return refusedResponse(error);
  }
}
