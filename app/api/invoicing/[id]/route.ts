import { notHere, refusedResponse } from "@/app/api/certificates/document-response";
import { execute } from "@/lib/operations/execute";
import { downloadInvoicingFile } from "@/lib/operations/invoicing/download";
import { currentActor } from "@/lib/web/auth";

type Context = { readonly params: Promise<{ readonly id: string }> };

/** A file handed to invoicing, the same bytes each time, to those who make them. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await currentActor();
  if (actor?.kind !== "staff") return notHere();
  try {
    const { id } = await params;
    const { bytes, number } = await execute(downloadInvoicingFile, actor, { id }, () => new Date());
    return new Response(Uint8Array.from(bytes), {
      headers: {
        "cache-control": "private, no-store",
        "x-content-type-options": "nosniff",
        "content-type": "text/csv; charset=utf-8",
        "content-length": String(bytes.byteLength),
        "content-disposition": `attachment; filename="${number}.csv"`,
      },
    });
  } catch (error) {
    return refusedResponse(error);
  }
}
