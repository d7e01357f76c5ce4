import { createHmac } from "node:crypto";
import pg from "pg";

const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

/** RFC 6238 once more, by hand: what an authenticator would show for this key (base32). */
export const codeOf = (key: string, at: number): string => {
  const bits = [...key.replaceAll(" ", "")]
    .map((sign) => alphabet.indexOf(sign).toString(2).padStart(5, "0"))
    .join("");
  const secret = Buffer.from((bits.match(/.{8}/g) ?? []).map((byte) => Number.parseInt(byte, 2)));
  const counter = Buffer.alloc(8);
  counter.writeBigUInt64BE(BigInt(Math.floor(at / 30_000)));
  const hash = createHmac("sha1", secret).update(counter).digest();
  const offset = (hash.at(-1) ?? 0) & 15;
  return String((hash.readUInt32BE(offset) & 0x7fffffff) % 1_000_000).padStart(6, "0");
};

/**
 * A code that was not used yet. People wait half a minute for their next one; journeys follow each other faster, so the
 * last one is forgotten in the database, as if that time had passed.
 */
export const freshCode = async (person: {
  readonly email: string;
  readonly codeKey: string;
}): Promise<string> => {
  const client = new pg.Client({ connectionString: process.env.E2E_DATABASE_URL ?? "" });
  await client.connect();
  try {
    await client.query(
      "UPDATE second_factor SET last_step = 0 WHERE ended_at IS NULL AND person_id = (SELECT id FROM person WHERE email = $1)",
      [person.email],
    );
  } finally {
    await client.end();
  }
  return codeOf(person.codeKey, Date.now());
};
