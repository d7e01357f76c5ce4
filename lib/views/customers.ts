import { loadCustomers } from "@/lib/data/customer/customer-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

export const customersView = (actor: Actor) =>
  answer(actor, "laboratory.read", async (tx) =>
    (await loadCustomers(tx)).map((customer) => ({
      id: customer.id,
      name: customer.name,
      contactName: customer.contactName,
      email: customer.email,
      orders: customer._count.orders,
      people: customer._count.people,
    })),
  );
