import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { orderFormView } from "@/lib/views/order/order-form";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { OrderFields } from "../../order-fields";
import { changeOrderAction } from "../contract/actions";
import { ReviewQuestions } from "../contract/review-questions";

export const metadata = { title: "Change an accepted order" };

type Props = { readonly params: Promise<{ readonly number: string }> };

export default async function ChangeOrderPage({ params }: Props) {
  const actor = await requirePermission("order.accept");
  const order = await load(orderFormView(actor, (await params).number, new Date()));
  const here = `/orders/${order.number}`;
  const trail = [
    { label: "Orders", href: "/orders" },
    { label: order.number, href: here },
  ];
  return (
    <Page
      title={`Change order ${order.number}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead={`For ${order.customer}. It was accepted: what changes is reviewed again and kept beside what was agreed (ISO/IEC 17025:2017, 7.1.6).`}
    >
      {order.openDifferences > 0 ? (
        <Notice kind="info" title="A difference is not settled">
          Settle it with the customer under <a href={`${here}#differences`}>Differences</a>; then the order
          can be changed.
        </Notice>
      ) : order.state === "accepted" ? (
        <ActionForm action={changeOrderAction} label="Change the order">
          <input type="hidden" name="number" value={order.number} />
          <input type="hidden" name="version" value={order.version} />
          <Notice kind="info" title="Runs under way stand still">
            Runs with a sensor of this order take no more readings until a technician has acknowledged the
            change.
          </Notice>
          <TextArea name="reason" label="Why it changes" rows={2} maxLength={1000} />
          <TextField name="agreedWith" label="Agreed with, of the customer" maxLength={120} />
          <OrderFields order={order} providers={order.providers} />
          <FieldGroup legend="Reviewed again">
            <ReviewQuestions goesOut={order.lines.some(({ providerId }) => providerId !== "")} />
            <CheckboxField
              name="toldCustomer"
              label="The customer was told of what the review finds, and agrees."
              hint="Asked where there is something to tell: a point that cannot be done as things stand, a class that defines nothing there, work done elsewhere. What was told is kept."
            />
          </FieldGroup>
          <div className="form-actions">
            <SubmitButton pending="Changing…">Change the order</SubmitButton>
            <LinkButton href={here}>Leave it as it was</LinkButton>
          </div>
        </ActionForm>
      ) : (
        <Notice kind="info" title={`This order is ${order.state}`}>
          An accepted order is changed here; one that is recorded is amended.
        </Notice>
      )}
    </Page>
  );
}
