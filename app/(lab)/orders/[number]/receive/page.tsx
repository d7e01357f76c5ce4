import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { DateField } from "@/app/_ui/date-field.client";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { receivableView } from "@/lib/views/order/receivable";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { BuildFields } from "../../../sensors/build-fields";
import { OpenRolls } from "../rolls/open-rolls";
import { receiveSensorsAction } from "./actions";
import { ChecksForAll } from "./checks-for-all";
import { RollNotice } from "./roll-notice";
import { SerialsAndChecks } from "./serials-and-checks.client";
import { StillHere } from "./still-here";
import { TakenIn } from "./taken-in";

export const metadata = { title: "Take sensors in" };

type Props = {
  readonly params: Promise<{ readonly number: string }>;
  readonly searchParams: Promise<{ readonly taken?: string; readonly deviating?: string }>;
};

export default async function ReceivePage({ params, searchParams }: Props) {
  const actor = await requirePermission("sensor.receive");
  const order = await load(receivableView(actor, (await params).number));
  const open = order.lines.filter(({ toCome }) => toCome > 0);
  const trail = [
    { label: "Orders", href: "/orders" },
    { label: order.number, href: `/orders/${order.number}` },
  ];
  return (
    <Page
      title="Take sensors in"
      crumbs={<Breadcrumb trail={trail} />}
      lead={`For order ${order.number} of ${order.customer}. All sensors of one paste are stored, or none.`}
      actions={<LinkButton href={`/orders/${order.number}/receive/file`}>From a file</LinkButton>}
    >
      <StillHere twice={order.twice} />
      <TakenIn number={order.number} {...(await searchParams)} />
      <OpenRolls order={null} rolls={order.openRolls} />
      {order.isOpen && open.length > 0 ? (
        <ActionForm action={receiveSensorsAction} label="Take sensors in" shape="wide">
          <input type="hidden" name="orderNumber" value={order.number} />
          <div className="fields">
            <SelectField
              name="position"
              label="Order line"
              choices={open.map((line) => ({
                value: String(line.position),
                label: `Line ${line.position}: type ${line.typeLetter}, ${line.construction}; ${line.toCome} of ${line.quantity} to come`,
              }))}
            />
            <DateField
              name="receivedOn"
              label="Received on"
              defaultValue={new Date().toISOString().slice(0, 10)}
            />
          </div>
          {order.asksForRolls ? <RollNotice /> : null}
          <SerialsAndChecks stillHere={order.stillHere}>
            <ChecksForAll />
            <BuildFields asksForRolls={order.asksForRolls} />
          </SerialsAndChecks>
          <div className="form-actions">
            <SubmitButton>Take them in</SubmitButton>
            <noscript>
              <button type="submit" name="listSensors" value="1" className="button" data-kind="quiet">
                List them one by one
              </button>
            </noscript>
          </div>
        </ActionForm>
      ) : (
        <Notice
          kind="info"
          title={order.isOpen ? "All sensors of this order are here" : `This order is ${order.state}`}
        >
          {order.state === "recorded"
            ? "Accept the order first; then its sensors can be taken in. "
            : "No more sensors are taken in for it. "}
          <LinkButton href={`/orders/${order.number}`}>To the order</LinkButton>
        </Notice>
      )}
    </Page>
  );
}
