import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { rolesText } from "../staff/roles-text";

const none = z.strictObject({});
const spoken = (roles: readonly string[]): string => rolesText(roles).toLowerCase() || "no role";
const ofPerson = <K extends string>(action: K, sentence: string) =>
  defineEvent({ action, entityKind: "person", payload: none, sentence: () => sentence });

/** Facts about accounts: how people come in, and what they come in with. Never an address, a name, a code or a token. */
export const accountEvents = {
  signedIn: defineEvent({
    action: "account.session-began",
    entityKind: "person",
    payload: z.strictObject({
      kind: z.enum(["full", "bench"]),
      cameBy: z.enum(["password", "openid"]),
      hadCode: z.boolean(),
    }),
    sentence: (p) =>
      `began a session${p.kind === "bench" ? " at the bench" : ""}, by ${p.cameBy === "openid" ? "the outside identity provider" : "password"}${p.hadCode ? " and one-time code" : ""}`,
  }),
  signedOut: ofPerson("account.signed-out", "signed out"),
  sessionEnded: ofPerson("account.session-ended", "ended a session of theirs on another device"),
  otherSessionsEnded: ofPerson("account.other-sessions-ended", "ended every other session of theirs"),
  invited: defineEvent({
    action: "account.invited",
    entityKind: "invitation",
    payload: z.strictObject({
      roles: z.array(z.string()),
      customerId: z.string().nullable(),
      expiresAt: z.iso.datetime(),
    }),
    sentence: ({ roles }) => `invited somebody as ${spoken(roles)}`,
  }),
  invitationWithdrawn: defineEvent({
    action: "account.invitation-withdrawn",
    entityKind: "invitation",
    payload: none,
    sentence: () => "withdrew an invitation",
  }),
  invitationAccepted: defineEvent({
    action: "account.invitation-accepted",
    entityKind: "person",
    payload: z.strictObject({ invitation: z.string() }),
    sentence: () => "was let in by an invitation",
  }),
  resetAsked: ofPerson("account.reset-asked", "was asked to send a link for a new password"),
  resetSent: ofPerson("account.reset-sent", "sent a link for a new password"),
  passwordReset: ofPerson("account.password-reset", "set a new password by a link, and every session ended"),
  locked: defineEvent({
    action: "account.locked",
    entityKind: "person",
    payload: z.strictObject({ until: z.iso.datetime() }),
    sentence: ({ until }) => `locked an account after too many wrong tries, until ${until}`,
  }),
  unlocked: ofPerson("account.unlocked", "unlocked an account"),
  refusedWhileLocked: ofPerson("account.refused-while-locked", "refused a sign-in to a locked account"),
  codeUsed: ofPerson("account.code-used", "accepted a one-time code"),
  codeRefused: ofPerson("account.code-refused", "refused a wrong one-time code"),
  factorBegun: ofPerson("account.factor-begun", "began to set up one-time codes"),
  factorConfirmed: ofPerson("account.factor-confirmed", "set up one-time codes"),
  factorEnded: ofPerson("account.factor-ended", "gave up one-time codes"),
  factorReset: defineEvent({
    action: "account.factor-reset",
    entityKind: "person",
    payload: z.strictObject({ reason: z.string() }),
    sentence: ({ reason }) => `took a person's one-time codes away: ${reason}`,
  }),
  recoveryCodeUsed: defineEvent({
    action: "account.recovery-code-used",
    entityKind: "person",
    payload: z.strictObject({ left: z.int() }),
    sentence: ({ left }) => `used a recovery code; ${left} left`,
  }),
  policyChanged: defineEvent({
    action: "account.policy-changed",
    entityKind: "laboratory",
    payload: z.strictObject({ before: z.string(), after: z.string() }),
    sentence: () => "changed how people are let in",
  }),
  outsideAsked: ofPerson(
    "account.outside-asked",
    "gave the password once more, to be linked with the outside identity provider",
  ),
  outsideLinked: ofPerson("account.outside-linked", "linked an account with the outside identity provider"),
  outsideUnlinked: ofPerson(
    "account.outside-unlinked",
    "parted an account from the outside identity provider",
  ),
  outsideRefused: ofPerson(
    "account.outside-refused",
    "refused a sign-in by the outside identity provider: nobody here is linked to it",
  ),
} as const;
