import type { Tx } from "../in-scope";

type Copy = {
  readonly number: string;
  readonly recordedById: string;
  readonly recordedAt: Date;
};

/** An address that is no longer used is not used again. */
const stillUsed = async (tx: Tx, id: string | null): Promise<string | null> =>
  id && (await tx.customerAddress.count({ where: { id, active: true } })) === 1 ? id : null;

/** Where the bills of an order went, as far as it is still used: a request has no place to say it. */
export const keptInvoiceAddress = async (tx: Tx, orderId: string): Promise<string | null> => {
  const { invoiceAddressId } = await tx.order.findUniqueOrThrow({
    where: { id: orderId },
    select: { invoiceAddressId: true },
  });
  return stillUsed(tx, invoiceAddressId);
};

/**
 * The same work once more: rule, lines with all they ask for, setpoints as they were typed, addresses. Anew each time:
 * purchase order, who agreed to the rule, urgency, a promised day, the note.
 */
export const copyOrder = async (tx: Tx, orderId: string, copy: Copy): Promise<string> => {
  const order = await tx.order.findUniqueOrThrow({
    where: { id: orderId },
    include: {
      lines: { orderBy: { position: "asc" }, include: { setpoints: { orderBy: { position: "asc" } } } },
    },
  });
  const { id } = await tx.order.create({
    data: {
      ...copy,
      state: "recorded",
      customerId: order.customerId,
      origin: "repeat",
      repeatsOrderId: order.id,
      ruleSet: order.ruleSet,
      deliveryAddressId: await stillUsed(tx, order.deliveryAddressId),
      invoiceAddressId: await stillUsed(tx, order.invoiceAddressId),
      decisionRule: order.decisionRule,
      guardBandRatio: order.guardBandRatio,
      falseAcceptancePercent: order.falseAcceptancePercent,
      uncertaintyDigits: order.uncertaintyDigits,
    },
    select: { id: true },
  });
  for (const { id: _id, orderId: _orderId, version: _version, setpoints, ...line } of order.lines) {
    const made = await tx.orderLine.create({ data: { ...line, orderId: id }, select: { id: true } });
    await tx.orderSetpoint.createMany({
      data: setpoints.map(({ customerId, position, typed, celsius }) => ({
        ...{ customerId, position, typed, celsius },
        orderLineId: made.id,
      })),
    });
  }
  return id;
};
