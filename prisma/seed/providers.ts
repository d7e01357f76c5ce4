import type { EquipmentKind } from "@/lib/domain/equipment/types";
import type { ProviderRoute } from "@/lib/domain/provider/types";
import { approveProvider } from "@/lib/operations/provider/approve";
import { recordProvider } from "@/lib/operations/provider/record";
import type { Cast } from "./people";
import type { Teller } from "./teller";

type InventedProvider = {
  readonly name: string;
  readonly route: ProviderRoute;
  readonly accreditation: string;
  readonly kinds: readonly EquipmentKind[];
};

export const metrology: InventedProvider = {
  name: "Northfell Thermometry Laboratory (invented)",
  route: "accredited",
  accreditation: "INV-0417",
  kinds: ["reference", "thermometer"],
};
export const electrical: InventedProvider = {
  name: "Calder Electrical Standards (invented)",
  route: "accredited",
  accreditation: "INV-0298",
  kinds: ["voltmeter"],
};

/** Recorded and approved before their first certificate came; `days` before today. */
export const tellProvider = async (
  { tell, at, day }: Teller,
  { manager }: Cast,
  days: number,
  { name, route, accreditation, kinds }: InventedProvider,
): Promise<void> => {
  const { id } = await tell(recordProvider, manager, at(days), {
    name,
    route,
    accreditation,
    accreditationBody: route === "accredited" ? "Accreditation Body (invented)" : "",
  });
  await tell(approveProvider, manager, at(days - 1), {
    id,
    version: 1,
    approvedFrom: day(days + 500),
    approvedUntil: day(-400),
    scope: kinds.map((kind) => ({ kind })),
    note: "Scope of accreditation and two earlier certificates looked at (invented).",
  });
};
