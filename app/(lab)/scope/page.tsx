import { CapabilityChart } from "@/app/_ui/drawing/capability-chart";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { isoDay } from "@/lib/domain/calibration/due";
import { scopeView } from "@/lib/views/scope";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { DayForm } from "./day-form";
import { LineTable } from "./line-table";

export const metadata = { title: "Scope" };

type Props = { readonly searchParams: Promise<{ readonly on?: string | string[] }> };

/** A day from the address; anything else is today. */
const dayOf = (typed: string | string[] | undefined, now: Date): string =>
  typeof typed === "string" && /^\d{4}-\d{2}-\d{2}$/.test(typed) && !Number.isNaN(Date.parse(typed))
    ? typed
    : isoDay(now);

export default async function ScopePage({ searchParams }: Props) {
  const actor = await requireStaff();
  const now = new Date();
  const view = await load(scopeView(actor, dayOf((await searchParams).on, now), now));
  return (
    <Page
      title="Scope"
      lead="The laboratory’s calibration and measurement capability, by type and range. No smaller U is reported; a result outside is marked on its certificate. With no line in force, nothing is claimed."
      actions={view.mayRecord ? <LinkButton href="/scope/new">Record a line</LinkButton> : null}
    >
      <DayForm day={view.day} />
      {view.types.map(({ typeLetter, plot }) => (
        <Section key={typeLetter} title={`Type ${typeLetter}`} note={`In force on ${view.day}.`}>
          <CapabilityChart view={plot} />
        </Section>
      ))}
      {view.types.length === 0 ? (
        <EmptyState title={`No line was in force on ${view.day}`}>
          Results of that day claim no accreditation, and no U is held against a capability.
        </EmptyState>
      ) : null}
      <Section title="Every line" note="A line is ended, never changed." wide>
        <LineTable view={view} />
      </Section>
    </Page>
  );
}
