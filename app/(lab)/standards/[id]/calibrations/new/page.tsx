import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { isoDay } from "@/lib/domain/calibration/due";
import { calibrationFormView } from "@/lib/views/calibration-form";
import { requirePermission } from "@/lib/web/auth";
import { env } from "@/lib/web/env";
import { load } from "@/lib/web/load";
import css from "../../../calibrations.module.css";
import { CertificateForm } from "../certificate-form";
import { DigitalNotice } from "../digital-notice";

export const metadata = { title: "Record a certificate" };

type Props = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export default async function NewCalibrationPage({ params, searchParams }: Props) {
  const actor = await requirePermission("calibration.record");
  const { document, offer } = await searchParams;
  const view = await load(
    calibrationFormView(actor, (await params).id, {
      document: typeof document === "string" ? document : null,
      offer: typeof offer === "string" && /^\d{1,2}$/.test(offer) ? Number(offer) : 0,
      schemaFolder: env().dccSchemaFolder,
    }),
  );
  const { equipment, digital } = view;
  const here = `/standards/${equipment.id}`;
  const trail = [
    { label: "Standards", href: "/standards" },
    { label: equipment.tag, href: here },
  ];
  return (
    <Page
      title={`Record a certificate of ${equipment.tag}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead="As the certificate states it. It cannot be changed afterwards, and waits for another person before it is used."
      actions={
        digital ? null : (
          <LinkButton href={`${here}/calibrations/digital`}>Read a digital certificate</LinkButton>
        )
      }
    >
      {digital ? (
        <div className={css.notice}>
          <DigitalNotice digital={digital} here={here} />
        </div>
      ) : null}
      <CertificateForm view={view} today={isoDay(new Date())} />
    </Page>
  );
}
