import { sealKeysView } from "@/lib/views/seal-keys";
import { connectDatabase } from "@/lib/web/connect-database";

/**
 * /.well-known/seal-keys.json: the laboratory's keys, for whoever checks a document, from whatever page. Kept for a few
 * minutes at most: a revoked key must be known soon.
 */
export async function GET(): Promise<Response> {
  connectDatabase();
  return Response.json(await sealKeysView(new Date()), {
    headers: { "cache-control": "public, max-age=300", "access-control-allow-origin": "*" },
  });
}
