import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { FieldList } from "@/app/_ui/field-list";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { calibrationView } from "@/lib/views/calibration";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { ReportLine } from "../../../../quality/report-line";
import { CalibrationFindings, certificateItems } from "../../../calibration-record";
import { CalibrationMark } from "../calibration-mark";
import { DecisionSection } from "../decision-section";
import { DifferencesTable } from "../differences-table";
import { DocumentLink } from "../document-link";
import { ParentsTable } from "../parents-table";

export const metadata = { title: "Certificate of a standard" };

type Props = { readonly params: Promise<{ readonly id: string; readonly calibration: string }> };

export default async function CalibrationPage({ params }: Props) {
  const actor = await requireStaff();
  const { id, calibration: calibrationId } = await params;
  const view = await load(calibrationView(actor, id, calibrationId));
  const { equipment, calibration, parents, differences } = view;
  const trail = [
    { label: "Standards", href: "/standards" },
    { label: equipment.tag, href: `/standards/${equipment.id}` },
  ];
  return (
    <Page
      title={`Certificate ${calibration.certificate}`}
      crumbs={<Breadcrumb trail={trail} />}
      state={<CalibrationMark acceptance={calibration.acceptance} />}
      lead={`Of ${equipment.tag}, issued by ${calibration.issuer}. None is ever changed; a newer one follows.`}
    >
      <Section title="Certificate" wide>
        <FieldList
          items={[
            ...certificateItems(calibration),
            { label: "File", value: <DocumentLink view={view} /> },
            { label: "Recorded by", value: view.recordedBy },
          ]}
        />
        <CalibrationFindings calibration={calibration} />
      </Section>
      <Section title="What it stands on" wide>
        <ParentsTable parents={parents} />
      </Section>
      {differences.length > 0 ? (
        <Section
          title="Differs from its file"
          note="Confirmed by the person who recorded it, each with why."
          wide
        >
          <DifferencesTable differences={differences} />
        </Section>
      ) : null}
      <DecisionSection view={view} />
      <ReportLine actor={actor} kind="calibration" name={calibration.certificate} />
    </Page>
  );
}
