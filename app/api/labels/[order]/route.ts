import { documentResponse, notHere, refusedResponse } from "@/app/api/certificates/document-response";
import { Refused } from "@/lib/domain/refusal";
import type { LabelLayoutName } from "@/lib/domain/sensor/label-layouts";
import { execute } from "@/lib/operations/execute";
import { printLabels } from "@/lib/operations/sensor/print-labels";
import { currentActor } from "@/lib/web/auth";
import { env } from "@/lib/web/env";
import { text } from "@/lib/web/form-fields";
import { isOwnOrigin } from "@/lib/web/origin";

type Context = { readonly params: Promise<{ readonly order: string }> };

/** The labels of an order's sensors, or of the one named by `tag`, to those who take sensors in. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { publicOrigin } = env();
  if (!isOwnOrigin(request.headers.get("origin"), publicOrigin)) return notHere();
  const actor = await currentActor();
  if (actor?.kind !== "staff") return notHere();
  try {
    const orderNumber = (await params).order;
    const data = await request.formData();
    const input = {
      orderNumber,
      tag: text(data, "tag"),
      layout: (text(data, "layout") || undefined) as LabelLayoutName | undefined,
      startAt: text(data, "startAt") || "1",
      publicOrigin,
    };
    const { bytes } = await execute(printLabels, actor, input, () => new Date());
    return documentResponse(bytes, `labels-${orderNumber}.pdf`, "application/pdf", "inline");
  } catch (error) {
    // Without scripts the field refuses nothing: then this tab says it.
    if (error instanceof Refused && error.refusal.code === "invalid")
      return new Response(
        `${[error.refusal.message, ...Object.values(error.refusal.fields ?? {})].join(" ")}\n`,
        {
          status: 422,
          headers: { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" },
        },
      );
    return refusedResponse(error);
  }
}
