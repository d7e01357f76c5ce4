import { fetchDocuments } from "@/lib/operations/certificate/download";
import { currentActor } from "@/lib/web/auth";
import { documentResponse, notHere, refusedResponse } from "../../document-response";
import { standingHeader } from "../../standing-header";

type Context = { readonly params: Promise<{ readonly token: string }> };

/** The digital calibration certificate alone, to staff and to the customer it belongs to. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return notHere();
  try {
    const [dcc] = await fetchDocuments(actor, [(await params).token], () => new Date(), "dcc");
    return dcc
      ? documentResponse(
          dcc.bytes,
          `${dcc.number}.xml`,
          "application/xml",
          "attachment",
          standingHeader(dcc.standing),
        )
      : notHere();
  } catch (error) {
    return refusedResponse(error);
  }
}
