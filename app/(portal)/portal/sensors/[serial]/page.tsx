import type { Metadata } from "next";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { EndedNote } from "@/app/_ui/ended-note";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { TypeLetter } from "@/app/_ui/type-letter";
import { may } from "@/lib/domain/staff/permissions";
import { portalSensorHistoryView } from "@/lib/views/portal/sensor-history";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { DocumentLinks } from "../../document-links";
import { ExternalResult } from "../../external-result";
import { IntervalForm } from "../interval-form";
import { CorrectedSerial } from "./corrected-serial";
import { SetpointHistory } from "./setpoint-history";

type Props = { readonly params: Promise<{ readonly serial: string }> };

const serialOf = async ({ params }: Props): Promise<string> => {
  const { serial } = await params;
  try {
    return decodeURIComponent(serial);
  } catch {
    return serial;
  }
};

export const generateMetadata = async (props: Props): Promise<Metadata> => ({
  title: `Sensor ${await serialOf(props)}`,
});

export default async function PortalSensorPage(props: Props) {
  const actor = await requireCustomer();
  const sensor = await load(portalSensorHistoryView(actor, await serialOf(props)));
  return (
    <Page
      title={`Sensor ${sensor.serial}`}
      crumbs={<Breadcrumb trail={[{ label: "Your sensors", href: "/portal/sensors" }]} />}
      lead={
        <>
          <TypeLetter letter={sensor.typeLetter} /> {sensor.construction}. {sensor.where}.
        </>
      }
      actions={
        may(actor.roles, "portal.order") ? (
          <LinkButton href={`/portal/request?again=${encodeURIComponent(sensor.name)}`}>
            Request it again
          </LinkButton>
        ) : null
      }
    >
      <CorrectedSerial sensor={sensor} />
      <Section title="How it changed">
        {sensor.series.length === 0 ? <p>{sensor.noResult}</p> : null}
        {sensor.series.map((series) => (
          <SetpointHistory key={series.nominalCelsius} series={series} />
        ))}
      </Section>
      <Section title="Its certificates">
        {sensor.certificates.length === 0 ? <p>None yet.</p> : null}
        <ul className="plain-list">
          {sensor.certificates.toReversed().map((certificate) => (
            <li key={certificate.number}>
              <DocumentLinks certificate={certificate} />, measured {certificate.performedOn}, order{" "}
              {certificate.order}
              {certificate.names === sensor.serial ? "" : `, there named ${certificate.names}`}.{" "}
              <EndedNote number={certificate.number} standing={certificate.standing} />
            </li>
          ))}
        </ul>
      </Section>
      {sensor.externals.length > 0 ? (
        <Section title="Measured by another laboratory">
          {sensor.externals.map((external) => (
            <ExternalResult key={external.href} external={external} />
          ))}
        </Section>
      ) : null}
      <Section title="How often" note="The interval is yours to set. It stands on no certificate.">
        {may(actor.roles, "portal.manage") ? (
          <IntervalForm
            serial={sensor.name}
            months={sensor.interval.months}
            noticeDays={sensor.interval.noticeDays}
          />
        ) : (
          <p>{sensor.interval.months === null ? "Not set." : `Every ${sensor.interval.months} months.`}</p>
        )}
      </Section>
    </Page>
  );
}
