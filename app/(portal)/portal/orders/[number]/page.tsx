import type { Metadata } from "next";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { Thread } from "@/app/_ui/thread";
import { TypeLetter } from "@/app/_ui/type-letter";
import { portalOrderView } from "@/lib/views/portal-orders";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";

type Props = { readonly params: Promise<{ readonly number: string }> };

export const generateMetadata = async ({ params }: Props): Promise<Metadata> => ({
  title: `Order ${(await params).number}`,
});

export default async function PortalOrderPage({ params }: Props) {
  const actor = await requireCustomer();
  const order = await load(portalOrderView(actor, (await params).number));
  const tokens = order.sensors.flatMap((sensor) => sensor.certificates.map(({ token }) => token));
  return (
    <Page
      title={`Order ${order.number}`}
      crumbs={<Breadcrumb trail={[{ label: "Your orders", href: "/portal/orders" }]} />}
      lead={order.purchaseOrder ? `Your reference ${order.purchaseOrder}.` : undefined}
      thread={
        <Thread
          label={`Progress of order ${order.number}`}
          beads={order.progress.steps}
          next={order.progress.next}
        />
      }
      actions={
        tokens.length > 1 ? (
          <LinkButton
            href={`/api/certificates/zip?${tokens.map((token) => `token=${token}`).join("&")}`}
            download
          >
            All {tokens.length} certificates together
          </LinkButton>
        ) : null
      }
    >
      <Section title="Your sensors">
        {order.sensors.length === 0 ? <p>None has reached us yet.</p> : null}
        <ul className="stack plain-list">
          {order.sensors.map((sensor) => (
            <li key={sensor.tag}>
              <strong>{sensor.serial}</strong> <TypeLetter letter={sensor.typeLetter} />{" "}
              <span className="quiet">our label {sensor.tag}</span>
              <br />
              {sensor.where}.{sensor.remark ? ` Found on arrival: ${sensor.remark}.` : ""}
              {sensor.certificates.map((certificate) => (
                <span key={certificate.number}>
                  {" "}
                  <a href={certificate.href}>Download {certificate.number} (PDF)</a>
                </span>
              ))}
            </li>
          ))}
        </ul>
      </Section>
      <Section title="What you ordered">
        <ul className="plain-list">
          {order.lines.map((line) => (
            <li key={line.position}>
              {line.quantity} × type {line.typeLetter}, {line.construction}, at {line.setpoints}
              {line.tolerance ? `, judged by: ${line.tolerance}` : ", no statement of conformity"}.
            </li>
          ))}
        </ul>
      </Section>
    </Page>
  );
}
