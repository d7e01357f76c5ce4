import { downloadEvidence } from "@/lib/operations/certificate/download-evidence";
import { execute } from "@/lib/operations/execute";
import { currentActor } from "@/lib/web/auth";
import { documentResponse, notHere, refusedResponse } from "../../document-response";

type Context = { readonly params: Promise<{ readonly token: string }> };

/** The evidence of one certificate, to staff and to the customer it belongs to. To everybody else it is not there. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return notHere();
  try {
    const { token } = await params;
    const { bytes, fileName } = await execute(downloadEvidence, actor, { token }, () => new Date());
    return documentResponse(bytes, fileName, "application/json");
  } catch (error) {
    return refusedResponse(error);
  }
}
