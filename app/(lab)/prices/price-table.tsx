import { ActionForm } from "@/app/_ui/action-form.client";
import { DataTable } from "@/app/_ui/data-table";
import { DateField } from "@/app/_ui/date-field.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { EmptyState } from "@/app/_ui/empty-state";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import type { PriceListView } from "@/lib/views/price/price-list";
import { endPriceAction } from "./actions";

type Price = PriceListView["current"][number];

const marks = {
  "in-force": <StateMark state="done" label="In force" />,
  "to-come": <StateMark state="open" label="To come" />,
  ended: <StateMark state="cancelled" label="Ended" />,
} as const;

function EndForm({ price, today }: { readonly price: Price; readonly today: string }) {
  return (
    <Disclosure summary="End it">
      <ActionForm action={endPriceAction} label={`End the price ${price.title}`}>
        <input type="hidden" name="id" value={price.id} />
        <DateField name="lastDay" label="Its last day" defaultValue={today} />
        <div className="form-actions">
          <SubmitButton>End the price</SubmitButton>
        </div>
      </ActionForm>
    </Disclosure>
  );
}

type Props = { readonly caption: string; readonly prices: readonly Price[]; readonly view: PriceListView };

export function PriceTable({ caption, prices, view }: Props) {
  return (
    <DataTable
      caption={caption}
      captionUnseen
      columns={[
        { key: "title", header: "On the offer" },
        { key: "type", header: "Type" },
        { key: "per", header: "Counted by" },
        { key: "money", header: "Price", unit: view.currency, align: "number" },
        { key: "days", header: "Days" },
        { key: "standing", header: "State" },
      ]}
      rows={prices.map((price) => ({
        key: price.id,
        cells: {
          title: (
            <>
              {price.title}
              {price.title === price.what ? null : <div className="quiet">{price.what}</div>}
            </>
          ),
          type: price.typeLetter ?? "every",
          per: price.perText,
          money: price.money,
          days: price.validUntil ? `${price.validFrom} to ${price.validUntil}` : `from ${price.validFrom}`,
          standing: (
            <>
              {marks[price.standing]}
              {view.mayRecord && price.validUntil === null ? (
                <EndForm price={price} today={view.today} />
              ) : null}
            </>
          ),
        },
      }))}
      empty={
        <EmptyState title="No price is recorded">
          Until there is one for what an order asks for, no offer can be made.
        </EmptyState>
      }
    />
  );
}
