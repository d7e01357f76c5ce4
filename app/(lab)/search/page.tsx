import Link from "next/link";
import { EmptyState } from "@/app/_ui/empty-state";
import { FindForm } from "@/app/_ui/find-form";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { readSearchText } from "@/lib/domain/search/search-text";
import { searchView } from "@/lib/views/search";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { HitState } from "./hit-state";

export const metadata = { title: "Search" };

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

const hint =
  "A serial, an order, certificate, run or purchase order number, a customer, a tag, equipment, or the number of nonconforming work: from its beginning; a purchase order also from its end, a serial by any three characters or more.";

export default async function SearchPage({ searchParams }: Props) {
  const actor = await requireStaff();
  const text = readSearchText(await searchParams);
  const groups = await load(searchView(actor, text));
  return (
    <Page title={text ? `Found for “${text}”` : "Search"} lead={text ? undefined : hint}>
      <FindForm path="/search" name="q" label="Anything with a name or a number" value={text} />
      {text && groups.length === 0 ? <EmptyState title="Nothing has this name">{hint}</EmptyState> : null}
      {groups.map(({ kind, title, hits, all }) => (
        <Section key={kind} title={title} note={all ? <Link href={all}>All of them</Link> : null}>
          <ul className="list">
            {hits.map((hit) => (
              <li key={`${hit.label} ${hit.key}`} className="row">
                <Link href={hit.href}>{hit.isExact ? <strong>{hit.label}</strong> : hit.label}</Link>
                <span>{hit.detail}</span>
                <HitState hit={hit} />
              </li>
            ))}
          </ul>
        </Section>
      ))}
    </Page>
  );
}
