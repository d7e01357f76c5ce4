import { foreignFileResponse, notHere, refusedResponse } from "@/app/api/certificates/document-response";
import { evidenceDocumentView } from "@/lib/views/evidence-document";
import { currentActor } from "@/lib/web/auth";

type Context = { readonly params: Promise<{ readonly id: string }> };

/** A file kept as evidence, to staff; to everybody else it is not there. */
export const GET = async (_request: Request, { params }: Context): Promise<Response> => {
  const actor = await currentActor();
  if (!actor) return notHere();
  try {
    const { bytes, mediaType, fileName } = await evidenceDocumentView(actor, (await params).id);
    return foreignFileResponse(bytes, fileName, mediaType);
  } catch (error) {
    return refusedResponse(error);
  }
};
