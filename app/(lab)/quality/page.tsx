import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Tabs } from "@/app/_ui/tabs";
import { Timestamp } from "@/app/_ui/timestamp";
import {
  nonconformityKindLabels,
  nonconformityKinds,
  nonconformityStateLabels,
  nonconformityStates,
  subjectKindLabels,
} from "@/lib/domain/nonconformity/labels";
import { nonconformitiesOnPage, nonconformitiesView } from "@/lib/views/nonconformity/nonconformities";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { NonconformityMark } from "./nonconformity-mark";

export const metadata = { title: "Quality" };

type Query = { readonly state?: string; readonly kind?: string; readonly page?: string };
type Props = { readonly searchParams: Promise<Query> };

const states = ["not-closed", ...nonconformityStates, "all"] as const;
const kinds = ["all", ...nonconformityKinds] as const;
const stateLabels = { "not-closed": "To be done", all: "All", ...nonconformityStateLabels };
const kindLabels = { all: "Both kinds", ...nonconformityKindLabels };

const columns = [
  { key: "number", header: "Number" },
  { key: "kind", header: "Kind" },
  { key: "subject", header: "Found on" },
  { key: "title", header: "What" },
  { key: "opened", header: "Opened" },
  { key: "state", header: "State" },
];

const hrefOf = (state: string, kind: string, page = 1) =>
  `/quality?${new URLSearchParams({ state, kind, ...(page > 1 ? { page: String(page) } : {}) })}`;

export default async function QualityPage({ searchParams }: Props) {
  const actor = await requireStaff();
  const query = await searchParams;
  const state = states.find((one) => one === query.state) ?? "not-closed";
  const kind = kinds.find((one) => one === query.kind) ?? "all";
  const page = Math.max(1, Number.parseInt(query.page ?? "1", 10) || 1);
  const { rows, count, mayOpen } = await load(nonconformitiesView(actor, { state, kind, page }));
  return (
    <Page
      title="Quality"
      lead="Nonconforming work and complaints: what was found, what it did to results, and who closed it."
      actions={
        mayOpen ? (
          <LinkButton href="/quality/new" kind="primary">
            Report nonconforming work
          </LinkButton>
        ) : null
      }
    >
      <Tabs
        label="State"
        current={hrefOf(state, kind)}
        tabs={states.map((one) => ({ href: hrefOf(one, kind), label: stateLabels[one] }))}
      />
      <Tabs
        label="Kind"
        current={hrefOf(state, kind)}
        tabs={kinds.map((one) => ({ href: hrefOf(state, one), label: kindLabels[one] }))}
      />
      <DataTable
        caption="Nonconforming work and complaints"
        captionUnseen
        columns={columns}
        empty={
          <EmptyState title="Nothing here">Report what you find from the page where you find it.</EmptyState>
        }
        rows={rows.map((row) => ({
          key: row.number,
          cells: {
            number: <Link href={`/quality/${row.number}`}>{row.number}</Link>,
            kind: nonconformityKindLabels[row.kind],
            subject: `${subjectKindLabels[row.subjectKind]} ${row.subjectName}`,
            title: row.title,
            opened: <Timestamp at={row.openedAt} precision="day" />,
            state: <NonconformityMark state={row.state} />,
          },
        }))}
      />
      {page * nonconformitiesOnPage < count ? (
        <p>
          <Link href={hrefOf(state, kind, page + 1)}>Earlier ones</Link>
        </p>
      ) : null}
    </Page>
  );
}
