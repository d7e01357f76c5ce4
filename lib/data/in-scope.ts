import type { Scope } from "@/lib/domain/staff/actor";
import type { Prisma } from "@/lib/generated/prisma/client";
import { database } from "./client";
import { setScope } from "./sql/set-scope";

export type Tx = Prisma.TransactionClient;

/**
 * Every query runs in here. The scope is set for this transaction only: a session-level setting leaks through the
 * pool to the next request. Unset scope means no rows.
 */
export const inScope = <T>(scope: Scope, work: (tx: Tx) => Promise<T>): Promise<T> =>
  database().$transaction(scoped(scope, work));

/**
 * The same for whoever only reads: all of it as of one moment. By default each statement sees what was committed before
 * it: a page could show a certificate as valid and its document, which came between two questions, as not there.
 */
export const inSnapshot = <T>(scope: Scope, work: (tx: Tx) => Promise<T>): Promise<T> =>
  database().$transaction(scoped(scope, work), { isolationLevel: "RepeatableRead" });

const scoped =
  <T>(scope: Scope, work: (tx: Tx) => Promise<T>) =>
  async (tx: Tx): Promise<T> => {
    await setScope(tx, scope.kind, scope.kind === "customer" ? scope.customerId : "");
    return work(tx);
  };
