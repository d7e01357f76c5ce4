import type { OrderDraft } from "@/lib/domain/order/schema";
import type { Tx } from "../in-scope";
import { demandSaved } from "../versioned";
import { insertSetpoints, lineColumns, orderColumns } from "./order-columns";

/** Positions that no order reaches, so that lines can change places one by one. */
const ASIDE = 1000;

/** Terms and lines of an accepted order anew: lines that are kept keep their sensors, new ones come, others go. */
export const saveChangedOrder = async (
  tx: Tx,
  order: { readonly id: string; readonly customerId: string; readonly version: number },
  draft: OrderDraft,
): Promise<void> => {
  demandSaved(
    await tx.order.updateMany({
      where: { id: order.id, version: order.version, state: "accepted" },
      data: { ...orderColumns(draft), version: { increment: 1 } },
    }),
  );
  const kept = draft.lines.flatMap(({ lineId }) => (lineId === "" ? [] : [lineId]));
  const gone = { orderId: order.id, id: { notIn: kept } };
  await tx.orderSetpoint.deleteMany({ where: { line: { orderId: order.id } } });
  await tx.orderLine.deleteMany({ where: gone });
  await tx.orderLine.updateMany({
    where: { orderId: order.id },
    data: { position: { increment: ASIDE } },
  });
  for (const [index, line] of draft.lines.entries()) {
    const data = { ...lineColumns(line), position: index + 1 };
    const { id } =
      line.lineId === ""
        ? await tx.orderLine.create({
            data: { ...data, orderId: order.id, customerId: order.customerId },
            select: { id: true },
          })
        : await tx.orderLine.update({
            where: { id: line.lineId, orderId: order.id },
            data: { ...data, version: { increment: 1 } },
            select: { id: true },
          });
    await insertSetpoints(tx, { id, customerId: order.customerId }, line.setpoints);
  }
};
