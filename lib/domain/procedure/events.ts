import { z } from "zod";
import { defineEvent } from "../audit/define-event";

const revision = z.strictObject({ key: z.string(), revision: z.int().positive() });
const hash = z.string().regex(/^[0-9a-f]{64}$/);

/** Facts about procedures that the audit log can hold; gathered in `domain/audit/events`. */
export const procedureEvents = {
  installed: defineEvent({
    action: "procedure.installed",
    entityKind: "procedure",
    payload: revision.extend({ contentSha256: hash }),
    sentence: (p) => `brought in procedure ${p.key}, revision ${p.revision}, which came with the platform`,
  }),
  drafted: defineEvent({
    action: "procedure.drafted",
    entityKind: "procedure",
    payload: revision.extend({ copyOf: z.string() }),
    sentence: (p) => `drafted procedure ${p.key}, revision ${p.revision}, from ${p.copyOf}`,
  }),
  draftChanged: defineEvent({
    action: "procedure.draft-changed",
    entityKind: "procedure",
    payload: revision.extend({ changed: z.array(z.string()).min(1), contentSha256: hash }),
    sentence: (p) =>
      `changed the draft of procedure ${p.key}, revision ${p.revision}: ${p.changed.join(", ")}`,
  }),
  madeCurrent: defineEvent({
    action: "procedure.made-current",
    entityKind: "procedure",
    payload: revision.extend({ withdrawn: z.int().positive().nullable(), contentSha256: hash }),
    sentence: (p) =>
      `made procedure ${p.key}, revision ${p.revision}, current${p.withdrawn === null ? "" : ` and withdrew revision ${p.withdrawn}`}`,
  }),
} as const;
