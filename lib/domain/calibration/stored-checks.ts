import { z } from "zod";
import type { AcceptanceCheck } from "./acceptance-check";

const Stored = z.array(z.record(z.string(), z.unknown()));

/** The answers as they were confirmed; decisions from before there were any keep none. */
export const storedChecks = (text: string): readonly AcceptanceCheck[] => {
  const stored = Stored.safeParse(JSON.parse(text));
  return stored.success ? (stored.data as unknown as readonly AcceptanceCheck[]) : [];
};
