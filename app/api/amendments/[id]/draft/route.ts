import { documentResponse, notHere, refusedResponse } from "@/app/api/certificates/document-response";
import { amendmentDraft } from "@/lib/operations/certificate/open-amendment-draft";
import { currentActor } from "@/lib/web/auth";

type Context = { readonly params: Promise<{ readonly id: string }> };

/** The draft of a certificate that is to follow another one, under its watermark, to staff who may read reviews. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentActor();
  if (actor?.kind !== "staff") return notHere();
  try {
    const { bytes, number } = await amendmentDraft(actor, (await params).id, () => new Date());
    return documentResponse(bytes, `draft-after-${number}.pdf`, "application/pdf", "inline");
  } catch (error) {
    return refusedResponse(error);
  }
}
