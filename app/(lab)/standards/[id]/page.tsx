import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { FieldList } from "@/app/_ui/field-list";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { isoDay } from "@/lib/domain/calibration/due";
import { equipmentKindLabels } from "@/lib/domain/equipment/labels";
import { equipmentView } from "@/lib/views/equipment";
import { equipmentServiceView } from "@/lib/views/equipment-service";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { ReportLine } from "../../quality/report-line";
import { CertificatesSection } from "../certificates-section";
import { ChecksSection } from "../checks-section";
import { EquipmentActions } from "../equipment-actions";
import { LogbookSection } from "../logbook-section";
import { DueMark, EquipmentStateMark } from "../marks";
import { particularsItems } from "../particulars-items";
import { recordItems } from "../record-items";
import { ServiceSection } from "../service-section";
import { ThermometerSection } from "../thermometer-section";

export const metadata = { title: "Equipment" };

type Props = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly ohm?: string | string[] }>;
};

export default async function EquipmentPage({ params, searchParams }: Props) {
  const actor = await requireStaff();
  const { id } = await params;
  const today = isoDay(new Date());
  const view = await load(equipmentView(actor, id, today));
  const service = await load(equipmentServiceView(actor, id, today));
  const { equipment, calibrations } = view;
  const isFurnace = equipment.kind === "furnace";
  const budget = particularsItems(equipment.particulars);
  return (
    <Page
      title={equipment.tag}
      crumbs={<Breadcrumb trail={[{ label: "Standards", href: "/standards" }]} />}
      state={
        <>
          {isFurnace ? null : <DueMark due={view.due} />}
          <EquipmentStateMark state={equipment.state} />
        </>
      }
      lead={`${equipmentKindLabels[equipment.kind]}, ${[equipment.maker, equipment.model].filter(Boolean).join(", ")}, serial number ${equipment.serial}`}
      actions={<EquipmentActions view={view} />}
    >
      <ServiceSection equipment={equipment} service={service} />
      <Section title="Record" note="Letters are those of ISO/IEC 17025, 6.4.13.">
        <FieldList items={recordItems(equipment)} />
      </Section>
      {budget.length > 0 ? (
        <Section title="For the budget">
          <FieldList items={budget} />
        </Section>
      ) : null}
      {isFurnace ? (
        <Section title="Tube and characterisations">
          <LinkButton href="/furnaces" kind="quiet">
            Furnaces
          </LinkButton>
        </Section>
      ) : (
        <CertificatesSection
          equipmentId={equipment.id}
          calibrations={calibrations}
          inForceId={view.inForceId}
          mayAdopt={view.mayAdopt}
        />
      )}
      {equipment.kind === "thermometer" ? (
        <ThermometerSection
          calibration={calibrations.find((one) => one.id === view.inForceId) ?? null}
          ohm={(await searchParams).ohm}
        />
      ) : null}
      <ChecksSection charts={service.charts} />
      <LogbookSection equipment={equipment} service={service} />
      <ReportLine actor={actor} kind="equipment" name={equipment.tag} />
    </Page>
  );
}
