import type { Tx } from "@/lib/data/in-scope";
import { addressBlock } from "@/lib/domain/customer/address-block";

export type Invoiced = { readonly customer: string; readonly address: string };

/**
 * Who is invoiced for each of these orders, and where: the address the order names, otherwise the one the customer keeps
 * for invoices (of several the first by title), otherwise the customer's own. One that is used no more is not printed.
 */
export const loadInvoiceAddresses = async (
  tx: Tx,
  orderIds: readonly string[],
): Promise<ReadonlyMap<string, Invoiced>> => {
  const orders = await tx.order.findMany({
    where: { id: { in: [...orderIds] } },
    select: {
      ...{ id: true, customerId: true, invoiceAddressId: true },
      customer: { select: { name: true, addressLines: true } },
    },
  });
  const addresses = await tx.customerAddress.findMany({
    where: { active: true, customerId: { in: orders.map(({ customerId }) => customerId) } },
    orderBy: [{ title: "asc" }, { id: "asc" }],
  });
  return new Map(
    orders.map(({ id, customer, customerId, invoiceAddressId }) => {
      const own = addresses.filter((address) => address.customerId === customerId);
      const kept =
        own.find((address) => address.id === invoiceAddressId) ?? own.find(({ kind }) => kind === "invoice");
      return [
        id,
        { customer: customer.name, address: kept ? addressBlock(kept) : customer.addressLines },
      ] as const;
    }),
  );
};
