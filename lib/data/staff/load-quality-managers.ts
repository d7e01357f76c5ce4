import type { Tx } from "@/lib/data/in-scope";

/** The people who are reminded: quality managers who can sign in. */
export const loadQualityManagers = (
  tx: Tx,
): Promise<readonly { readonly id: string; readonly email: string }[]> =>
  tx.person.findMany({
    where: { active: true, customerId: null, roles: { some: { role: "quality-manager" } } },
    select: { id: true, email: true },
    orderBy: { email: "asc" },
  });
