import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { StateMark } from "@/app/_ui/state-mark";
import { Tabs } from "@/app/_ui/tabs";
import { Timestamp } from "@/app/_ui/timestamp";
import { holdKindLabels } from "@/lib/domain/hold/labels";
import { holdFilters, holdsOnPage, openHoldsView } from "@/lib/views/hold/open-holds";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";

export const metadata = { title: "Holds" };

type Props = { readonly searchParams: Promise<{ readonly show?: string; readonly page?: string }> };

const filterLabels = {
  all: "All",
  waiting: "Waiting for the customer",
  answered: "Answered: to be ended",
  "not-asked": "Nobody asked",
} as const;

const hrefOf = (filter: keyof typeof filterLabels) => (filter === "all" ? "/holds" : `/holds?show=${filter}`);

const columns = [
  { key: "what", header: "On hold" },
  { key: "customer", header: "Customer" },
  { key: "why", header: "Why" },
  { key: "since", header: "Since" },
  { key: "state", header: "Waits for" },
];

export default async function HoldsPage({ searchParams }: Props) {
  const actor = await requireStaff();
  const asked = await searchParams;
  const filter = holdFilters.find((one) => one === asked.show) ?? "all";
  const page = Math.max(1, Number.parseInt(asked.page ?? "1", 10) || 1);
  const { holds, count } = await load(openHoldsView(actor, { filter, page }));
  const next =
    page * holdsOnPage < count ? `${hrefOf(filter)}${filter === "all" ? "?" : "&"}page=${page + 1}` : null;
  return (
    <Page
      title="Holds"
      lead="What stands still, the longest first. It is neither loaded nor signed off meanwhile."
    >
      <Tabs
        label="Which holds"
        current={hrefOf(filter)}
        tabs={holdFilters.map((one) => ({ href: hrefOf(one), label: filterLabels[one] }))}
      />
      <DataTable
        caption="Holds"
        captionUnseen
        columns={columns}
        empty={
          <EmptyState title="Nothing stands still here">
            Holds are placed on a sensor’s or an order’s page.
          </EmptyState>
        }
        rows={holds.map((hold) => ({
          key: hold.id,
          tone: "watch",
          cells: {
            what: (
              <Link
                href={hold.tag === "" ? `/orders/${hold.orderNumber}#holds` : `/sensors/${hold.tag}#holds`}
              >
                {hold.tag === "" ? `Order ${hold.orderNumber}` : hold.tag}
              </Link>
            ),
            customer: hold.customer,
            why: `${holdKindLabels[hold.kind]}: ${hold.reason}`,
            since: <Timestamp at={hold.placedAt} precision="day" />,
            state: hold.isWaiting ? (
              <StateMark state="waiting" label="The customer" />
            ) : (
              <StateMark state="exception" label="The laboratory" />
            ),
          },
        }))}
      />
      {next ? (
        <p>
          <Link href={next}>Further holds</Link>
        </p>
      ) : null}
    </Page>
  );
}
