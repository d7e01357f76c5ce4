import { certificateSizeRows } from "@/lib/data/sql/certificate-sizes";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerIdOf } from "@/lib/domain/staff/customer-id-of";
import { answer, found } from "../view";

/** The certificates of one order of the customer, or all of theirs; another's order is not there. */
export const portalCertificateSetView = (actor: Actor, orderNumber: string | null) =>
  answer(actor, "portal.read", async (tx) => {
    const order =
      orderNumber === null
        ? null
        : found(await tx.order.findUnique({ where: { number: orderNumber }, select: { id: true } }));
    return certificateSizeRows(tx, customerIdOf(actor), order?.id ?? null);
  });
