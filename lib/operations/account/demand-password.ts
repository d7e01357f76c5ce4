import type { Tx } from "@/lib/data/in-scope";
import { loadPasswordHash } from "@/lib/data/staff/sign-in-store";
import { Refused } from "@/lib/domain/refusal";
import { verifyPassword } from "../password-hash";

/** A screen left open is not enough: whoever changes what an account opens with types its password again. */
export const demandPassword = async (tx: Tx, personId: string, typed: string) => {
  const stored = await loadPasswordHash(tx, personId);
  if (!stored) throw new Refused({ code: "not-found", message: "This person is not here." });
  if (!(await verifyPassword(stored.passwordHash, typed)))
    throw new Refused({
      code: "invalid",
      message: "Nothing was changed.",
      fields: { password: "This is not your present password." },
    });
  return stored;
};
