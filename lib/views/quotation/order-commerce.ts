import type { Tx } from "@/lib/data/in-scope";
import { loadChanges } from "@/lib/data/order/change-store";
import { listOrderDocuments } from "@/lib/data/quotation/order-document-store";
import { isoDay } from "@/lib/domain/calibration/due";
import { hasHoursChanged, reckonedAt } from "@/lib/domain/order/hours-changed";
import { paperTitles } from "@/lib/domain/quotation/point-words";
import type { Actor } from "@/lib/domain/staff/actor";
import { may, type Permission } from "@/lib/domain/staff/permissions";
import { answer, found } from "../view";

/** The day was reckoned for other furnace work than is ordered now. */
const isPromiseOfBefore = async (
  tx: Tx,
  order: { readonly id: string; readonly promisedOn: Date | null; readonly promiseBasis: string },
): Promise<boolean> => {
  if (order.promisedOn === null) return false;
  return hasHoursChanged(reckonedAt(order.promiseBasis), await loadChanges(tx, order.id));
};

/** The commercial side of an order in a few lines: promised day, offer, papers, parcels, and what can be done. */
export const orderCommerceView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const order = found(
      await tx.order.findUnique({
        where: { number },
        select: { id: true, state: true, promisedOn: true, promiseBasis: true, repeatsOrderId: true },
      }),
    );
    const offer = await tx.quotation.findFirst({
      where: { orderId: order.id },
      orderBy: [{ madeAt: "desc" }, { number: "desc" }],
      select: { id: true, number: true },
    });
    const said = offer && (await tx.agreement.findUnique({ where: { quotationId: offer.id } }));
    const repeats = order.repeatsOrderId
      ? await tx.order.findUnique({ where: { id: order.repeatsOrderId }, select: { number: true } })
      : null;
    const issued = await tx.sensor.count({ where: { state: "issued", line: { orderId: order.id } } });
    const has = (permission: Permission) => actor.kind === "staff" && may(actor.roles, permission);
    const isOpen = order.state === "recorded" || order.state === "accepted";
    return {
      number,
      promisedOn: order.promisedOn && isoDay(order.promisedOn),
      hasPromiseOfBefore: order.state === "accepted" && (await isPromiseOfBefore(tx, order)),
      offer: offer && {
        number: offer.number,
        answer: said ? (said.answer as "agreed" | "declined") : ("waiting" as const),
        by: said?.saidByName ?? "",
      },
      repeats: repeats?.number ?? "",
      issued,
      papers: (await listOrderDocuments(tx, order.id)).map(({ kind, madeAt, ...paper }) => ({
        ...paper,
        title: paperTitles[kind as keyof typeof paperTitles],
        madeAt: madeAt.toISOString(),
      })),
      mayOffer: isOpen && has("order.record"),
      mayPromise: isOpen && has("order.accept"),
      mayShip: order.state !== "requested" && order.state !== "recorded" && has("sensor.release"),
      mayRepeat: order.state !== "requested" && has("order.record"),
    };
  });

export type OrderCommerce = Awaited<ReturnType<typeof orderCommerceView>>;
