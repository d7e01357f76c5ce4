import { fetchDocuments } from "@/lib/operations/certificate/download";
import { currentActor } from "@/lib/web/auth";
import { documentResponse, notHere, refusedResponse } from "../document-response";
import { standingHeader } from "../standing-header";

type Context = { readonly params: Promise<{ readonly token: string }> };

/** The document, to staff and to the customer it belongs to. To everybody else it is not there. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return notHere();
  try {
    const [document] = await fetchDocuments(actor, [(await params).token], () => new Date());
    return document
      ? documentResponse(
          document.bytes,
          `${document.number}.pdf`,
          "application/pdf",
          "attachment",
          standingHeader(document.standing),
        )
      : notHere();
  } catch (error) {
    return refusedResponse(error);
  }
}
