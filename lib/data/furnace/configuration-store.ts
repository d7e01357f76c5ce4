import type { Tx } from "@/lib/data/in-scope";
import { refuseDuplicate } from "@/lib/data/refuse-duplicate";
import type { Bore } from "@/lib/domain/furnace/bores";
import type { ConfigurationKind } from "@/lib/domain/furnace/types";

type NewConfiguration = {
  readonly furnaceId: string;
  readonly name: string;
  readonly kind: ConfigurationKind;
  readonly places: number;
  readonly immersionMillimetre: number;
  readonly bores: readonly Bore[];
  readonly bundleDiameterMillimetre: number | null;
};

export const insertConfiguration = (tx: Tx, { bores, ...fields }: NewConfiguration) =>
  refuseDuplicate(
    tx.furnaceConfiguration.create({ data: { ...fields, bores: JSON.stringify(bores) } }),
    "name",
    "This furnace has a configuration of this name already.",
  );

export const loadConfiguration = (tx: Tx, id: string) =>
  tx.furnaceConfiguration.findUnique({ where: { id }, include: { furnace: true } });
