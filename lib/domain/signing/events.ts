import { z } from "zod";
import { defineEvent } from "../audit/define-event";

const means = z.enum(["password+code", "password", "code"]);
const meansWords: Readonly<Record<z.output<typeof means>, string>> = {
  "password+code": "password and one-time code",
  password: "the password once more",
  code: "a one-time code",
};

/** Facts about acts of signing: who proved to be there, and who did not. Never a code, a password or a name. */
export const signingEvents = {
  proved: defineEvent({
    action: "signing.proved",
    entityKind: "person",
    payload: z.strictObject({ actId: z.string(), means }),
    sentence: (p) => `gave ${meansWords[p.means]} to sign`,
  }),
  refused: defineEvent({
    action: "signing.refused",
    entityKind: "person",
    payload: z.strictObject({
      actId: z.string(),
      reason: z.enum(["wrong-password", "wrong-code", "code-used"]),
    }),
    sentence: ({ reason }) =>
      ({
        "wrong-password": "was refused a signature: wrong password",
        "wrong-code": "was refused a signature: wrong one-time code",
        "code-used": "was refused a signature: a one-time code that was used already",
      })[reason],
  }),
  policyChanged: defineEvent({
    action: "signing.policy-changed",
    entityKind: "laboratory",
    payload: z.strictObject({ before: z.string(), after: z.string() }),
    sentence: () => "changed how long a session of signing lasts",
  }),
} as const;
