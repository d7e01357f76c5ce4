import { loadCustomer } from "@/lib/data/customer/customer-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "./view";

export const customerView = (actor: Actor, id: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const { createdAt, ...customer } = found(await loadCustomer(tx, id));
    const orders = await tx.order.findMany({
      where: { customerId: customer.id },
      orderBy: { recordedAt: "desc" },
      select: { number: true, state: true, purchaseOrder: true, recordedAt: true },
    });
    const people = await tx.person.findMany({
      where: { customerId: customer.id },
      orderBy: { name: "asc" },
      select: { id: true, name: true, email: true, active: true },
    });
    return {
      ...customer,
      createdAt: createdAt.toISOString(),
      orders: orders.map((order) => ({ ...order, recordedAt: order.recordedAt.toISOString() })),
      people,
      mayChange: actor.kind !== "system" && may(actor.roles, "customer.record"),
    };
  });
