import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";
import { refuseDuplicate } from "@/lib/data/refuse-duplicate";
import { demandSaved } from "@/lib/data/versioned";
import { isoDay } from "@/lib/domain/calibration/due";
import { ProviderScopeInput } from "@/lib/domain/provider/schema";
import {
  type Provider,
  type ProviderScope,
  providerRoutes,
  providerStates,
} from "@/lib/domain/provider/types";

type Row = Awaited<ReturnType<Tx["provider"]["findMany"]>>[number];

/** A stored row read back. It was judged when it was written, so a misfit is a defect and throws. */
const readProvider = (row: Row): Provider => {
  const route = providerRoutes.find((known) => known === row.route);
  const state = providerStates.find((known) => known === row.state);
  if (!route || !state) throw new Error(`provider ${row.id} is stored as ${row.route}, ${row.state}`);
  const scope = JSON.parse(row.scope) as unknown[];
  return {
    ...row,
    route,
    state,
    approvedFrom: row.approvedFrom && isoDay(row.approvedFrom),
    approvedUntil: row.approvedUntil && isoDay(row.approvedUntil),
    scope: scope.length === 0 ? [] : ProviderScopeInput.parse(scope),
  };
};

const midnight = (day: string): Date => new Date(`${day}T00:00:00Z`);

export const insertProvider = (
  tx: Tx,
  fields: Pick<Provider, "name" | "route" | "accreditation" | "accreditationBody" | "note">,
) =>
  refuseDuplicate(
    tx.provider.create({ data: fields, select: { id: true } }),
    "name",
    "A provider of this name is recorded already.",
  );

export const loadProvider = async (tx: Tx, id: string): Promise<Provider | null> => {
  const row = isUuid(id) ? await tx.provider.findUnique({ where: { id } }) : null;
  return row && readProvider(row);
};

export const loadProviderNamed = async (tx: Tx, name: string): Promise<Provider | null> => {
  const row = await tx.provider.findUnique({ where: { name } });
  return row && readProvider(row);
};

export const loadProviders = async (tx: Tx): Promise<Provider[]> =>
  (await tx.provider.findMany({ orderBy: { name: "asc" } })).map(readProvider);

export const approveProvider = async (
  tx: Tx,
  id: string,
  version: number,
  approval: {
    readonly approvedFrom: string;
    readonly approvedUntil: string;
    readonly scope: ProviderScope;
    readonly note: string;
  },
): Promise<void> =>
  demandSaved(
    await tx.provider.updateMany({
      where: { id, version },
      data: {
        state: "approved",
        approvedFrom: midnight(approval.approvedFrom),
        approvedUntil: midnight(approval.approvedUntil),
        scope: JSON.stringify(approval.scope),
        note: approval.note,
        version: { increment: 1 },
      },
    }),
  );

export const suspendProvider = async (tx: Tx, id: string, version: number): Promise<void> =>
  demandSaved(
    await tx.provider.updateMany({
      where: { id, version },
      data: { state: "suspended", version: { increment: 1 } },
    }),
  );
