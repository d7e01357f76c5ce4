"use server";
import { closeNonconformity } from "@/lib/operations/nonconformity/close";
import { enterNonconformity } from "@/lib/operations/nonconformity/enter";
import { holdWork } from "@/lib/operations/nonconformity/hold-work";
import { openNonconformity } from "@/lib/operations/nonconformity/open";
import { reopenNonconformity } from "@/lib/operations/nonconformity/reopen";
import { resumeWork } from "@/lib/operations/nonconformity/resume";
import { stateEffect } from "@/lib/operations/nonconformity/state-effect";
import { tellCustomers } from "@/lib/operations/nonconformity/tell-customers";
import { env } from "@/lib/web/env";
import { formAction } from "@/lib/web/form-action";
import { number, optionalNumber, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const step = (data: FormData) => ({
  number: text(data, "number"),
  version: number(data, "version"),
  text: text(data, "text"),
});

const open = formAction(openNonconformity, {
  parse: (data) => ({
    kind: text(data, "kind"),
    subjectKind: text(data, "subjectKind"),
    subjectName: text(data, "subjectName"),
    title: text(data, "title"),
    description: text(data, "description"),
  }),
  done: ({ number: opened }) => ({ redirect: `/quality/${opened}` }),
});
const enter = formAction(enterNonconformity, {
  parse: (data) => ({ ...step(data), kind: text(data, "kind") }),
  done: () => "Recorded.",
});
const effect = formAction(stateEffect, {
  parse: (data) => ({
    ...step(data),
    deltaCelsius: optionalNumber(data, "deltaCelsius"),
    from: text(data, "from"),
    until: text(data, "until"),
  }),
  done: () => "The effect is recorded with what stands on it.",
});
const hold = formAction(holdWork, {
  parse: step,
  done: ({ held }) => `${held} ${held === 1 ? "sensor stands" : "sensors stand"} still.`,
});
const tell = formAction(tellCustomers, {
  parse: (data) => ({ ...step(data), publicUrl: env().publicOrigin }),
  done: ({ told }) => `Told ${told} ${told === 1 ? "customer" : "customers"}; the mail is on its way.`,
});
const resume = formAction(resumeWork, { parse: step, done: () => "The work goes on." });
const close = formAction(closeNonconformity, { parse: step, done: () => "Closed." });
const reopen = formAction(reopenNonconformity, { parse: step, done: () => "Open again." });

export const openAction = async (state: FormState, data: FormData) => open(state, data);
export const enterAction = async (state: FormState, data: FormData) => enter(state, data);
export const effectAction = async (state: FormState, data: FormData) => effect(state, data);
export const holdWorkAction = async (state: FormState, data: FormData) => hold(state, data);
export const tellAction = async (state: FormState, data: FormData) => tell(state, data);
export const resumeAction = async (state: FormState, data: FormData) => resume(state, data);
export const closeAction = async (state: FormState, data: FormData) => close(state, data);
export const reopenAction = async (state: FormState, data: FormData) => reopen(state, data);
