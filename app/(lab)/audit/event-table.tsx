import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { Hash } from "@/app/_ui/hash";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import type { AuditRow } from "@/lib/views/audit-log";
import { type AuditQuery, auditAddress } from "./audit-query";

type Props = { readonly rows: readonly AuditRow[]; readonly query: AuditQuery };

const columns = [
  { key: "sequence", header: "No.", align: "number" as const },
  { key: "at", header: "When" },
  { key: "what", header: "What happened" },
  { key: "more", header: "Look further" },
  { key: "hash", header: "Hash" },
];

/** The page of the thing, where it has one of its own. */
const pageOf = ({ entityKind, entityId, named }: AuditRow): string | null => {
  const byName = { order: "orders", run: "runs", sensor: "sensors", certificate: "certificates" };
  const byId = { equipment: "standards", furnace: "furnaces", customer: "customers", person: "staff" };
  if (named && Object.hasOwn(byName, entityKind))
    return `/${byName[entityKind as keyof typeof byName]}/${named}`;
  if (entityId && Object.hasOwn(byId, entityKind))
    return `/${byId[entityKind as keyof typeof byId]}/${entityId}`;
  return entityKind === "laboratory" ? "/laboratory" : null;
};

export function EventTable({ rows, query }: Props) {
  return (
    <DataTable
      caption="Events, newest first"
      captionUnseen
      columns={columns}
      rowHeader="sequence"
      rows={rows.map((row) => ({
        key: row.sequence,
        tone: row.understood ? undefined : "bad",
        cells: {
          sequence: row.sequence,
          at: <Timestamp at={row.at} precision="second" />,
          what: (
            <>
              {query.actorId === row.actorId ? (
                <strong>{row.who}</strong>
              ) : (
                <Link href={auditAddress({ actorId: row.actorId })}>{row.who}</Link>
              )}{" "}
              {row.sentence}
              {row.about ? `: ${row.about}` : ""}
              {row.understood ? null : <StateMark state="broken" label="Not understood" />}
            </>
          ),
          more: <Further row={row} query={query} />,
          hash: <Hash value={row.hash} label={`Hash of event ${row.sequence}`} />,
        },
      }))}
      empty={<p className="quiet">No event fits this choice.</p>}
    />
  );
}

function Further({ row, query }: { readonly row: AuditRow; readonly query: AuditQuery }) {
  const page = pageOf(row);
  return (
    <span style={{ whiteSpace: "nowrap" }}>
      {page ? <Link href={page}>Open</Link> : null}{" "}
      {row.entityId && query.entityId !== row.entityId ? (
        <Link href={auditAddress({ entityKind: row.entityKind, entityId: row.entityId })}>Its history</Link>
      ) : null}
    </span>
  );
}
