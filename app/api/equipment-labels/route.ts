import { documentResponse, notHere, refusedResponse } from "@/app/api/certificates/document-response";
import { printEquipmentLabels } from "@/lib/operations/equipment/print-labels";
import { execute } from "@/lib/operations/execute";
import { currentActor } from "@/lib/web/auth";
import { env } from "@/lib/web/env";
import { list } from "@/lib/web/form-fields";
import { isOwnOrigin } from "@/lib/web/origin";

/** The labels of the equipment named by `id`, one or many, to those who keep its record. */
export async function POST(request: Request): Promise<Response> {
  const { publicOrigin } = env();
  if (!isOwnOrigin(request.headers.get("origin"), publicOrigin)) return notHere();
  const actor = await currentActor();
  if (actor?.kind !== "staff") return notHere();
  try {
    const ids = list(await request.formData(), "id");
    const { bytes } = await execute(printEquipmentLabels, actor, { ids, publicOrigin }, () => new Date());
    return documentResponse(bytes, "equipment-labels.pdf", "application/pdf", "inline");
  } catch (error) {
    return refusedResponse(error);
  }
}
