import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { offerByLinkView } from "@/lib/views/agreement/offer-by-link";
import { connectDatabase } from "@/lib/web/connect-database";
import { AnswerForm } from "./answer-form";
import { OfferContent } from "./offer-content";

export const metadata = { title: "An offer", robots: "noindex" };

type Props = { readonly params: Promise<{ readonly token: string }> };

export default async function AgreePage({ params }: Props) {
  const { token } = await params;
  connectDatabase();
  const offer = await offerByLinkView(token, new Date());
  if (offer.kind === "too-many")
    return (
      <Page title="An offer">
        <Notice kind="caution" title="Too many tries">
          Wait a minute, then open the link again.
        </Notice>
      </Page>
    );
  if (offer.kind === "closed")
    return (
      <Page title="An offer">
        <Notice kind="caution" title="This link opens nothing any more">
          The offer has its answer already, or its day is over. Ask the laboratory for another.
        </Notice>
      </Page>
    );
  const { content } = offer;
  return (
    <Page
      title={`Offer ${content.number}`}
      lead={`${content.laboratory.name} offers this for your order ${content.order.number}. Please read it, then say below whether you agree.`}
      actions={
        <LinkButton href={`/api/offers/${token}`} download>
          The offer as PDF
        </LinkButton>
      }
    >
      <OfferContent content={content} />
      <Section title="Your answer" id="answer">
        <AnswerForm
          token={token}
          contentHash={offer.contentHash}
          purchaseOrder={content.order.purchaseOrder}
        />
      </Section>
    </Page>
  );
}
