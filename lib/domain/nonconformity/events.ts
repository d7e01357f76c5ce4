import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import {
  entryKindLabels,
  entryKinds,
  nonconformityKindLabels,
  nonconformityKinds,
  nonconformityStateLabels,
  nonconformityStates,
  subjectKindLabels,
  subjectKinds,
} from "./labels";

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const nonconformityEvents = {
  opened: defineEvent({
    action: "nonconformity.opened",
    entityKind: "nonconformity",
    payload: z.strictObject({
      number: z.string().min(1),
      kind: z.enum(nonconformityKinds),
      subjectKind: z.enum(subjectKinds),
      subjectName: z.string(),
      title: z.string().min(1),
    }),
    sentence: (p) =>
      `opened ${p.number} (${nonconformityKindLabels[p.kind].toLowerCase()}) on ${subjectKindLabels[p.subjectKind].toLowerCase()} ${p.subjectName}: ${p.title}`,
  }),
  entered: defineEvent({
    action: "nonconformity.entered",
    entityKind: "nonconformity",
    payload: z.strictObject({
      number: z.string().min(1),
      kind: z.enum(entryKinds),
      text: z.string().min(1),
      state: z.enum(nonconformityStates),
    }),
    sentence: (p) =>
      `recorded in ${p.number}, ${entryKindLabels[p.kind].toLowerCase()} (now ${nonconformityStateLabels[p.state].toLowerCase()}): ${p.text}`,
  }),
} as const;
