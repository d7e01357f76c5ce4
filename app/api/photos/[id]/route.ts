import { notHere, refusedResponse } from "@/app/api/certificates/document-response";
import { photoView } from "@/lib/views/sensor/photo";
import { currentActor } from "@/lib/web/auth";

type Context = { readonly params: Promise<{ readonly id: string }> };

/** A photo as it was kept: an image by its content, told so, and nothing a browser could run. */
export const GET = async (_request: Request, { params }: Context): Promise<Response> => {
  const actor = await currentActor();
  if (!actor) return notHere();
  try {
    const { bytes, mediaType, fileName } = await photoView(actor, (await params).id);
    return new Response(Uint8Array.from(bytes), {
      headers: {
        // It never changes, and is nobody else's.
        "cache-control": "private, max-age=86400, immutable",
        "x-content-type-options": "nosniff",
        "content-security-policy": "default-src 'none'; sandbox",
        "cross-origin-resource-policy": "same-origin",
        "content-type": mediaType,
        "content-length": String(bytes.byteLength),
        "content-disposition": `inline; filename="${fileName}"`,
      },
    });
  } catch (error) {
    return refusedResponse(error);
  }
};
