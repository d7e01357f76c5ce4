import type { Tx } from "@/lib/data/in-scope";
import { addressBlock } from "@/lib/domain/customer/address-block";

const inUse = { active: true } as const;
const first = [{ title: "asc" }, { id: "asc" }] as const;

/**
 * Who is invoiced, and where: the address the order names, otherwise the one the customer keeps for invoices (of
 * several the first by title), otherwise the customer's own. One that is used no more is not printed.
 */
export const loadInvoiceAddress = async (
  tx: Tx,
  orderId: string,
): Promise<{ readonly customer: string; readonly address: string }> => {
  const { customer, customerId, invoiceAddressId } = await tx.order.findUniqueOrThrow({
    where: { id: orderId },
    select: {
      ...{ customerId: true, invoiceAddressId: true },
      customer: { select: { name: true, addressLines: true } },
    },
  });
  const named = invoiceAddressId
    ? await tx.customerAddress.findFirst({ where: { ...inUse, id: invoiceAddressId, customerId } })
    : null;
  const kept =
    named ??
    (await tx.customerAddress.findFirst({
      where: { ...inUse, customerId, kind: "invoice" },
      orderBy: [...first],
    }));
  const address = kept && addressBlock(kept);
  return { customer: customer.name, address: address ?? customer.addressLines };
};
