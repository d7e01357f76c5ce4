import { notHere, refusedResponse } from "@/app/api/certificates/document-response";
import { providerReportFileView } from "@/lib/views/provider-reports";
import { currentActor } from "@/lib/web/auth";

type Context = { readonly params: Promise<{ readonly id: string }> };

/** Named as what it is: another laboratory's certificate. */
const fileName = (certificate: string): string =>
  `external-certificate-${certificate.replaceAll(/[^\w.-]+/g, "_").slice(0, 100)}.pdf`;

/**
 * An external provider's certificate as it came, to staff and, once it counts, to its customer. Always saved, never
 * shown: what came from outside is not run within our address.
 */
export const GET = async (_request: Request, { params }: Context): Promise<Response> => {
  const actor = await currentActor();
  if (!actor) return notHere();
  try {
    const { bytes, mediaType, certificate } = await providerReportFileView(actor, (await params).id);
    return new Response(Uint8Array.from(bytes), {
      headers: {
        "cache-control": "private, no-store",
        "x-content-type-options": "nosniff",
        "content-security-policy": "default-src 'none'; sandbox",
        "content-type": mediaType,
        "content-length": String(bytes.byteLength),
        "content-disposition": `attachment; filename="${fileName(certificate)}"`,
      },
    });
  } catch (error) {
    return refusedResponse(error);
  }
};
