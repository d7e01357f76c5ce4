import type { Tx } from "@/lib/data/in-scope";
import { demandSaved } from "@/lib/data/versioned";
import { type ProcedureRevision, revisionStates } from "@/lib/domain/procedure/types";
import { Refused } from "@/lib/domain/refusal";
import { lockName } from "../sql/lock-name";

const include = { procedure: { select: { key: true, title: true } } } as const;
type Row = NonNullable<Awaited<ReturnType<typeof findRow>>>;
const findRow = (tx: Tx, id: string) => tx.procedureRevision.findUnique({ where: { id }, include });

const iso = (moment: Date | null): string | null => moment?.toISOString() ?? null;

const stored = ({ procedure, ...row }: Row): ProcedureRevision => {
  const state = revisionStates.find((one) => one === row.state);
  if (!state) throw new Error(`A procedure revision is ${row.state}, which is no state`);
  return {
    ...procedure,
    id: row.id,
    revision: row.revision,
    state,
    budgetInputs: row.budgetInputs,
    gatePolicy: row.gatePolicy,
    change: row.change,
    verification: row.verification,
    recordedById: row.recordedById,
    recordedAt: row.recordedAt.toISOString(),
    currentFrom: iso(row.currentFrom),
    currentById: row.currentById,
    withdrawnAt: iso(row.withdrawnAt),
    version: row.version,
  };
};

/** Whoever drafts or approves takes turns. */
export const lockProcedures = (tx: Tx) => lockName(tx, "procedure");

export const loadRevision = async (tx: Tx, id: string): Promise<ProcedureRevision | null> => {
  const row = await findRow(tx, id);
  return row && stored(row);
};

/** Of one procedure, the newest first; empty where there is none of that key. */
export const loadRevisions = async (tx: Tx, key: string): Promise<ProcedureRevision[]> =>
  (
    await tx.procedureRevision.findMany({
      where: { procedure: { key } },
      include,
      orderBy: { revision: "desc" },
    })
  ).map(stored);

/** What a run may follow now, by title. */
export const loadCurrentRevisions = async (tx: Tx): Promise<ProcedureRevision[]> =>
  (
    await tx.procedureRevision.findMany({
      where: { state: "current" },
      include,
      orderBy: { procedure: { title: "asc" } },
    })
  ).map(stored);

export const loadAllRevisions = async (tx: Tx): Promise<ProcedureRevision[]> =>
  (
    await tx.procedureRevision.findMany({
      include,
      orderBy: [{ procedure: { title: "asc" } }, { revision: "desc" }],
    })
  ).map(stored);

export const loadCurrentRevision = async (tx: Tx, key: string): Promise<ProcedureRevision | null> => {
  const row = await tx.procedureRevision.findFirst({
    where: { state: "current", procedure: { key } },
    include,
  });
  return row && stored(row);
};

export const insertProcedure = async (tx: Tx, key: string, title: string): Promise<string> =>
  (await tx.procedure.create({ data: { key, title }, select: { id: true } })).id;

export const procedureIdOf = async (tx: Tx, key: string): Promise<string> => {
  const row = await tx.procedure.findUnique({ where: { key }, select: { id: true } });
  if (!row) throw new Refused({ code: "not-found", message: "This procedure is not here." });
  return row.id;
};

type NewRevision = Pick<ProcedureRevision, "revision" | "budgetInputs"> & {
  readonly procedureId: string;
  readonly gatePolicy?: string;
  readonly verification?: string;
  readonly change?: string;
  readonly recordedById: string | null;
  readonly recordedAt: Date;
  /** Of what comes with the platform; drafts become current by a second person. */
  readonly currentFrom?: Date;
};

export const insertRevision = async (tx: Tx, { currentFrom, ...revision }: NewRevision): Promise<string> => {
  const state = currentFrom ? { state: "current", currentFrom } : { state: "draft" };
  return (await tx.procedureRevision.create({ data: { ...revision, ...state }, select: { id: true } })).id;
};

type Draft = Pick<ProcedureRevision, "budgetInputs" | "gatePolicy" | "change" | "verification">;

/** Who changes a draft has drafted it from then on. */
export const saveDraft = async (
  tx: Tx,
  { id, version }: Pick<ProcedureRevision, "id" | "version">,
  draft: Draft & { readonly recordedById: string; readonly recordedAt: Date },
): Promise<void> =>
  demandSaved(
    await tx.procedureRevision.updateMany({
      where: { id, version, state: "draft" },
      data: { ...draft, version: { increment: 1 } },
    }),
  );

export const withdrawCurrent = async (tx: Tx, key: string, at: Date): Promise<number | null> => {
  const current = await loadCurrentRevision(tx, key);
  if (!current) return null;
  const { id, version, revision } = current;
  demandSaved(
    await tx.procedureRevision.updateMany({
      where: { id, version, state: "current" },
      data: { state: "withdrawn", withdrawnAt: at, version: { increment: 1 } },
    }),
  );
  return revision;
};

export const saveCurrent = async (
  tx: Tx,
  { id, version }: Pick<ProcedureRevision, "id" | "version">,
  current: { readonly currentFrom: Date; readonly currentById: string },
): Promise<void> =>
  demandSaved(
    await tx.procedureRevision.updateMany({
      where: { id, version, state: "draft" },
      data: { ...current, state: "current", version: { increment: 1 } },
    }),
  );
