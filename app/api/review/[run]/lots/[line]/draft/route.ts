import { documentResponse, notHere, refusedResponse } from "@/app/api/certificates/document-response";
import { draftDocument } from "@/lib/operations/review/open-draft";
import { currentActor } from "@/lib/web/auth";

type Context = { readonly params: Promise<{ readonly run: string; readonly line: string }> };

/** The draft of a lot's one certificate, by its order line, to staff who may read reviews. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentActor();
  if (actor?.kind !== "staff") return notHere();
  try {
    const { run, line } = await params;
    const bytes = await draftDocument(actor, { runNumber: run, lineId: line }, () => new Date());
    return documentResponse(bytes, `draft-${run}-lot.pdf`, "application/pdf", "inline");
  } catch (error) {
    return refusedResponse(error);
  }
}
