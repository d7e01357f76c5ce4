import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { repeatOrderView } from "@/lib/views/order/repeat";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { repeatOrderAction } from "./actions";

export const metadata = { title: "Repeat an order" };

type Props = { readonly params: Promise<{ readonly number: string }> };

export default async function RepeatPage({ params }: Props) {
  const actor = await requirePermission("order.record");
  const view = await load(repeatOrderView(actor, (await params).number, new Date()));
  const here = `/orders/${view.number}`;
  const trail = [
    { label: "Orders", href: "/orders" },
    { label: view.number, href: here },
  ];
  return (
    <Page
      title={`Repeat ${view.number}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead={`For ${view.customer}: the same lines, options, decision rule and addresses. Purchase order, agreement and day are left open.`}
    >
      <Section title="What it will ask">
        <ul className="list">
          {view.lines.map(({ position, text, setpoints, unit }) => (
            <li key={position}>
              {text}: {setpoints || "no setpoints"} {unit}
            </li>
          ))}
        </ul>
      </Section>
      <Section title="Changed since">
        {view.changes.length === 0 ? (
          <p>Nothing: procedure, scope and prices are as they were.</p>
        ) : (
          <Notice kind="info" title="Look at these in the contract review">
            <ul className="list">
              {view.changes.map((change) => (
                <li key={change}>{change}</li>
              ))}
            </ul>
          </Notice>
        )}
      </Section>
      <div className="form-actions">
        {view.isRepeatable ? (
          <ActionForm action={repeatOrderAction} label="Repeat the order" shape="inline">
            <input type="hidden" name="number" value={view.number} />
            <SubmitButton>Make the order</SubmitButton>
          </ActionForm>
        ) : (
          <p>This order is {view.state}: nobody has looked at it yet.</p>
        )}
        <LinkButton href={here}>Leave it</LinkButton>
      </div>
    </Page>
  );
}
