import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";
import { nextNumber } from "@/lib/data/number/next-number";

type NewRun = {
  readonly configurationId: string;
  /** JSON text. */
  readonly plan: string;
  readonly performerId: string;
  readonly createdAt: Date;
};

export type NewSurvey = {
  readonly characterisationRunId: string;
  readonly kind: string;
  readonly celsius: number;
  readonly measuredOn: string;
  readonly readings: string;
  readonly documentId: string | null;
  readonly evaluation: string;
  readonly engineVersion: string;
  readonly recordedById: string;
  readonly recordedAt: Date;
};

export const characterisationRunStates = [
  "planned",
  "measuring",
  "submitted",
  "returned",
  "accepted",
  "abandoned",
] as const;
export type CharacterisationRunState = (typeof characterisationRunStates)[number];

export const insertCharacterisationRun = async (tx: Tx, fields: NewRun) => {
  const year = fields.createdAt.getUTCFullYear();
  const taken = await nextNumber(tx, `characterisation-${year}`);
  return tx.characterisationRun.create({
    data: { ...fields, number: `CH-${year}-${String(taken).padStart(4, "0")}` },
    select: { id: true, number: true },
  });
};

/** With its surveys in the order they were recorded, its configuration, and the characterisations made of it. */
export const loadCharacterisationRun = (tx: Tx, id: string) =>
  isUuid(id)
    ? tx.characterisationRun.findUnique({
        where: { id },
        include: {
          configuration: { include: { furnace: true } },
          surveys: { orderBy: [{ recordedAt: "asc" }, { id: "asc" }] },
        },
      })
    : null;
export type StoredCharacterisationRun = NonNullable<Awaited<ReturnType<typeof loadCharacterisationRun>>>;

export const loadCharacterisationRuns = (tx: Tx, furnaceId: string) =>
  tx.characterisationRun.findMany({
    where: { configuration: { furnaceId } },
    orderBy: { createdAt: "desc" },
    select: { id: true, number: true, state: true, createdAt: true, configurationId: true },
  });

/** Moves it on if it still stands where the caller saw it; false: somebody was faster. */
export const moveCharacterisationRun = async (
  tx: Tx,
  id: string,
  from: readonly CharacterisationRunState[],
  to: CharacterisationRunState,
): Promise<boolean> => {
  const { count } = await tx.characterisationRun.updateMany({
    where: { id, state: { in: [...from] } },
    data: { state: to, version: { increment: 1 } },
  });
  return count === 1;
};

export const insertSurvey = (tx: Tx, { measuredOn, ...fields }: NewSurvey) =>
  tx.characterisationSurvey.create({
    data: { ...fields, measuredOn: new Date(`${measuredOn}T00:00:00Z`) },
    select: { id: true },
  });
