import { FilterLinks } from "@/app/_ui/filter-links";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { PageTurns } from "@/app/_ui/page-turns";
import { Tabs } from "@/app/_ui/tabs";
import { countText, shortCount } from "@/lib/domain/list/page";
import { addressOf, changed } from "@/lib/domain/list/query";
import { type RunFilter, readRunQuery } from "@/lib/domain/run/list-query";
import { runStateLabels } from "@/lib/domain/run/states";
import { may } from "@/lib/domain/staff/permissions";
import { runsView } from "@/lib/views/run/runs";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { RunTable } from "./run-table";

export const metadata = { title: "Runs" };

const labels: Readonly<Record<RunFilter, string>> = { open: "Open", ...runStateLabels, all: "All" };

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export default async function RunsPage({ searchParams }: Props) {
  const actor = await requireStaff();
  const query = readRunQuery(await searchParams);
  const list = await load(runsView(actor, query));
  const create = may(actor.roles, "run.perform") ? (
    <LinkButton href="/runs/new" kind="primary">
      Plan a run
    </LinkButton>
  ) : null;
  const lead = `${countText(list.waiting)} received sensor${list.waiting === 1 ? " waits" : "s wait"} for a furnace.`;
  const hrefOf = (show: RunFilter) =>
    addressOf("/runs", changed(query, { show: show === "all" ? undefined : show }));
  return (
    <Page title="Runs" actions={create} lead={lead}>
      <Tabs
        label="Runs by state"
        current={hrefOf(list.filter)}
        tabs={list.filters.map(({ name, count }) => ({
          label: labels[name],
          href: hrefOf(name),
          count: shortCount(count),
        }))}
      />
      {query.furnace ? (
        <FilterLinks
          label="Furnace"
          links={[
            {
              label: list.furnace ?? "Furnace",
              isOn: true,
              href: addressOf("/runs", changed(query, { furnace: undefined })),
            },
          ]}
        />
      ) : null}
      <RunTable runs={list.runs} isAny={list.isAny} />
      <PageTurns path="/runs" query={query} next={list.next} previous={list.previous} of="runs" />
    </Page>
  );
}
