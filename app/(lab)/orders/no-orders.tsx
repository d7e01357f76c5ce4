import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { addressOf, changed } from "@/lib/domain/list/query";
import { orderAskedWords } from "@/lib/domain/order/asked-words";
import type { OrderFilter, OrderQuery } from "@/lib/domain/order/list-query";
import type { OrdersView } from "@/lib/views/order/orders";

const whatOrdersAre =
  "An order says whose sensors are to be calibrated, at which temperatures, and what is to be stated about them. It is recorded, accepted after its contract review, and complete once each of its sensors has its certificate.";
const howTheyAreFound =
  "An order is found by the beginning of its number, by the beginning or end of the customer’s order number, and by any part of the customer’s name.";

const nameOf = (filter: OrderFilter): string => (filter === "all" ? "order" : `${filter} order`);

type Props = { readonly list: OrdersView; readonly query: OrderQuery };

/** Says what was looked for and found no order, and leads to where there are more. */
export function NoOrders({ list, query }: Props) {
  const asked = orderAskedWords(query, list.customer);
  const isAll = list.filter === "all";
  const everywhere = addressOf("/orders", changed(query, { show: "all" }));
  return (
    <EmptyState
      title={
        asked.length > 0
          ? `No ${nameOf(list.filter)} is found by: ${asked.join(", ")}`
          : `No ${nameOf(list.filter)}s`
      }
      action={
        <div className="row">
          {asked.length > 0 && !isAll ? (
            <LinkButton href={everywhere}>Look among all orders</LinkButton>
          ) : null}
          {asked.length > 0 || !isAll ? (
            <LinkButton href="/orders?show=all">Show all orders</LinkButton>
          ) : null}
        </div>
      }
    >
      {query.q ? howTheyAreFound : null}
      {asked.length === 0 ? whatOrdersAre : null}
    </EmptyState>
  );
}
