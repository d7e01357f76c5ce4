import { fetchTogether } from "@/lib/operations/certificate/download-together";
import { currentActor } from "@/lib/web/auth";
import { documentResponse, notHere, refusedResponse } from "../document-response";

const answer = async (tokens: readonly string[]): Promise<Response> => {
  const actor = await currentActor();
  if (!actor || tokens.length === 0) return notHere();
  try {
    const zip = await fetchTogether(actor, tokens, () => new Date());
    return documentResponse(zip, "certificates.zip", "application/zip");
  } catch (error) {
    return refusedResponse(error);
  }
};

/** `?token=…&token=…`: those certificates as one ZIP. One that is not this person's makes all of it not there. */
export async function GET(request: Request): Promise<Response> {
  return answer(new URL(request.url).searchParams.getAll("token"));
}

/** The same from a form: hundreds of tokens do not fit into an address. */
export async function POST(request: Request): Promise<Response> {
  const form = await request.formData().catch(() => new FormData());
  return answer(form.getAll("token").filter((token) => typeof token === "string"));
}
