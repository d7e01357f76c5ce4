import { foreignFileResponse, notHere, refusedResponse } from "@/app/api/certificates/document-response";
import { providerReportFileView } from "@/lib/views/provider-reports";
import { currentActor } from "@/lib/web/auth";

type Context = { readonly params: Promise<{ readonly id: string }> };

/** An external provider's certificate as it came, named as another's; to staff and, once it counts, to its customer. */
export const GET = async (_request: Request, { params }: Context): Promise<Response> => {
  const actor = await currentActor();
  if (!actor) return notHere();
  try {
    const { bytes, mediaType, certificate } = await providerReportFileView(actor, (await params).id);
    return foreignFileResponse(bytes, `external-certificate-${certificate.slice(0, 90)}.pdf`, mediaType);
  } catch (error) {
    return refusedResponse(error);
  }
};
