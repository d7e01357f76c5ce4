import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { Tabs } from "@/app/_ui/tabs";
import { isoDay } from "@/lib/domain/calibration/due";
import { equipmentKindHeadings } from "@/lib/domain/equipment/labels";
import { equipmentKinds } from "@/lib/domain/equipment/types";
import { may } from "@/lib/domain/staff/permissions";
import { standardsView } from "@/lib/views/standards";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { PrintEquipmentLabels } from "./print-equipment-labels";
import { filterOf, standardFilters } from "./standard-filters";
import { StandardTable } from "./standard-table";

export const metadata = { title: "Standards" };

type Props = { readonly searchParams: Promise<{ readonly show?: string | string[] }> };

const addressOf = (key: string): string => (key === "" ? "/standards" : `/standards?show=${key}`);

export default async function StandardsPage({ searchParams }: Props) {
  const actor = await requireStaff();
  const all = await load(standardsView(actor, isoDay(new Date())));
  const filter = filterOf((await searchParams).show);
  const rows = all.filter(filter.keeps);
  const mayRecord = may(actor.roles, "equipment.record");
  const record = mayRecord ? (
    <LinkButton href="/standards/new" kind="primary">
      Record equipment
    </LinkButton>
  ) : null;
  return (
    <Page
      title="Standards"
      lead="What the laboratory measures with. Every result names the ones it rests on, with the certificate that was in force on its day."
      actions={
        <>
          <LinkButton href="/providers">Providers</LinkButton>
          <LinkButton href="/standards/policy">When it blocks</LinkButton>
          {all.length > 0 ? record : null}
        </>
      }
    >
      {all.length === 0 ? (
        <EmptyState title="No equipment yet" action={record}>
          A run needs at least one reference thermocouple and a voltmeter, each with its certificate, a
          scanner, and a reference junction.
        </EmptyState>
      ) : (
        <Tabs
          label="Which equipment"
          current={addressOf(filter.key)}
          tabs={standardFilters.map(({ key, label, keeps }) => ({
            label,
            href: addressOf(key),
            count: all.filter(keeps).length,
          }))}
        />
      )}
      {all.length > 0 && rows.length === 0 ? <p className="quiet">None.</p> : null}
      {equipmentKinds
        .map((kind) => ({ kind, own: rows.filter((row) => row.kind === kind) }))
        .filter(({ own }) => own.length > 0)
        .map(({ kind, own }) => (
          <Section
            key={kind}
            title={equipmentKindHeadings[kind]}
            actions={
              mayRecord && filter.key !== "retired" ? (
                <PrintEquipmentLabels ids={own.map(({ id }) => id)} label="Print their labels" />
              ) : null
            }
            wide
          >
            <StandardTable caption={equipmentKindHeadings[kind]} rows={own} />
          </Section>
        ))}
    </Page>
  );
}
