import type { Metadata } from "next";
import Link from "next/link";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { may } from "@/lib/domain/staff/permissions";
import { portalSensorsView } from "@/lib/views/portal/sensors";
import { portalWaitingView } from "@/lib/views/portal/waiting";
import { portalCertificatesView } from "@/lib/views/portal-certificates";
import { portalOrdersView } from "@/lib/views/portal-orders";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { CertificateChoice } from "./certificate-choice";
import { OrderList } from "./order-list";
import { WaitingList } from "./waiting-list";

export const metadata: Metadata = { title: "Your calibrations" };

export default async function PortalPage() {
  const actor = await requireCustomer();
  const now = new Date();
  const waiting = await load(portalWaitingView(actor, now));
  const { orders: open, next } = await load(portalOrdersView(actor, { onlyOpen: true }));
  const { certificates } = await load(portalCertificatesView(actor));
  const { due } = await load(portalSensorsView(actor, now));
  return (
    <Page
      title="Your calibrations"
      lead="What is under way, and the certificates that are ready."
      actions={
        may(actor.roles, "portal.order") ? (
          <LinkButton href="/portal/request" kind="primary">
            Request work
          </LinkButton>
        ) : null
      }
    >
      {waiting.questions.length + waiting.offers.length > 0 ? (
        <Section title="This waits for you">
          <WaitingList waiting={waiting} />
        </Section>
      ) : null}
      {due > 0 ? (
        <Section title="Due">
          <p>
            <Link href="/portal/sensors">
              {due} {due === 1 ? "sensor is" : "sensors are"} due by your interval
            </Link>
          </p>
        </Section>
      ) : null}
      <Section title="Under way">
        {open.length > 0 ? (
          <>
            <OrderList orders={open} />
            {next === null ? null : <Link href="/portal/orders">All orders</Link>}
          </>
        ) : (
          <EmptyState title="Nothing under way">
            An order shows here from the day you ask for it until your sensors are back with you.
          </EmptyState>
        )}
      </Section>
      <Section title="Latest certificates">
        <CertificateChoice certificates={certificates.slice(0, 5)} />
        {certificates.length > 5 ? (
          <p>
            <Link href="/portal/certificates">All certificates</Link>
          </p>
        ) : null}
      </Section>
      <Section title="Not as it should be?">
        <Link href="/portal/complaints">Tell us, or see what came of it</Link>
      </Section>
    </Page>
  );
}
