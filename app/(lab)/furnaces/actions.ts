"use server";
import { changeFurnace } from "@/lib/operations/furnace/change";
import { decideCharacterisation } from "@/lib/operations/furnace/decide-characterisation";
import { decideInhomogeneity } from "@/lib/operations/furnace/decide-inhomogeneity";
import { planCharacterisation } from "@/lib/operations/furnace/plan-characterisation";
import { recordFurnace } from "@/lib/operations/furnace/record";
import { recordCharacterisation } from "@/lib/operations/furnace/record-characterisation";
import { recordConfiguration } from "@/lib/operations/furnace/record-configuration";
import { recordInhomogeneity } from "@/lib/operations/furnace/record-inhomogeneity";
import { recordSurvey } from "@/lib/operations/furnace/record-survey";
import { submitCharacterisation } from "@/lib/operations/furnace/submit-characterisation";
import { formAction } from "@/lib/web/form-action";
import { number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import {
  parseConfiguration,
  parseDecision,
  parseFurnace,
  parseInhomogeneity,
  parsePlan,
} from "./parse-furnace";
import { parseSurveyForm } from "./parse-survey-form";
import { uploadedFile } from "./survey-file";

const record = formAction(recordFurnace, {
  parse: (data) => ({ tag: text(data, "tag"), ...parseFurnace(data) }),
  done: ({ id }) => ({ redirect: `/furnaces/${id}` }),
});

const change = formAction(changeFurnace, {
  parse: (data) => ({ id: text(data, "id"), version: number(data, "version"), ...parseFurnace(data) }),
  done: ({ id }) => ({ redirect: `/furnaces/${id}` }),
});

const configure = formAction(recordConfiguration, {
  parse: parseConfiguration,
  done: ({ furnaceId }) => ({ redirect: `/furnaces/${furnaceId}` }),
});

const plan = formAction(planCharacterisation, {
  parse: parsePlan,
  done: ({ id, furnaceId }) => ({ redirect: `/furnaces/${furnaceId}/characterisations/${id}` }),
});

const submit = formAction(submitCharacterisation, {
  parse: (data) => ({
    characterisationRunId: text(data, "characterisationRunId"),
    validUntil: text(data, "validUntil"),
  }),
  done: () => "Submitted. Another person accepts it now, or returns it.",
});

const decide = formAction(decideCharacterisation, {
  parse: parseDecision,
  done: () => "The decision is recorded.",
});

const test = formAction(recordInhomogeneity, {
  parse: parseInhomogeneity,
  done: () => "The test is recorded. Another person accepts it now, or returns it.",
});

const decideTest = formAction(decideInhomogeneity, {
  parse: parseDecision,
  done: () => "The decision is recorded.",
});

const characterise = formAction(recordCharacterisation, {
  parse: (data) => ({
    configurationId: text(data, "configurationId"),
    performedOn: text(data, "performedOn"),
    validUntil: text(data, "validUntil"),
    uniformityHalfWidthCelsius: number(data, "uniformityHalfWidthCelsius"),
    statement: text(data, "statement"),
  }),
  done: () => "Recorded. It holds for runs once another person has accepted it.",
});

export const recordFurnaceAction = async (state: FormState, data: FormData) => record(state, data);
export const changeFurnaceAction = async (state: FormState, data: FormData) => change(state, data);
export const recordConfigurationAction = async (state: FormState, data: FormData) => configure(state, data);
export const recordCharacterisationAction = async (state: FormState, data: FormData) =>
  characterise(state, data);
export const planCharacterisationAction = async (state: FormState, data: FormData) => plan(state, data);
export const submitCharacterisationAction = async (state: FormState, data: FormData) => submit(state, data);
export const decideCharacterisationAction = async (state: FormState, data: FormData) => decide(state, data);
export const recordInhomogeneityAction = async (state: FormState, data: FormData) => test(state, data);
export const decideInhomogeneityAction = async (state: FormState, data: FormData) => decideTest(state, data);

/** A file is read before the form is: reading takes its time, parsing does not. */
export const recordSurveyAction = async (state: FormState, data: FormData) => {
  const file = await uploadedFile(data, "file");
  const record = formAction(recordSurvey, {
    parse: (form) => parseSurveyForm(form, file),
    done: ({ furnaceId, runId }) => ({ redirect: `/furnaces/${furnaceId}/characterisations/${runId}` }),
  });
  return record(state, data);
};
