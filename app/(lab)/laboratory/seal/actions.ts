"use server";
import { retireKey } from "@/lib/operations/seal/retire";
import { revokeKey } from "@/lib/operations/seal/revoke";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { momentTyped } from "./moment-typed";

const retire = formAction(retireKey, {
  parse: (data) => ({ id: text(data, "id"), reason: text(data, "reason") }),
  done: () =>
    "Retired: it seals no more. The laboratory makes itself another with the next document; a key from the site’s file is exchanged by naming another file in SEAL_KEY_FILE and starting again.",
});
const revoke = formAction(revokeKey, {
  parse: (data) => ({
    id: text(data, "id"),
    reason: text(data, "reason"),
    effectiveAt: momentTyped(text(data, "effectiveAt")),
  }),
  done: () => "Revoked, and published at once.",
});

export const retireKeyAction = async (state: FormState, data: FormData) => retire(state, data);
export const revokeKeyAction = async (state: FormState, data: FormData) => revoke(state, data);
