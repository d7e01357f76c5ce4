import type { OrderNews } from "@/lib/domain/mail/letters/order-news";
import type { MailKind } from "@/lib/domain/mail/types";
import type { Tx } from "../in-scope";

type OrderFacts = Pick<OrderNews, "isFirstDay" | "isNoneHere">;

/** What a letter of this kind says of the order besides what happened; asked before the event itself is in the log. */
export const orderFacts = async (tx: Tx, kind: MailKind, orderId: string): Promise<OrderFacts> => {
  if (kind === "promise-changed") {
    const earlier = { entityKind: "order", entityId: orderId, action: "promise.given" };
    return { isFirstDay: (await tx.auditEvent.count({ where: earlier })) === 0 };
  }
  if (kind === "order-cancelled") {
    const here = { line: { orderId }, state: { not: "collected" } };
    return { isNoneHere: (await tx.sensor.count({ where: here })) === 0 };
  }
  return {};
};
