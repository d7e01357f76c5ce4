import { fetchDocuments } from "@/lib/operations/certificate/download";
import { currentActor } from "@/lib/web/auth";
import { documentResponse, notHere, refusedResponse } from "../../document-response";

type Context = { readonly params: Promise<{ readonly token: string }> };

/** The same certificate for machines, alone: to whom the document is shown, and told in the log as a download too. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return notHere();
  try {
    const [document] = await fetchDocuments(actor, [(await params).token], () => new Date(), "dcc");
    return document
      ? documentResponse(document.bytes, `${document.number}.xml`, "application/xml")
      : notHere();
  } catch (error) {
    return refusedResponse(error);
  }
}
