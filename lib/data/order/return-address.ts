import { addressBlock } from "@/lib/domain/customer/address-block";
import type { Tx } from "../in-scope";

export type ReturnAddress = {
  /** Of the customer's address book; null = the customer's own address. */
  readonly id: string | null;
  readonly title: string;
  readonly address: string;
  /** The one that was chosen with the order and is in use no more: the customer's own stands in for it. */
  readonly givenUp: string;
};

/** Where the sensors of an order go back to: as chosen with the order, otherwise the customer's own address. */
export const loadReturnAddress = async (tx: Tx, orderId: string): Promise<ReturnAddress> => {
  const { customer, customerId, deliveryAddressId } = await tx.order.findUniqueOrThrow({
    where: { id: orderId },
    select: {
      ...{ customerId: true, deliveryAddressId: true },
      customer: { select: { addressLines: true } },
    },
  });
  const chosen = deliveryAddressId
    ? await tx.customerAddress.findFirst({ where: { id: deliveryAddressId, customerId } })
    : null;
  if (chosen?.active)
    return {
      ...{ id: chosen.id, title: chosen.title, givenUp: "" },
      address: addressBlock(chosen),
    };
  return {
    ...{ id: null, title: "The customer’s own address", givenUp: chosen?.title ?? "" },
    address: customer.addressLines,
  };
};
