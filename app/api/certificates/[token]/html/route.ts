import { fetchPage } from "@/lib/operations/certificate/read-as-page";
import { currentActor } from "@/lib/web/auth";
import { notHere, refusedResponse } from "../../document-response";
import { pageResponse } from "./page-response";

type Context = { readonly params: Promise<{ readonly token: string }> };

/** The same as the document, as a page: to staff and to the customer it belongs to. To everybody else it is not there. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return notHere();
  try {
    return pageResponse(await fetchPage(actor, (await params).token, () => new Date()));
  } catch (error) {
    return refusedResponse(error);
  }
}
