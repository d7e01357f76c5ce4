import type { Tx } from "@/lib/data/in-scope";
import { demandSaved } from "@/lib/data/versioned";
import { canonical } from "@/lib/domain/audit/canonical";
import { isoDay } from "@/lib/domain/calibration/due";
import { Capability } from "@/lib/domain/evidence/capability";
import { TypeLetter } from "@/lib/domain/evidence/schema";
import type { StoredScopeLine } from "@/lib/domain/scope/line";
import type { ScopeLineInput } from "@/lib/domain/scope/schema";

type Row = Awaited<ReturnType<Tx["scopeLine"]["findMany"]>>[number];

const stored = (row: Row): StoredScopeLine => ({
  id: row.id,
  typeLetter: TypeLetter.parse(row.typeLetter),
  fromCelsius: row.fromCelsius,
  toCelsius: row.toCelsius,
  capability: Capability.parse(JSON.parse(row.capability)),
  validFrom: isoDay(row.validFrom),
  validUntil: row.validUntil && isoDay(row.validUntil),
  source: row.source,
  recordedAt: row.recordedAt,
  version: row.version,
});

/** All there ever were, by type and temperature. */
export const loadScopeLines = async (tx: Tx): Promise<StoredScopeLine[]> =>
  (
    await tx.scopeLine.findMany({
      orderBy: [{ typeLetter: "asc" }, { fromCelsius: "asc" }, { validFrom: "asc" }],
    })
  ).map(stored);

export const loadScopeLine = async (tx: Tx, id: string): Promise<StoredScopeLine | null> => {
  const row = await tx.scopeLine.findUnique({ where: { id } });
  return row && stored(row);
};

export const insertScopeLine = (
  tx: Tx,
  { validFrom, validUntil, capability, ...line }: ScopeLineInput,
  recorded: { readonly recordedById: string | null; readonly recordedAt: Date },
) =>
  tx.scopeLine.create({
    data: {
      ...line,
      ...recorded,
      capability: canonical(capability),
      validFrom: new Date(validFrom),
      validUntil: validUntil === null ? null : new Date(validUntil),
    },
    select: { id: true },
  });

export const endScopeLine = async (tx: Tx, id: string, version: number, lastDay: string): Promise<void> =>
  demandSaved(
    await tx.scopeLine.updateMany({
      where: { id, version },
      data: { validUntil: new Date(lastDay), version: { increment: 1 } },
    }),
  );
