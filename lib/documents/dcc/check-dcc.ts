import { checkIssued } from "@/lib/domain/dcc/check-issued";
import type { DccSchemaFiles } from "@/lib/files/dcc/dcc-schema";
import { readDcc } from "@/lib/files/dcc/read-dcc";

/** What is wrong, and where: an element's path and its line. */
export type Finding = {
  readonly code: string;
  readonly path: string;
  readonly line: number;
  readonly message: string;
};

/**
 * Holds a digital certificate of ours against the rules of every DCC (those this platform reads others' by), against the
 * published schema where its files are given, and against what a certificate of ours must hold. None found: it may go out.
 */
export const checkDcc = (xml: string, schema?: DccSchemaFiles): readonly Finding[] => {
  const outcome = readDcc(new TextEncoder().encode(xml), schema);
  return outcome.ok ? checkIssued(outcome.certificate) : outcome.problems;
};
