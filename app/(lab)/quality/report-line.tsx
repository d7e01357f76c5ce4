import Link from "next/link";
import type { SubjectKind } from "@/lib/domain/nonconformity/labels";
import type { Actor } from "@/lib/domain/staff/actor";
import { nonconformitiesOnView } from "@/lib/views/nonconformity/on-subject";
import { load } from "@/lib/web/load";
import { NonconformityMark } from "./nonconformity-mark";

type Props = {
  readonly actor: Actor;
  readonly kind: SubjectKind;
  /** As it stands on its page: T-000123, O-2026-0007, the certificate's number, the equipment's tag. */
  readonly name: string;
};

/** What was reported of a thing, and the way to report more: one line on its own page. */
export async function ReportLine({ actor, kind, name }: Props) {
  const { rows, mayOpen } = await load(nonconformitiesOnView(actor, kind, name));
  if (rows.length === 0 && !mayOpen) return null;
  return (
    <aside aria-label="Nonconforming work">
      {rows.length === 0 ? null : (
        <ul className="list">
          {rows.map((row) => (
            <li key={row.number}>
              <NonconformityMark state={row.state} />{" "}
              <Link href={`/quality/${row.number}`}>{row.number}</Link> {row.title}
            </li>
          ))}
        </ul>
      )}
      {mayOpen ? (
        <p className="quiet">
          <Link href={`/quality/new?${new URLSearchParams({ kind, name })}`} prefetch={false}>
            Report nonconforming work
          </Link>
        </p>
      ) : null}
    </aside>
  );
}
