import type { Tx } from "@/lib/data/in-scope";
import type { Activity, Authorisation, AuthorisedScope } from "@/lib/domain/authorisation/authorisation";

const dayOf = (date: Date): string => date.toISOString().slice(0, 10);

type Row = {
  readonly id: string;
  readonly activity: string;
  readonly typeLetters: string;
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly scope: string;
  readonly procedureId: string | null;
  readonly validFrom: Date;
  readonly validUntil: Date | null;
  readonly withdrawal: { readonly withdrawnAt: Date } | null;
};

const asAuthorisation = (row: Row): Authorisation => ({
  id: row.id,
  activity: row.activity as Activity,
  typeLetters: row.typeLetters,
  fromCelsius: row.fromCelsius,
  toCelsius: row.toCelsius,
  scope: row.scope as AuthorisedScope,
  procedureId: row.procedureId,
  validFrom: dayOf(row.validFrom),
  validUntil: row.validUntil && dayOf(row.validUntil),
  withdrawnAt: row.withdrawal?.withdrawnAt ?? null,
});

const inOrder = [{ grantedAt: "asc" }, { id: "asc" }] as const;

/** All that one person ever held. */
export const loadAuthorisations = async (tx: Tx, personId: string): Promise<readonly Authorisation[]> =>
  (
    await tx.authorisation.findMany({
      where: { personId },
      include: { withdrawal: true },
      orderBy: [...inOrder],
    })
  ).map(asAuthorisation);

/** The same with who granted and withdrew it, and why; the newest first. */
export const loadAuthorisationHistory = async (tx: Tx, personId: string) => {
  const rows = await tx.authorisation.findMany({
    where: { personId },
    include: { withdrawal: true },
    orderBy: [{ grantedAt: "desc" }, { id: "desc" }],
  });
  return rows.map((row) => ({
    ...asAuthorisation(row),
    basis: row.basis,
    grantedById: row.grantedById,
    grantedAt: row.grantedAt,
    withdrawal: row.withdrawal,
  }));
};

type NewAuthorisation = Omit<Authorisation, "id" | "withdrawnAt"> & {
  readonly personId: string;
  readonly basis: string;
  readonly grantedById: string;
  readonly grantedAt: Date;
};

export const insertAuthorisation = async (tx: Tx, authorisation: NewAuthorisation): Promise<string> => {
  const { validFrom, validUntil, ...rest } = authorisation;
  const days = {
    validFrom: new Date(validFrom),
    validUntil: validUntil === null ? null : new Date(validUntil),
  };
  return (await tx.authorisation.create({ data: { ...rest, ...days }, select: { id: true } })).id;
};

export const loadAuthorisation = async (tx: Tx, id: string) => {
  const row = await tx.authorisation.findUnique({ where: { id }, include: { withdrawal: true } });
  return row && { ...asAuthorisation(row), personId: row.personId };
};

export const insertWithdrawal = (
  tx: Tx,
  withdrawal: {
    readonly authorisationId: string;
    readonly reason: string;
    readonly withdrawnById: string;
    readonly withdrawnAt: Date;
  },
) => tx.authorisationWithdrawal.create({ data: withdrawal });

/** Procedures that these runs followed. */
export const proceduresOfRuns = async (tx: Tx, runIds: readonly string[]): Promise<readonly string[]> => {
  const runs = await tx.run.findMany({
    where: { id: { in: [...runIds] } },
    select: { procedureRevisionId: true },
  });
  const revisions = await tx.procedureRevision.findMany({
    where: { id: { in: runs.flatMap(({ procedureRevisionId }) => procedureRevisionId ?? []) } },
    select: { procedureId: true },
  });
  return [...new Set(revisions.map(({ procedureId }) => procedureId))];
};
