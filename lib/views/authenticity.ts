import { database } from "@/lib/data/client";
import { hex } from "@/lib/data/hex";
import { publicUrl } from "@/lib/data/public-url";
import { withinRate } from "@/lib/data/rate/within-rate";
import { sha256 } from "@/lib/data/sha256";
import { authenticityRow } from "@/lib/data/sql/authenticity";
import { PublicStanding, type PublicStatus } from "@/lib/domain/authenticity/public-status";
import { isToken } from "@/lib/domain/authenticity/token";

export type Authenticity =
  | { readonly kind: "answered"; readonly status: PublicStatus }
  | { readonly kind: "too-many"; readonly resetsInSeconds: number };

const perAddress = { limit: 30, windowSeconds: 60 } as const;

const linked = (number: string, token: string) =>
  token === "" ? null : { number, address: `${publicUrl() ?? ""}/authenticity/${token}` };

/**
 * What the public may know of the certificate with this token. Whoever asks has no actor and no scope. Known, unknown
 * and malformed take the same steps: one count, one question.
 */
export const authenticityView = async (token: string, client: string, now: Date): Promise<Authenticity> => {
  const key = `authenticity ${hex(sha256(Buffer.from(client))).slice(0, 32)}`;
  const rate = await withinRate(key, perAddress.limit, perAddress.windowSeconds, now);
  if (!rate.isWithin) return { kind: "too-many", resetsInSeconds: rate.resetsInSeconds };
  const row = await authenticityRow(database(), isToken(token) ? token : "");
  return {
    kind: "answered",
    status: {
      standing: PublicStanding.parse(row.standing),
      laboratory: row.laboratory,
      number: row.number,
      issuedOn: row.issued_on,
      serialEnd: row.serial_end,
      endedOn: row.ended_on,
      successor: linked(row.successor_number, row.successor_token),
      predecessor: linked(row.predecessor_number, row.predecessor_token),
      fileSha256: row.file_sha256,
      contentProof: row.content_proof,
      logHash: row.log_hash,
    },
  };
};
