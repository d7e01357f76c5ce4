import Link from "next/link";
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
import { takeOverOrderAction } from "../contract/actions";

export const metadata = { title: "Amend an order" };

type Props = { readonly params: Promise<{ readonly number: string }> };

export default async function AmendOrderPage({ params }: Props) {
  const actor = await requirePermission("order.record");
  const order = await load(orderFormView(actor, (await params).number, new Date()));
  const isRequest = order.state === "requested";
  const title = isRequest ? `Take over request ${order.number}` : `Amend order ${order.number}`;
  const trail = [
    { label: "Orders", href: "/orders" },
    { label: order.number, href: `/orders/${order.number}` },
  ];
  return (
    <Page title={title} crumbs={<Breadcrumb trail={trail} />} lead={`For ${order.customer}.`}>
      {isRequest || order.state === "recorded" ? (
        <ActionForm
          action={isRequest ? takeOverOrderAction : amendOrderAction}
          label={isRequest ? "Take the request over" : "Amend the order"}
        >
          <input type="hidden" name="number" value={order.number} />
          <input type="hidden" name="version" value={order.version} />
          {isRequest ? (
            <Notice kind="info" title="As the customer wrote it">
              <p className="lines">{order.requested}</p>
              {order.repeats ? (
                <p>
                  Repeats <Link href={`/orders/${order.repeats}`}>{order.repeats}</Link>. What was agreed
                  there stands below, to be looked at anew; who agrees to the rule, prices and the promised
                  day are open.
                </p>
              ) : null}
              <p className="quiet">It is kept beside the order word for word, whatever is written below.</p>
            </Notice>
          ) : null}
          <OrderFields order={order} providers={order.providers} />
          <div className="form-actions">
            <SubmitButton>{isRequest ? "Take the request over" : "Save the order"}</SubmitButton>
            <LinkButton href={`/orders/${order.number}`}>Leave it as it was</LinkButton>
          </div>
        </ActionForm>
      ) : (
        <Notice kind="info" title={`This order is ${order.state}`}>
          Its lines are fixed. An accepted order is changed with a reason and another review.
        </Notice>
      )}
    </Page>
  );
}
