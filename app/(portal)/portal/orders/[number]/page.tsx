import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { Thread } from "@/app/_ui/thread";
import { portalOffersView } from "@/lib/views/agreement/portal-offers";
import { customerPartsView } from "@/lib/views/order/parts";
import { portalOrderView } from "@/lib/views/portal-orders";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { Answered } from "./answered";
import { AnsweredOffer } from "./answered-offer";
import { Notes } from "./notes";
import { OrderedLines } from "./ordered-lines";
import { Papers } from "./papers";
import { Questions } from "./questions";
import { SensorList } from "./sensor-list";

type Props = {
  readonly params: Promise<{ readonly number: string }>;
  readonly searchParams: Promise<{ readonly answered?: string | string[] }>;
};

export const generateMetadata = async ({ params }: Props) => ({ title: `Order ${(await params).number}` });

export default async function PortalOrderPage({ params, searchParams }: Props) {
  const actor = await requireCustomer();
  const { number } = await params;
  const order = await load(portalOrderView(actor, number));
  const offers = await load(portalOffersView(actor, number, new Date()));
  const waiting = offers.offers.find(({ isWaiting }) => isWaiting);
  const parts = await load(customerPartsView(actor, number));
  const certificates = new Set(
    order.sensors.flatMap((sensor) => sensor.certificates.map((one) => one.number)),
  ).size;
  return (
    <Page
      title={`Order ${order.number}`}
      crumbs={<Breadcrumb trail={[{ label: "Your orders", href: "/portal/orders" }]} />}
      lead={[
        order.purchaseOrder ? `Your reference ${order.purchaseOrder}.` : "",
        order.changedOn ? `Changed on ${order.changedOn}; what stands here is how it is now.` : "",
        order.promisedOn ? `Promised for ${order.promisedOn}.` : "",
      ]
        .filter(Boolean)
        .join(" ")}
      thread={
        <Thread
          label={`Progress of order ${order.number}`}
          beads={order.progress.steps}
          next={[order.progress.next, order.cancelledBecause ? `Why: ${order.cancelledBecause}` : ""].join(
            " ",
          )}
        />
      }
      actions={
        order.mayAnswer && order.sensors.length > 0 ? (
          <LinkButton href={`/portal/request?order=${order.number}`}>Request it once more</LinkButton>
        ) : null
      }
    >
      <AnsweredOffer offers={offers} answered={String((await searchParams).answered ?? "")} />
      {waiting || order.questions.length > 0 ? (
        <Section title="This waits for you" id="waiting">
          {waiting ? (
            <p>
              <LinkButton href={`/portal/orders/${order.number}/offer`} kind="primary">
                Read and answer our offer {waiting.number}
              </LinkButton>
            </p>
          ) : null}
          <Questions order={order} />
        </Section>
      ) : null}
      <Section title="Your sensors" note={order.counts}>
        <SensorList sensors={order.sensors} parts={parts} />
        {certificates > 0 ? (
          <p className="row">
            {certificates > 1 ? (
              <LinkButton href={`/api/portal/certificates?order=${order.number}`} download>
                All {certificates} certificates together (ZIP)
              </LinkButton>
            ) : null}
            <LinkButton href={`/api/portal/results?order=${order.number}`} download>
              The results as a table (CSV)
            </LinkButton>
          </p>
        ) : null}
      </Section>
      <Section title="What you ordered">
        <OrderedLines lines={order.lines} />
      </Section>
      <Section title="Offers and papers">
        <Papers number={order.number} offers={offers} />
      </Section>
      {order.notes.length + order.answered.length > 0 ? (
        <Section title="What was said">
          <Answered answered={order.answered} />
          <Notes notes={order.notes} />
        </Section>
      ) : null}
      <Section title="Not as it should be?">
        <LinkButton href={`/portal/complaints?order=${order.number}`}>Tell us</LinkButton>
      </Section>
    </Page>
  );
}
