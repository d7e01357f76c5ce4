import { documentResponse, notHere, refusedResponse } from "@/app/api/certificates/document-response";
import { orderDocumentView } from "@/lib/views/quotation/order-document";
import { currentActor } from "@/lib/web/auth";

type Context = { readonly params: Promise<{ readonly id: string }> };

/** A paper of an order, to staff and to the customer it belongs to. To everybody else it is not there. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return notHere();
  try {
    const { bytes, kind, number } = await orderDocumentView(actor, (await params).id);
    return documentResponse(bytes, `${kind}-${number}.pdf`, "application/pdf");
  } catch (error) {
    return refusedResponse(error);
  }
}
