import { loadAddresses } from "@/lib/data/portal/address-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerIdOf } from "@/lib/domain/staff/customer-id-of";
import { answer } from "../view";

/** The addresses of the actor's own customer, and the one on record. */
export const portalAddressesView = (actor: Actor) =>
  answer(actor, "portal.read", async (tx) => {
    const customerId = customerIdOf(actor);
    const { name, addressLines, contactName } = await tx.customer.findUniqueOrThrow({
      where: { id: customerId },
    });
    return { onRecord: { name, addressLines, contactName }, addresses: await loadAddresses(tx, customerId) };
  });

export type PortalAddress = Awaited<ReturnType<typeof portalAddressesView>>["addresses"][number];
