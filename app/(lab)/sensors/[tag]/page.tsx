import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { FieldList } from "@/app/_ui/field-list";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import { isToldOfArrival } from "@/lib/domain/hold/told-of-arrival";
import { sensorHoldsView } from "@/lib/views/hold/holds-on";
import { sensorView, type SensorPage as View } from "@/lib/views/sensor/sensor";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { HoldSection } from "../../holds/hold-section";
import { HistoryList } from "../../orders/history-list";
import { ReportLine } from "../../quality/report-line";
import { CustodySection } from "../../storage/custody-section";
import { PrintLabels } from "../print-labels";
import { sensorMarks } from "../sensor-marks";
import { AnnealSection } from "./anneal-section";
import { BuildSection } from "./build-section";
import { HandBack } from "./hand-back";
import { IntakeFacts } from "./intake-facts";
import { Photos } from "./photos";
import { ProviderSection } from "./provider-section";
import { RunsAndCertificates } from "./runs-and-certificates";
import { SensorResults } from "./sensor-results";
import { SensorThread } from "./sensor-thread";

type Props = { readonly params: Promise<{ readonly tag: string }> };

export const generateMetadata = async ({ params }: Props) => ({ title: `Sensor ${(await params).tag}` });

const identityOf = (sensor: View) => [
  { label: "Serial", value: sensor.serial },
  { label: "Type", value: <TypeLetter letter={sensor.typeLetter} labelled /> },
  { label: "Construction", value: `${sensor.construction} (${sensor.protection.toLowerCase()})` },
  {
    label: "Order",
    value: (
      <>
        <Link href={`/orders/${sensor.order.number}`}>{sensor.order.number}</Link>, line{" "}
        {sensor.order.position}
      </>
    ),
  },
  { label: "Setpoints ordered", value: sensor.setpoints },
  { label: "Tolerance", value: sensor.tolerance || "No class" },
];

export default async function SensorPage({ params }: Props) {
  const actor = await requireStaff();
  const sensor = await load(sensorView(actor, (await params).tag));
  const { holds } = await load(sensorHoldsView(actor, sensor.tag));
  return (
    <Page
      title={`Sensor ${sensor.tag}`}
      crumbs={<Breadcrumb trail={[{ label: "Sensors", href: "/sensors" }]} />}
      state={<StateMark {...sensorMarks(sensor.state)} />}
      lead={
        <>
          Serial {sensor.serial}, of{" "}
          <Link href={`/customers/${sensor.customer.id}`}>{sensor.customer.name}</Link>
        </>
      }
      thread={<SensorThread sensor={sensor} />}
      actions={
        sensor.mayPrintLabel ? (
          <PrintLabels order={sensor.order.number} tag={sensor.tag} label="Print label" />
        ) : null
      }
    >
      {sensor.mayCollect && sensor.handBack !== null ? (
        <HandBack tag={sensor.tag} isIssued={sensor.state === "issued"} />
      ) : null}
      <HoldSection actor={actor} tag={sensor.tag} />
      <Section title="Identity">
        <FieldList columns items={identityOf(sensor)} />
      </Section>
      {sensor.intake ? (
        <IntakeFacts intake={sensor.intake} isTold={isToldOfArrival(sensor.tag, holds)} />
      ) : null}
      <Photos sensor={sensor} />
      <ProviderSection actor={actor} tag={sensor.tag} />
      <AnnealSection actor={actor} tag={sensor.tag} />
      <BuildSection sensor={sensor} />
      <SensorResults sensor={sensor} />
      <RunsAndCertificates sensor={sensor} />
      <CustodySection actor={actor} tag={sensor.tag} />
      <Section title="History" id="history">
        <HistoryList entries={sensor.history} />
        <ReportLine actor={actor} kind="sensor" name={sensor.tag} />
      </Section>
      {sensor.mayCollect && sensor.handBack === null ? (
        <HandBack tag={sensor.tag} isIssued={sensor.state === "issued"} />
      ) : null}
    </Page>
  );
}
