import { changeEquipment } from "@/lib/operations/equipment/change";
import { recordEntry } from "@/lib/operations/equipment/record-entry";
import { setEquipmentState } from "@/lib/operations/equipment/set-state";
import type { Cast } from "./people";
import type { Teller } from "./teller";

/** Verified on receipt and put into service the same day: `days` before today. The version is that of its record then. */
export const tellIntoService = async (
  { tell, at, day }: Teller,
  { technician }: Cast,
  id: string,
  days: number,
  version = 1,
): Promise<void> => {
  await tell(recordEntry, technician, at(days, "10:00"), {
    id,
    happenedOn: day(days),
    outcome: "passed",
    summary: "Identity, completeness and condition looked at; switched on and read (invented).",
    figures: { kind: "verification", against: "Its order and the requirement in its record (invented)" },
  });
  await tell(setEquipmentState, technician, at(days, "11:00"), {
    id,
    version: version + 1,
    state: "in-service",
    reason: "verified on receipt (invented)",
  });
};

/** A furnace's row among the equipment: what its record still lacks, then into service. */
export const tellFurnaceIntoService = async (
  teller: Teller,
  cast: Cast,
  id: string,
  days: number,
  described: {
    readonly maker: string;
    readonly model: string;
    readonly serial: string;
    readonly location: string;
  },
): Promise<void> => {
  await teller.tell(changeEquipment, cast.technician, teller.at(days, "09:30"), {
    id,
    version: 1,
    ...described,
    receivedOn: teller.day(days),
    maintenanceIntervalDays: 730,
    particulars: { kind: "furnace" },
  });
  await tellIntoService(teller, cast, id, days, 2);
};
