"use server";
import { complain } from "@/lib/operations/nonconformity/complain";
import { env } from "@/lib/web/env";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const tell = formAction(complain, {
  parse: (data) => ({
    subjectKind: text(data, "subjectKind"),
    subjectName: text(data, "subjectName"),
    title: text(data, "title"),
    description: text(data, "description"),
    publicUrl: env().publicOrigin,
  }),
  done: ({ number }) => `Thank you: it is with us as ${number}, and somebody looks into it.`,
});

export const complainAction = async (state: FormState, data: FormData) => tell(state, data);
