import { takeAlong } from "@/lib/operations/authenticity/take-along";
import { sealKeysView } from "@/lib/views/seal-keys";
import { connectDatabase } from "@/lib/web/connect-database";

/** The check to keep, with the keys as they are now. */
export async function GET(): Promise<Response> {
  connectDatabase();
  const page = await takeAlong(await sealKeysView(new Date()));
  if (page === null)
    return new Response("The check to keep is made when the pages are built: npm run build.\n", {
      status: 503,
    });
  return new Response(page, {
    headers: {
      "content-type": "text/html; charset=utf-8",
      "content-disposition": 'attachment; filename="check-a-certificate.html"',
    },
  });
}
