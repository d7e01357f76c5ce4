import type { database } from "@/lib/data/client";

export type AuthenticityRow = {
  readonly standing: string;
  readonly laboratory: string;
  readonly number: string;
  readonly issued_on: string;
  readonly serial_end: string;
  readonly ended_on: string;
  readonly successor_number: string;
  readonly successor_token: string;
  readonly predecessor_number: string;
  readonly predecessor_token: string;
  readonly file_sha256: string;
  readonly content_proof: string;
  readonly log_hash: string;
};

/**
 * The only thing the public may ask, outside of every scope: in no other way would it see a row. One row for each
 * question, also for a token that nothing has.
 */
export const authenticityRow = async (
  client: Pick<ReturnType<typeof database>, "$queryRaw">,
  token: string,
): Promise<AuthenticityRow> => {
  const rows = await client.$queryRaw<AuthenticityRow[]>`SELECT * FROM authenticity(${token})`;
  return rows[0]!;
};
