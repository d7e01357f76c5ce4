import type { Scope } from "@/lib/domain/staff/actor";
import type { Prisma } from "@/lib/generated/prisma/client";
import { database } from "./client";

export type Tx = Prisma.TransactionClient;

/**
 * Every query runs in here. The scope is set for this transaction only: a session-level setting leaks through the
 * pool to the next request. Unset scope means no rows.
 */
export const inScope = <T>(scope: Scope, work: (tx: Tx) => Promise<T>): Promise<T> =>
  database().$transaction(async (tx) => {
    const customerId = scope.kind === "customer" ? scope.customerId : "";
    await tx.$executeRaw`select set_config('app.scope', ${scope.kind}, true), set_config('app.customer_id', ${customerId}, true)`;
    return work(tx);
  });
