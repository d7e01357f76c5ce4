import { LinkButton } from "@/app/_ui/link-button";
import type { equipmentView } from "@/lib/views/equipment";
import { PrintEquipmentLabels } from "./print-equipment-labels";

/** What can be done with a piece of equipment, the likeliest last. */
export function EquipmentActions({ view }: { readonly view: Awaited<ReturnType<typeof equipmentView>> }) {
  const { equipment, mayChange, mayCalibrate } = view;
  const here = `/standards/${equipment.id}`;
  const isRetired = equipment.state === "retired";
  return (
    <>
      <LinkButton href={`${here}/status`} kind="quiet">
        Status
      </LinkButton>
      {equipment.kind === "furnace" ? null : (
        <LinkButton href={`/trace/standard/${equipment.id}`} kind="quiet">
          Traceability
        </LinkButton>
      )}
      {equipment.kind === "reference" ? <LinkButton href={`${here}/health`}>Health</LinkButton> : null}
      {mayChange && !isRetired ? <PrintEquipmentLabels ids={[equipment.id]} label="Print its label" /> : null}
      {mayChange ? <LinkButton href={`${here}/edit`}>Change the record</LinkButton> : null}
      {mayCalibrate && !isRetired && equipment.kind !== "furnace" ? (
        <LinkButton href={`${here}/calibrations/new`} kind="primary">
          Record a certificate
        </LinkButton>
      ) : null}
    </>
  );
}
