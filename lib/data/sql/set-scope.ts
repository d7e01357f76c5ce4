import type { Prisma } from "@/lib/generated/prisma/client";

/** For this transaction only: a setting of the session would go on to whoever gets the connection next. */
export const setScope = (tx: Prisma.TransactionClient, scope: string, customerId: string): Promise<number> =>
  tx.$executeRaw`SELECT set_config('app.scope', ${scope}, true), set_config('app.customer_id', ${customerId}, true)`;
