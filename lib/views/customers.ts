import { customerPage } from "@/lib/data/sql/customer-page";
import type { CustomerQuery } from "@/lib/domain/customer/list-query";
import { cutPage, turnOf } from "@/lib/domain/list/page";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

/** One page of customers, by name. */
export const customersView = (actor: Actor, query: CustomerQuery) =>
  answer(actor, "laboratory.read", async (tx) => {
    const turn = turnOf(query);
    return cutPage(await customerPage(tx, query.find ?? "", turn), turn, ({ id }) => id);
  });
