import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";
import { refuseDuplicate } from "@/lib/data/refuse-duplicate";
import { demandSaved } from "@/lib/data/versioned";
import type { Particulars } from "@/lib/domain/equipment/particulars";
import { readEquipment } from "@/lib/domain/equipment/read-equipment";
import type { Equipment, EquipmentRecord, EquipmentState } from "@/lib/domain/equipment/types";

type Described = EquipmentRecord & {
  readonly maker: string;
  readonly model: string;
  readonly serial: string;
  readonly particulars: Particulars;
};

const stored = <F extends Described>({ particulars, requirement, receivedOn, ...fields }: F) => ({
  ...fields,
  receivedOn: receivedOn === null ? null : new Date(`${receivedOn}T00:00:00Z`),
  requirement: JSON.stringify(requirement),
  particulars: JSON.stringify(particulars),
});

export const insertEquipment = (tx: Tx, fields: Described & { readonly tag: string }) =>
  refuseDuplicate(
    tx.equipment.create({ data: { ...stored(fields), kind: fields.particulars.kind } }),
    "tag",
    "There is equipment with this tag already.",
  );

export const saveEquipment = async (
  tx: Tx,
  id: string,
  version: number,
  fields: Described | { readonly state?: EquipmentState; readonly location?: string },
): Promise<void> => {
  const data = "particulars" in fields ? stored(fields) : fields;
  demandSaved(
    await tx.equipment.updateMany({ where: { id, version }, data: { ...data, version: { increment: 1 } } }),
  );
};

export const loadEquipment = async (tx: Tx, id: string): Promise<Equipment | null> => {
  // A link on a certificate knows the tag only.
  const row = await tx.equipment.findUnique({ where: isUuid(id) ? { id } : { tag: id } });
  return row ? readEquipment(row) : null;
};

export const loadAllEquipment = async (tx: Tx): Promise<Equipment[]> =>
  (await tx.equipment.findMany({ orderBy: { tag: "asc" } })).map(readEquipment);
