import { hasEnded, type Standing } from "@/lib/domain/certificate/standing";
import type { Tx } from "../in-scope";
import { loadStandings } from "./standing";

type Named = { readonly id: string; readonly number: string };

/**
 * The same certificates, given by their numbers upwards, with what became of each. Those that count come first, the
 * latest at the head: what is asked of a sensor's certificate is asked of that one.
 */
export const withStandings = async <T extends Named>(
  tx: Tx,
  certificates: readonly T[],
): Promise<(T & { readonly standing: Standing })[]> => {
  const standings = await loadStandings(
    tx,
    certificates.map(({ id }) => id),
  );
  return certificates
    .map((one) => ({ ...one, standing: standings.get(one.id) ?? ({ kind: "valid" } as const) }))
    .toReversed()
    .toSorted((left, right) => Number(hasEnded(left.standing)) - Number(hasEnded(right.standing)));
};
