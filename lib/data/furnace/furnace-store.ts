import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";
import { refuseDuplicate } from "@/lib/data/refuse-duplicate";
import { demandSaved } from "@/lib/data/versioned";
import type { ControllerSetpoint } from "@/lib/domain/furnace/types";
import type { Prisma } from "@/lib/generated/prisma/client";

type FurnaceFields = {
  readonly name: string;
  readonly maker: string;
  readonly serial: string;
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
  readonly boreMillimetre: number;
  readonly lengthMillimetre: number;
  readonly zones: number;
  readonly bestImmersionMillimetre: number | null;
  readonly workingLengthMillimetre: number | null;
  readonly controllerSetpoints: readonly ControllerSetpoint[];
  readonly rampUpCelsiusPerHour: number | null;
  readonly rampDownCelsiusPerHour: number | null;
};

const stored = <F extends FurnaceFields>({ controllerSetpoints, ...fields }: F) => ({
  ...fields,
  controllerSetpoints: JSON.stringify(controllerSetpoints),
});

/** Its row among the equipment holds state, place, logbook and label; tag and identity are the same in both. */
const asEquipment = ({ maker, name, serial }: FurnaceFields) => ({ maker, model: name, serial });

export const insertFurnace = async (tx: Tx, fields: FurnaceFields & { readonly tag: string }) => {
  const { tag } = fields;
  const particulars = JSON.stringify({ kind: "furnace" });
  const { id: equipmentId } = await refuseDuplicate(
    tx.equipment.create({ data: { tag, kind: "furnace", particulars, ...asEquipment(fields) } }),
    "tag",
    "There is a furnace or other equipment with this tag already.",
  );
  const { id } = await tx.furnace.create({ data: { ...stored(fields), equipmentId } });
  return { id, equipmentId };
};

export const saveFurnace = async (
  tx: Tx,
  id: string,
  version: number,
  fields: FurnaceFields,
): Promise<void> => {
  demandSaved(
    await tx.furnace.updateMany({
      where: { id, version },
      data: { ...stored(fields), version: { increment: 1 } },
    }),
  );
  const { equipmentId } = await tx.furnace.findUniqueOrThrow({
    where: { id },
    select: { equipmentId: true },
  });
  if (equipmentId)
    await tx.equipment.update({
      where: { id: equipmentId },
      data: { ...asEquipment(fields), version: { increment: 1 } },
    });
};

const withConfigurations = {
  configurations: {
    orderBy: { name: "asc" },
    include: {
      characterisations: {
        orderBy: [{ performedOn: "desc" }, { recordedAt: "desc" }],
        include: { decisions: { orderBy: { id: "asc" } } },
      },
    },
  },
} satisfies Prisma.FurnaceInclude;

export const loadFurnace = (tx: Tx, id: string) =>
  isUuid(id) ? tx.furnace.findUnique({ where: { id }, include: withConfigurations }) : null;

export const loadFurnaces = (tx: Tx) =>
  tx.furnace.findMany({ orderBy: { tag: "asc" }, include: withConfigurations });
