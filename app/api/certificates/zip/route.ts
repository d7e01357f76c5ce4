import { fetchTogether } from "@/lib/operations/certificate/download-together";
import { currentActor } from "@/lib/web/auth";
import { documentResponse, notHere, refusedResponse } from "../document-response";

/** `?token=…&token=…`: those certificates as one ZIP. One that is not this person's makes all of it not there. */
export async function GET(request: Request): Promise<Response> {
  const actor = await currentActor();
  const tokens = new URL(request.url).searchParams.getAll("token");
  if (!actor || tokens.length === 0) return notHere();
  try {
    const zip = await fetchTogether(actor, tokens, () => new Date());
    return documentResponse(zip, "certificates.zip", "application/zip");
  } catch (error) {
    return refusedResponse(error);
  }
}
