import { documentResponse, notHere, refusedResponse } from "@/app/api/certificates/document-response";
import { draftDocument } from "@/lib/operations/review/open-draft";
import { currentActor } from "@/lib/web/auth";

type Context = { readonly params: Promise<{ readonly run: string; readonly tag: string }> };

/** The draft under its watermark, to staff who may read reviews. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentActor();
  if (actor?.kind !== "staff") return notHere();
  try {
    const { run, tag } = await params;
    const bytes = await draftDocument(actor, { runNumber: run, tag }, () => new Date());
    return documentResponse(bytes, `draft-${run}-${tag}.pdf`, "application/pdf", "inline");
  } catch (error) {
    return refusedResponse(error);
  }
}
