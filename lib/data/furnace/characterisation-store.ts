import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";

type NewCharacterisation = {
  readonly configurationId: string;
  readonly performedOn: string;
  readonly validUntil: string;
  readonly uniformityHalfWidthCelsius: number;
  readonly statement: string;
  readonly recordedAt: Date;
  readonly recordedById: string;
  /** What it was measured as: figures as JSON text, and the run they came from. */
  readonly measured: {
    readonly figures: string;
    readonly characterisationRunId: string;
    readonly engineVersion: string;
  } | null;
};

const midnight = (day: string): Date => new Date(`${day}T00:00:00Z`);

/** A later characterisation follows an earlier one; runs keep resting on the one that held on their day. */
export const insertCharacterisation = (tx: Tx, { measured, ...fields }: NewCharacterisation) =>
  tx.characterisation.create({
    data: {
      ...fields,
      performedOn: midnight(fields.performedOn),
      validUntil: midnight(fields.validUntil),
      ...(measured ? { source: "measured", ...measured } : {}),
    },
  });

export const loadCharacterisation = (tx: Tx, id: string) =>
  isUuid(id)
    ? tx.characterisation.findUnique({
        where: { id },
        include: {
          configuration: { include: { furnace: true } },
          decisions: { orderBy: { id: "asc" } },
        },
      })
    : null;

/** Those made of one measuring, the last submitted first. */
export const loadCharacterisationsOf = (tx: Tx, characterisationRunId: string) =>
  tx.characterisation.findMany({
    where: { characterisationRunId },
    orderBy: { recordedAt: "desc" },
    include: { decisions: { orderBy: { id: "asc" } } },
  });

/** Everybody who measured or submitted it: none of them may accept it. */
export const loadMeasurers = async (
  tx: Tx,
  {
    recordedById,
    characterisationRunId,
  }: { recordedById: string | null; characterisationRunId: string | null },
): Promise<ReadonlySet<string>> => {
  const run = characterisationRunId
    ? await tx.characterisationRun.findUnique({
        where: { id: characterisationRunId },
        select: { performerId: true, surveys: { select: { recordedById: true } } },
      })
    : null;
  const all = [recordedById, run?.performerId, ...(run?.surveys ?? []).map((survey) => survey.recordedById)];
  return new Set(all.flatMap((id) => id ?? []));
};

export const insertCharacterisationDecision = (
  tx: Tx,
  fields: {
    characterisationId: string;
    decision: "accepted" | "returned";
    reason: string;
    decidedById: string;
    decidedAt: Date;
  },
) => tx.characterisationDecision.create({ data: fields });
