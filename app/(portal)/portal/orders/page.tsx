import type { Metadata } from "next";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { PageTurns } from "@/app/_ui/page-turns";
import { portalOrdersView } from "@/lib/views/portal-orders";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { OrderList } from "../order-list";
import { turnIn } from "../turn-in";

export const metadata: Metadata = { title: "Your orders" };

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export default async function PortalOrdersPage({ searchParams }: Props) {
  const actor = await requireCustomer();
  const query = turnIn(await searchParams);
  const { orders, next, previous } = await load(portalOrdersView(actor, query));
  return (
    <Page title="Your orders" lead="The newest first.">
      {orders.length > 0 ? (
        <>
          <OrderList orders={orders} />
          <PageTurns path="/portal/orders" query={query} next={next} previous={previous} of="orders" />
        </>
      ) : (
        <EmptyState title="No order yet">
          Write to the laboratory or call; your order shows here once it is recorded.
        </EmptyState>
      )}
    </Page>
  );
}
