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

export const insertFurnace = (tx: Tx, fields: FurnaceFields & { readonly tag: string }) =>
  refuseDuplicate(
    tx.furnace.create({ data: stored(fields) }),
    "tag",
    "There is a furnace with this tag already.",
  );

export const saveFurnace = async (
  tx: Tx,
  id: string,
  version: number,
  fields: FurnaceFields,
): Promise<void> =>
  demandSaved(
    await tx.furnace.updateMany({
      where: { id, version },
      data: { ...stored(fields), version: { increment: 1 } },
    }),
  );

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
