import { DataTable } from "@/app/_ui/data-table";
import { FieldList } from "@/app/_ui/field-list";
import { Section } from "@/app/_ui/section";
import { formatMoney, groupedMoney } from "@/lib/domain/price/money";
import type { OfferContent as Content } from "@/lib/domain/quotation/content";
import { conformityWords, scopeWords } from "@/lib/domain/quotation/point-words";

type Line = Content["lines"][number];

const OfferLine = ({ line }: { readonly line: Line }) => (
  <div className="stack">
    <h3>
      Line {line.position}: {line.quantity} × type {line.typeLetter}
      {line.group ? `, “${line.group}”` : ""}
    </h3>
    <p>{line.description}</p>
    {line.specification ? <p>Judged by: {line.specification}.</p> : null}
    {line.extras.length > 0 ? (
      <ul className="list">
        {line.extras.map((extra) => (
          <li key={extra}>{extra}</li>
        ))}
      </ul>
    ) : null}
    <DataTable
      caption={`Points of line ${line.position}`}
      captionUnseen
      columns={[
        { key: "setpoint", header: "Setpoint" },
        { key: "tolerance", header: "Tolerance" },
        { key: "expected", header: "U to expect" },
        { key: "scope", header: "Scope" },
        { key: "conformity", header: "Pass or fail" },
      ]}
      rows={line.points.map((point) => ({
        key: point.setpoint,
        cells: {
          ...point,
          scope: scopeWords[point.scope],
          conformity: conformityWords[point.conformity],
        },
      }))}
    />
  </div>
);

const Price = ({ price }: { readonly price: NonNullable<Content["price"]> }) => {
  const money = (minor: number) => groupedMoney(minor, price.currency);
  return (
    <Section title="Price" note="Without tax.">
      <DataTable
        caption="What it costs"
        captionUnseen
        columns={[
          { key: "what", header: "What" },
          { key: "quantity", header: "Quantity", align: "number" },
          { key: "unit", header: "Price", unit: price.currency, align: "number" },
          { key: "amount", header: "Amount", unit: price.currency, align: "number" },
        ]}
        rows={price.lines.map((line) => ({
          key: `${line.key} ${line.per} ${line.position} ${line.title}`,
          cells: {
            what: line.position === null ? line.title : `${line.title}, line ${line.position}`,
            quantity: line.quantity,
            unit: money(line.unitAmount),
            amount: money(line.amount),
          },
        }))}
        foot={{ key: "sum", cells: { what: "Sum", amount: <strong>{money(price.total)}</strong> } }}
      />
    </Section>
  );
};

/** What is agreed to, in plain words; the same content as the PDF. */
export function OfferContent({ content }: { readonly content: Content }) {
  return (
    <>
      <Section title="In short">
        <FieldList
          items={[
            { label: "For", value: content.customer.name },
            {
              label: "Price, without tax",
              value: content.price ? formatMoney(content.price.total, content.price.currency) : "",
            },
            { label: "Delivery", value: content.delivery },
            { label: "Open until", value: content.validUntil },
          ]}
        />
      </Section>
      <Section title="Decision rule">
        <p>
          <strong>{content.rule.name}</strong>
        </p>
        <p>{content.rule.plain}</p>
      </Section>
      <Section title="Method">
        <p>{content.method}</p>
      </Section>
      {content.remarks.length > 0 ? (
        <Section title="Please note">
          <ul className="list">
            {content.remarks.map((remark) => (
              <li key={remark}>{remark}</li>
            ))}
          </ul>
        </Section>
      ) : null}
      <Section
        title="Work and points"
        note="U is the expanded uncertainty, as it can be expected today; the certificate states what was reached."
      >
        {content.lines.map((line) => (
          <OfferLine key={line.position} line={line} />
        ))}
      </Section>
      {content.price ? <Price price={content.price} /> : null}
    </>
  );
}
