import type { Metadata } from "next";
import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { StandingMark } from "@/app/_ui/standing-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { TypeLetter } from "@/app/_ui/type-letter";
import { andMore, itemsBeside } from "@/lib/domain/certificate/items-beside";
import { certificatePageView } from "@/lib/views/certificate-page";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { ReportLine } from "../../quality/report-line";
import { StandardTable } from "../standard-table";
import { AmendForms } from "./amend-forms";
import { Asked } from "./asked";
import { IssueSection } from "./issue-section";
import { ResultTables } from "./result-tables";
import { SecondLook } from "./second-look";
import { StandingNotice } from "./standing-notice";

type Props = { readonly params: Promise<{ readonly number: string }> };

export const generateMetadata = async ({ params }: Props): Promise<Metadata> => ({
  title: (await params).number,
});

export default async function CertificatePage({ params }: Props) {
  const actor = await requirePermission("certificate.read");
  const page = await load(certificatePageView(actor, (await params).number));
  const { content, file } = page;
  return (
    <Page
      title={content.number}
      crumbs={<Breadcrumb trail={[{ label: "Certificates", href: "/certificates" }]} />}
      state={<StandingMark standing={page.standing} />}
      lead={
        <>
          {content.item.tag} <TypeLetter letter={content.item.typeLetter} labelled /> serial{" "}
          {andMore(content.item.serial, itemsBeside(content))}, {content.customer.name}, order{" "}
          <Link href={`/orders/${content.order.number}`}>{content.order.number}</Link>, run{" "}
          <Link href={`/review/${content.run.number}`}>{content.run.number}</Link>.
        </>
      }
      actions={
        <>
          <LinkButton href={`/trace/${content.number}`} kind="quiet">
            Traceability
          </LinkButton>
          <a className="button" data-kind="quiet" data-size="desk" href={`${page.href}/html`}>
            Read as a page
          </a>
          {page.hasDcc ? (
            <LinkButton href={`${page.href}/dcc`} kind="quiet" download>
              DCC (XML)
            </LinkButton>
          ) : null}
          {file ? (
            <LinkButton href={page.href} download>
              Download PDF
            </LinkButton>
          ) : null}
        </>
      }
    >
      <StandingNotice page={page} />
      <Asked actor={actor} page={page} />
      <SecondLook page={page} />
      <Section title="Results" note="As printed. A number opens the chain it stands on." wide>
        <ResultTables content={content} />
      </Section>
      <Section title="Stands on" wide>
        <StandardTable standards={page.standards} />
      </Section>
      <IssueSection page={page} />
      <AmendForms page={page} />
      <Section title="History">
        <ul className="plain-list">
          {page.history.map((event) => (
            <li key={event.key}>
              <Timestamp at={event.at} precision="minute" />: {event.who} {event.sentence}.
            </li>
          ))}
        </ul>
        <ReportLine actor={actor} kind="certificate" name={content.number} />
      </Section>
    </Page>
  );
}
