import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { PageTurns } from "@/app/_ui/page-turns";
import { countText } from "@/lib/domain/list/page";
import { readOrderQuery } from "@/lib/domain/order/list-query";
import { ordersView } from "@/lib/views/order/orders";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { OrderFilters } from "./order-filters";
import { OrderTable } from "./order-table";

export const metadata = { title: "Orders" };

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export default async function OrdersPage({ searchParams }: Props) {
  const actor = await requireStaff();
  const query = readOrderQuery(await searchParams);
  const list = await load(ordersView(actor, query, new Date()));
  const record = list.mayRecord ? (
    <LinkButton href="/orders/new" kind="primary">
      Record an order
    </LinkButton>
  ) : null;
  return (
    <Page title="Orders" actions={record}>
      <OrderFilters query={query} list={list} />
      <OrderTable list={list} query={query} />
      <PageTurns
        path="/orders"
        query={query}
        next={list.next}
        previous={list.previous}
        of="orders"
        total={list.count > 0 ? `${countText(list.count)} order${list.count === 1 ? "" : "s"}` : undefined}
      />
    </Page>
  );
}
