import type { Metadata } from "next";
import Link from "next/link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { portalCertificatesView } from "@/lib/views/portal-certificates";
import { portalOrdersView } from "@/lib/views/portal-orders";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { CertificateChoice } from "./certificate-choice";
import { OrderList } from "./order-list";

export const metadata: Metadata = { title: "Your calibrations" };

export default async function PortalPage() {
  const actor = await requireCustomer();
  const orders = await load(portalOrdersView(actor));
  const certificates = await load(portalCertificatesView(actor));
  const open = orders.filter((order) => order.isOpen);
  return (
    <Page title="Your calibrations" lead="What is under way, and the certificates that are ready.">
      <Section title="Under way">
        {open.length > 0 ? (
          <OrderList orders={open} />
        ) : (
          <EmptyState title="Nothing under way">
            An order shows here from the day we record it until your sensors are back with you.
          </EmptyState>
        )}
      </Section>
      <Section title="Latest certificates">
        <CertificateChoice certificates={certificates.slice(0, 5)} />
        {certificates.length > 5 ? (
          <p>
            <Link href="/portal/certificates">All {certificates.length} certificates</Link>
          </p>
        ) : null}
      </Section>
    </Page>
  );
}
