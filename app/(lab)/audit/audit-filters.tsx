import { LinkButton } from "@/app/_ui/link-button";
import { Tabs } from "@/app/_ui/tabs";
import { type AuditQuery, auditAddress } from "./audit-query";

const kinds = [
  ["order", "Orders"],
  ["sensor", "Sensors"],
  ["run", "Runs"],
  ["certificate", "Certificates"],
  ["equipment", "Standards"],
  ["furnace", "Furnaces"],
  ["customer", "Customers"],
  ["person", "People"],
  ["laboratory", "Laboratory"],
] as const;

export function AuditFilters({ query }: { readonly query: AuditQuery }) {
  const narrowed = query.entityId !== undefined || query.actorId !== undefined;
  return (
    <>
      <Tabs
        label="What the events are about"
        current={auditAddress({ entityKind: query.entityKind })}
        tabs={[
          { label: "Everything", href: "/audit" },
          ...kinds.map(([entityKind, label]) => ({ label, href: auditAddress({ entityKind }) })),
        ]}
      />
      {narrowed ? (
        <div className="row">
          <span>
            {query.actorId === undefined
              ? "Only what happened to one thing."
              : "Only what one person or part did."}
          </span>
          <LinkButton href="/audit">Show everything</LinkButton>
        </div>
      ) : null}
    </>
  );
}
