"use server";
import { endWebhook, testWebhook } from "@/lib/operations/machine/change-webhook";
import { makeToken } from "@/lib/operations/machine/make-token";
import { makeWebhook } from "@/lib/operations/machine/make-webhook";
import { revokeToken } from "@/lib/operations/machine/revoke-token";
import { formAction } from "@/lib/web/form-action";
import { list, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const id = (data: FormData) => ({ id: text(data, "id") });

const make = formAction(makeToken, {
  parse: (data) => ({ name: text(data, "name"), scopes: list(data, "scopes"), days: text(data, "days") }),
  done: ({ token }) => `Made. Copy it now, it is not shown again: ${token}`,
});
const revoke = formAction(revokeToken, { parse: id, done: () => "Revoked: it opens nothing any more." });
const tell = formAction(makeWebhook, {
  parse: (data) => ({ url: text(data, "url"), topics: list(data, "topics") }),
  done: ({ secret }) => `Set up. Copy the secret of its signatures now, it is not shown again: ${secret}`,
});
const end = formAction(endWebhook, { parse: id, done: () => "Ended." });
const test = formAction(testWebhook, {
  parse: id,
  done: () => "A test message is on its way. Reload to see how it went.",
});

export const makeTokenAction = async (state: FormState, data: FormData) => make(state, data);
export const revokeTokenAction = async (state: FormState, data: FormData) => revoke(state, data);
export const makeWebhookAction = async (state: FormState, data: FormData) => tell(state, data);
export const endWebhookAction = async (state: FormState, data: FormData) => end(state, data);
export const testWebhookAction = async (state: FormState, data: FormData) => test(state, data);
