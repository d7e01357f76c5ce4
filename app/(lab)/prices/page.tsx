import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { priceListView } from "@/lib/views/price/price-list";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { CurrencyForm } from "./currency-form";
import { PriceForm } from "./price-form";
import { PriceTable } from "./price-table";

export const metadata = { title: "Prices" };

export default async function PricesPage() {
  const view = await load(priceListView(await requireStaff(), new Date()));
  return (
    <Page
      title="Prices"
      lead="What an offer is reckoned from. A price is never changed: another one follows it, and offers made keep theirs."
    >
      <Section title="In force and to come" wide>
        <PriceTable caption="Prices in force and to come" prices={view.current} view={view} />
      </Section>
      {view.maySetCurrency ? (
        <Section title="Currency" id="currency">
          <CurrencyForm currency={view.currency} />
        </Section>
      ) : null}
      {view.mayRecord ? (
        <Section title="Record a price" id="record">
          <PriceForm today={view.today} currency={view.currency} />
        </Section>
      ) : null}
      {view.ended.length > 0 ? (
        <Section title="Ended" wide>
          <PriceTable caption="Prices that ended" prices={view.ended} view={view} />
        </Section>
      ) : null}
    </Page>
  );
}
