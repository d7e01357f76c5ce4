import { notHere, refusedResponse } from "@/app/api/certificates/document-response";
import { evidenceDocumentView } from "@/lib/views/evidence-document";
import { currentActor } from "@/lib/web/auth";

type Context = { readonly params: Promise<{ readonly id: string }> };

/** A name as a header may carry it, whatever it was called where it came from. */
const plainName = (name: string): string => name.replaceAll(/[^\w.-]+/g, "_").slice(0, 120) || "document";

/**
 * A file kept as evidence, to staff; to everybody else it is not there. Always saved, never shown: what came from outside
 * is not run within our address.
 */
export const GET = async (_request: Request, { params }: Context): Promise<Response> => {
  const actor = await currentActor();
  if (!actor) return notHere();
  try {
    const { bytes, mediaType, fileName } = await evidenceDocumentView(actor, (await params).id);
    return new Response(Uint8Array.from(bytes), {
      headers: {
        "cache-control": "private, no-store",
        "x-content-type-options": "nosniff",
        "content-security-policy": "default-src 'none'; sandbox",
        "content-type": mediaType,
        "content-length": String(bytes.byteLength),
        "content-disposition": `attachment; filename="${plainName(fileName)}"`,
      },
    });
  } catch (error) {
    return refusedResponse(error);
  }
};
