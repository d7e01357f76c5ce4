import type { Metadata } from "next";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { PageTurns } from "@/app/_ui/page-turns";
import { Section } from "@/app/_ui/section";
import { may } from "@/lib/domain/staff/permissions";
import { portalSensorsView } from "@/lib/views/portal/sensors";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { turnIn } from "../turn-in";
import { DueList } from "./due-list";
import { IntervalForm } from "./interval-form";

export const metadata: Metadata = { title: "Your sensors" };

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export default async function PortalSensorsPage({ searchParams }: Props) {
  const actor = await requireCustomer();
  const query = turnIn(await searchParams);
  const { sensors, count, next, previous, forAll } = await load(portalSensorsView(actor, new Date(), query));
  return (
    <Page
      title="Your sensors"
      lead="What was calibrated here, and what is due by the interval you set. What is due comes first."
    >
      <Section title="Calibrated here">
        {sensors.length > 0 ? (
          <DueList
            sensors={sensors}
            mayOrder={may(actor.roles, "portal.order")}
            isPart={sensors.length < count}
          />
        ) : (
          <EmptyState title="None yet">A sensor is here from its first certificate on.</EmptyState>
        )}
        <PageTurns
          path="/portal/sensors"
          query={query}
          next={next}
          previous={previous}
          of="sensors"
          {...(count > sensors.length ? { total: `${count} sensors` } : {})}
        />
      </Section>
      <Section
        title="How often"
        note="You decide. We remind you by letter, once for each sensor and due day; a sensor may have an interval of its own on its page."
      >
        {may(actor.roles, "portal.manage") ? (
          <IntervalForm serial="" {...forAll} />
        ) : (
          <p>
            {forAll.months === null
              ? "No interval is set for all."
              : `Every ${forAll.months} months, reminded ${forAll.noticeDays} days before.`}
          </p>
        )}
      </Section>
    </Page>
  );
}
