import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { rolesText } from "./roles-text";

const none = z.strictObject({});
const roleList = z.array(z.string());
const spoken = (roles: readonly string[]): string => rolesText(roles).toLowerCase() || "no role";

/** Facts about people and the laboratory itself that the audit log can hold; gathered in `domain/audit/events`. */
export const staffEvents = {
  signedIn: defineEvent({
    action: "staff.signed-in",
    entityKind: "person",
    payload: none,
    sentence: () => "signed in",
  }),
  signInRefused: defineEvent({
    action: "staff.sign-in-refused",
    entityKind: "person",
    payload: z.strictObject({ reason: z.enum(["wrong-password", "unknown-address", "inactive"]) }),
    sentence: ({ reason }) =>
      ({
        "wrong-password": "refused a sign-in with a wrong password",
        "unknown-address": "refused a sign-in with an address nobody has here",
        inactive: "refused a sign-in of a deactivated person",
      })[reason],
  }),
  signedOut: defineEvent({
    action: "staff.signed-out",
    entityKind: "person",
    payload: none,
    sentence: () => "signed out and so ended every session",
  }),
  personAdded: defineEvent({
    action: "staff.person-added",
    entityKind: "person",
    payload: z.strictObject({ roles: roleList, customerId: z.string().nullable() }),
    sentence: ({ roles }) => `added a person as ${spoken(roles)}`,
  }),
  personChanged: defineEvent({
    action: "staff.person-changed",
    entityKind: "person",
    payload: z.strictObject({ changed: z.array(z.enum(["name", "email"])).min(1) }),
    sentence: ({ changed }) =>
      `changed a person's ${changed.map((field) => (field === "email" ? "e-mail address" : "name")).join(" and ")}`,
  }),
  rolesChanged: defineEvent({
    action: "staff.roles-changed",
    entityKind: "person",
    payload: z.strictObject({ from: roleList, to: roleList }),
    sentence: ({ from, to }) => `changed a person's roles from ${spoken(from)} to ${spoken(to)}`,
  }),
  personDeactivated: defineEvent({
    action: "staff.person-deactivated",
    entityKind: "person",
    payload: none,
    sentence: () => "deactivated a person and ended their sessions",
  }),
  personReactivated: defineEvent({
    action: "staff.person-reactivated",
    entityKind: "person",
    payload: none,
    sentence: () => "reactivated a person",
  }),
  passwordSet: defineEvent({
    action: "staff.password-set",
    entityKind: "person",
    payload: none,
    sentence: () => "set a new initial password for a person and ended their sessions",
  }),
  passwordChanged: defineEvent({
    action: "staff.password-changed",
    entityKind: "person",
    payload: none,
    sentence: () => "changed their own password and ended their sessions",
  }),
  firstAccessOffered: defineEvent({
    action: "staff.first-access-offered",
    entityKind: "laboratory",
    payload: z.strictObject({ expiresAt: z.iso.datetime() }),
    sentence: () => "made a one-time link for the first quality manager",
  }),
  firstAccessUsed: defineEvent({
    action: "staff.first-access-used",
    entityKind: "person",
    payload: none,
    sentence: () => "made the first quality manager by the one-time link",
  }),
  laboratoryFounded: defineEvent({
    action: "laboratory.founded",
    entityKind: "laboratory",
    payload: z.strictObject({ name: z.string(), isDemo: z.boolean() }),
    sentence: ({ name, isDemo }) => `recorded the laboratory ${name}${isDemo ? ", a demonstration" : ""}`,
  }),
  laboratoryConfigured: defineEvent({
    action: "laboratory.configured",
    entityKind: "laboratory",
    payload: z.strictObject({
      changed: z.array(z.string()).min(1),
      performerMaySignOff: z.boolean(),
    }),
    sentence: ({ changed, performerMaySignOff }) =>
      changed.includes("performerMaySignOff")
        ? `changed the laboratory's settings: the performer ${performerMaySignOff ? "may" : "may not"} sign off`
        : "changed the laboratory's settings",
  }),
  markSet: defineEvent({
    action: "laboratory.mark-set",
    entityKind: "laboratory",
    payload: z.strictObject({
      sha256: z.string().regex(/^[0-9a-f]{64}$/),
      mediaType: z.string(),
      width: z.int(),
      height: z.int(),
    }),
    sentence: ({ width, height }) => `took in the accreditation mark, ${width} × ${height} pixels`,
  }),
  markRemoved: defineEvent({
    action: "laboratory.mark-removed",
    entityKind: "laboratory",
    payload: none,
    sentence: () => "took the accreditation mark off certificates to come",
  }),
} as const;
