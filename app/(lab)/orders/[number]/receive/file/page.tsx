import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Disclosure } from "@/app/_ui/disclosure";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field.client";
import { listColumns, wordsToWrite } from "@/lib/domain/intake/columns";
import { sensorListLimits } from "@/lib/domain/intake/list-limits";
import { receivableView } from "@/lib/views/order/receivable";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { OpenRolls } from "../../rolls/open-rolls";
import { RollNotice } from "../roll-notice";
import { IntakeFileForm } from "./intake-file-form.client";

export const metadata = { title: "Take sensors in from a file" };

type Props = { readonly params: Promise<{ readonly number: string }> };

const Columns = () => (
  <Disclosure summary="The columns it may have">
    <ul className="list">
      {listColumns.map((column) => (
        <li key={column.field}>
          <strong>{column.names[0]}</strong>
          {column.names.length > 1 ? ` (or ${column.names.slice(1).join(", ")})` : ""}
          {column.words ? `: ${wordsToWrite(column)}` : ""}
        </li>
      ))}
    </ul>
  </Disclosure>
);

export default async function ReceiveFilePage({ params }: Props) {
  const actor = await requirePermission("sensor.receive");
  const order = await load(receivableView(actor, (await params).number));
  const open = order.lines.filter(({ toCome }) => toCome > 0);
  const trail = [
    { label: "Orders", href: "/orders" },
    { label: order.number, href: `/orders/${order.number}` },
    { label: "Take sensors in", href: `/orders/${order.number}/receive` },
  ];
  return (
    <Page
      title="Take sensors in from a file"
      crumbs={<Breadcrumb trail={trail} />}
      lead={`For order ${order.number} of ${order.customer}. The list is looked at first; then all of it is stored, or none.`}
    >
      <p>
        {order.asksForRolls ? "“serial”, “lot” and “roll” are needed." : "Only “serial” is needed."} Numbers
        have a decimal point; one with a comma is refused, never guessed.{" "}
        <a href="/api/intake-template">The template (CSV)</a>.
      </p>
      <Columns />
      <OpenRolls order={null} rolls={order.openRolls} />
      {order.isOpen && open.length > 0 ? (
        <IntakeFileForm
          orderNumber={order.number}
          longestBytes={sensorListLimits.bytes}
          today={new Date().toISOString().slice(0, 10)}
        >
          {order.asksForRolls ? <RollNotice /> : null}
          <SelectField
            name="position"
            label="Order line"
            choices={[
              { value: "", label: "As the list says, by line or type" },
              ...open.map((line) => ({
                value: String(line.position),
                label: `Line ${line.position}: type ${line.typeLetter}; ${line.toCome} to come`,
              })),
            ]}
          />
        </IntakeFileForm>
      ) : (
        <Notice kind="info" title="No more sensors are to come">
          <Link href={`/orders/${order.number}`}>To the order</Link>
        </Notice>
      )}
    </Page>
  );
}
