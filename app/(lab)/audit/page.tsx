import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { StateMark } from "@/app/_ui/state-mark";
import { auditLogView, chainVerdictView } from "@/lib/views/audit-log";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { AuditFilters } from "./audit-filters";
import { type AuditQuery, auditAddress, readAuditQuery } from "./audit-query";
import { EventTable } from "./event-table";
import { LogVerdict } from "./log-verdict";

export const metadata = { title: "Audit" };

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

const filterOf = ({ before: _, ...filter }: AuditQuery) => filter;

export default async function AuditPage({ searchParams }: Props) {
  const actor = await requirePermission("audit.read");
  const query = readAuditQuery(await searchParams);
  const before = query.before === undefined ? null : BigInt(query.before);
  const [verdict, log] = await Promise.all([
    load(chainVerdictView(actor)),
    load(auditLogView(actor, filterOf(query), before)),
  ]);
  return (
    <Page
      title="Audit"
      lead="Who did what, and when, from the first day on. Each event carries the hash of the one before it, so that none can be changed, taken out or put in unnoticed."
      state={<StateMark state={verdict.kind === "whole" ? "verified" : "broken"} />}
    >
      <LogVerdict verdict={verdict} />
      <AuditFilters query={query} />
      <EventTable rows={log.rows} query={query} />
      <nav className="row" aria-label="Pages of the log">
        {query.before === undefined ? null : (
          <LinkButton href={auditAddress({ ...query, before: undefined })}>Newest</LinkButton>
        )}
        {log.next === null ? null : (
          <LinkButton href={auditAddress({ ...query, before: log.next })}>Older</LinkButton>
        )}
      </nav>
    </Page>
  );
}
