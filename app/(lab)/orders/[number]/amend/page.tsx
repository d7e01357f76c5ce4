import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { orderFormView } from "@/lib/views/order/order-form";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { amendOrderAction } from "../../actions";
import { OrderFields } from "../../order-fields";

export const metadata = { title: "Amend an order" };

type Props = { readonly params: Promise<{ readonly number: string }> };

export default async function AmendOrderPage({ params }: Props) {
  const actor = await requirePermission("order.record");
  const order = await load(orderFormView(actor, (await params).number, new Date()));
  const trail = [
    { label: "Orders", href: "/orders" },
    { label: order.number, href: `/orders/${order.number}` },
  ];
  return (
    <Page
      title={`Amend order ${order.number}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead={`For ${order.customer}.`}
    >
      {order.state === "recorded" ? (
        <ActionForm action={amendOrderAction} label="Amend the order">
          <input type="hidden" name="number" value={order.number} />
          <input type="hidden" name="version" value={order.version} />
          <OrderFields order={order} providers={order.providers} />
          <div className="form-actions">
            <SubmitButton>Save the order</SubmitButton>
            <LinkButton href={`/orders/${order.number}`}>Leave it as it was</LinkButton>
          </div>
        </ActionForm>
      ) : (
        <Notice kind="info" title={`This order is ${order.state}`}>
          Its lines are fixed. What is to be added goes into another order.
        </Notice>
      )}
    </Page>
  );
}
