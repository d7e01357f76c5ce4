import { PrismaPg } from "@prisma/adapter-pg";
import { PrismaClient } from "@/lib/generated/prisma/client";

/** One client per process and address. `globalThis`, because Next loads modules more than once. */
const store = globalThis as unknown as { emfolioClients?: Map<string, PrismaClient>; emfolioUrl?: string };

/** Told once at start by whoever runs the process; `lib/data` itself reads no environment. */
export const configureDatabase = (url: string): void => {
  store.emfolioUrl = url;
};

export const database = (): PrismaClient => {
  const url = store.emfolioUrl;
  if (!url) throw new Error("configureDatabase has not been called: no database address is known");
  store.emfolioClients ??= new Map();
  const known = store.emfolioClients.get(url);
  if (known) return known;
  const made = new PrismaClient({
    adapter: new PrismaPg({ connectionString: url, max: 10 }),
    // By default 22 of 50 parallel transactions fail with P2028; on a machine with much else to do, 11 of 50 sign-offs had
    // waited for a connection for more than half a minute. Who waits gets their turn, rather than to type it all again.
    transactionOptions: { maxWait: 120_000, timeout: 60_000 },
  });
  store.emfolioClients.set(url, made);
  return made;
};

export const closeDatabase = async (): Promise<void> => {
  const clients = [...(store.emfolioClients?.values() ?? [])];
  store.emfolioClients?.clear();
  await Promise.all(clients.map((client) => client.$disconnect()));
};
