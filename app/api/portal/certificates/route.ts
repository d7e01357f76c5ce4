import { downloadZip } from "@/lib/operations/certificate/download-zip";
import { portalCertificateSetView } from "@/lib/views/portal/certificate-set";
import { currentActor } from "@/lib/web/auth";
import { beingMade, notHere, refusedResponse } from "../../certificates/document-response";
import { streamResponse } from "../stream-response";

const now = () => new Date();

/** `?order=O-…`: its certificates as one ZIP; without, all of the customer's. */
export async function GET(request: Request): Promise<Response> {
  const actor = await currentActor();
  if (actor?.kind !== "customer") return notHere();
  const order = new URL(request.url).searchParams.get("order");
  try {
    const set = await portalCertificateSetView(actor, order);
    if (set.length === 0) return notHere();
    // Said before the ZIP begins: once it is being sent, nothing can be refused any more.
    const made = set.filter(({ size }) => size !== null);
    if (made.length === 0) return beingMade();
    const tokens = made.map(({ token }) => token);
    const name = order === null ? "certificates.zip" : `certificates-${set[0]?.order ?? ""}.zip`;
    return streamResponse(downloadZip(actor, tokens, now), { name, type: "application/zip" });
  } catch (error) {
    return refusedResponse(error);
  }
}
