import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";
import { refuseDuplicate } from "@/lib/data/refuse-duplicate";
import { demandSaved } from "@/lib/data/versioned";
import type { Prisma } from "@/lib/generated/prisma/client";

type FurnaceFields = {
  readonly name: string;
  readonly maker: string;
  readonly serial: string;
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
  readonly boreMillimetre: number;
  readonly lengthMillimetre: number;
};

export const insertFurnace = (tx: Tx, fields: FurnaceFields & { readonly tag: string }) =>
  refuseDuplicate(tx.furnace.create({ data: fields }), "tag", "There is a furnace with this tag already.");

export const saveFurnace = async (
  tx: Tx,
  id: string,
  version: number,
  fields: FurnaceFields,
): Promise<void> =>
  demandSaved(
    await tx.furnace.updateMany({
      where: { id, version },
      data: { ...fields, version: { increment: 1 } },
    }),
  );

const withConfigurations = {
  configurations: {
    orderBy: { name: "asc" },
    include: { characterisations: { orderBy: [{ performedOn: "desc" }, { recordedAt: "desc" }] } },
  },
} satisfies Prisma.FurnaceInclude;

export const loadFurnace = (tx: Tx, id: string) =>
  isUuid(id) ? tx.furnace.findUnique({ where: { id }, include: withConfigurations }) : null;

export const loadFurnaces = (tx: Tx) =>
  tx.furnace.findMany({ orderBy: { tag: "asc" }, include: withConfigurations });
