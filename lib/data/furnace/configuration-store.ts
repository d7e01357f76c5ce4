import type { Tx } from "@/lib/data/in-scope";
import { refuseDuplicate } from "@/lib/data/refuse-duplicate";
import type { ConfigurationKind } from "@/lib/domain/furnace/types";

type NewConfiguration = {
  readonly furnaceId: string;
  readonly name: string;
  readonly kind: ConfigurationKind;
  readonly places: number;
  readonly immersionMillimetre: number;
};

type NewCharacterisation = {
  readonly configurationId: string;
  readonly performedOn: string;
  readonly validUntil: string;
  readonly uniformityHalfWidthCelsius: number;
  readonly statement: string;
  readonly recordedAt: Date;
};

export const insertConfiguration = (tx: Tx, fields: NewConfiguration) =>
  refuseDuplicate(
    tx.furnaceConfiguration.create({ data: fields }),
    "name",
    "This furnace has a configuration of this name already.",
  );

export const loadConfiguration = (tx: Tx, id: string) =>
  tx.furnaceConfiguration.findUnique({ where: { id }, include: { furnace: true } });

const midnight = (day: string): Date => new Date(`${day}T00:00:00Z`);

/** A later characterisation follows an earlier one; runs keep resting on the one that held on their day. */
export const insertCharacterisation = (tx: Tx, fields: NewCharacterisation) =>
  tx.characterisation.create({
    data: { ...fields, performedOn: midnight(fields.performedOn), validUntil: midnight(fields.validUntil) },
  });
