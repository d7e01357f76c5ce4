import type { Metadata } from "next";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { portalOrdersView } from "@/lib/views/portal-orders";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { OrderList } from "../order-list";

export const metadata: Metadata = { title: "Your orders" };

export default async function PortalOrdersPage() {
  const actor = await requireCustomer();
  const orders = await load(portalOrdersView(actor));
  return (
    <Page title="Your orders" lead="The newest first.">
      {orders.length > 0 ? (
        <OrderList orders={orders} />
      ) : (
        <EmptyState title="No order yet">
          Write to the laboratory or call; your order shows here once it is recorded.
        </EmptyState>
      )}
    </Page>
  );
}
