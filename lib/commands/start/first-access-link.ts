import { existsSync } from "node:fs";
import { inCheckout } from "@/lib/commands/checkout";

type FirstAccess = {
  readonly createFirstAccessLink: (options: {
    readonly databaseUrl: string;
    readonly publicUrl: string;
  }) => Promise<string | undefined>;
};

/** The one-time link that makes the first quality manager, or undefined where there already is somebody. */
export async function firstAccessLink(databaseUrl: string, publicUrl: string): Promise<string | undefined> {
  const file = inCheckout("lib", "operations", "staff", "first-access.ts");
  if (!existsSync(file)) return undefined;
  const { createFirstAccessLink } = (await import(file)) as FirstAccess;
  return createFirstAccessLink({ databaseUrl, publicUrl });
}
