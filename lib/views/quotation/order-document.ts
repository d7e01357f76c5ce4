import { isUuid } from "@/lib/data/is-uuid";
import { loadOrderDocument } from "@/lib/data/quotation/order-document-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "../view";

/** A paper of an order as it left: to staff, and to the customer it belongs to. */
export const orderDocumentView = (actor: Actor, id: string) =>
  answer(actor, actor.kind === "customer" ? "portal.read" : "laboratory.read", async (tx) =>
    found(isUuid(id) ? await loadOrderDocument(tx, id) : null),
  );
