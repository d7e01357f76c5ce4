import { packStatus } from "@/lib/domain/authenticity/even-length";
import { authenticityView } from "@/lib/views/authenticity";
import { clientOf } from "@/lib/web/client-of";
import { connectDatabase } from "@/lib/web/connect-database";

type Context = { readonly params: Promise<{ readonly token: string }> };

/** Not transformed: compressed, the one length that every answer has would differ again. */
const headers = {
  "cache-control": "no-store, no-transform",
  "content-type": "text/plain; charset=utf-8",
  "x-robots-tag": "noindex",
} as const;

/** How the certificate with this token stands, for a page that has just read the token in a file. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  connectDatabase();
  const client = clientOf(request.headers.get("x-forwarded-for"));
  const asked = await authenticityView((await params).token, client, new Date());
  if (asked.kind === "too-many")
    return new Response("too many\n", {
      status: 429,
      headers: { ...headers, "retry-after": String(asked.resetsInSeconds) },
    });
  return new Response(packStatus(asked.status), { headers });
}
