"use server";
import { askAmendment } from "@/lib/operations/certificate/ask-amendment";
import { dropAmendment } from "@/lib/operations/certificate/drop-amendment";
import { signOffAmendment } from "@/lib/operations/certificate/sign-off-amendment";
import { withdrawCertificate } from "@/lib/operations/certificate/withdraw";
import { evaluateRun } from "@/lib/operations/run/evaluate";
import { formAction } from "@/lib/web/form-action";
import { optionalText, secret, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const lines = (typed: string | undefined): string[] | undefined =>
  typed
    ?.split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");

/** Of each field: what was typed, or nothing where it stays as it is. */
const correctionsIn = (data: FormData) => {
  const typed = (name: string) => optionalText(data, `corrections.${name}`);
  return {
    customerName: typed("customerName"),
    customerAddressLines: lines(typed("customerAddressLines")),
    customerContact: typed("customerContact"),
    purchaseOrder: typed("purchaseOrder"),
    serial: typed("serial"),
    construction: typed("construction"),
    protection: typed("protection"),
    material: typed("material"),
    receivedOn: typed("receivedOn"),
    condition: typed("condition"),
    remark: typed("remark"),
  };
};

const ask = formAction(askAmendment, {
  parse: (data) => ({
    certificateId: text(data, "certificateId"),
    kind: text(data, "kind"),
    reason: text(data, "reason"),
    corrections: correctionsIn(data),
    nonconformity: text(data, "nonconformity"),
  }),
  done: ({ number }) => `Asked for. ${number} stands until a signatory who did not ask for it has signed.`,
});

const drop = formAction(dropAmendment, {
  parse: (data) => ({ amendmentId: text(data, "amendmentId"), reason: text(data, "reason") }),
  done: ({ number }) => `Dropped. ${number} stays as it is.`,
});

const sign = formAction(signOffAmendment, {
  parse: (data) => ({
    amendmentId: text(data, "amendmentId"),
    reviewedHash: text(data, "reviewedHash"),
    act: {
      actId: text(data, "actId"),
      password: secret(data, "password"),
      code: text(data, "secretCode"),
    },
  }),
  done: ({ number }) => ({ redirect: `/certificates/${number}` }),
});

const withdraw = formAction(withdrawCertificate, {
  parse: (data) => ({
    certificateId: text(data, "certificateId"),
    reason: text(data, "reason"),
    forGood: text(data, "forGood") === "yes",
  }),
  done: ({ number }) => `${number} is withdrawn. Its customer is told by mail.`,
});

const evaluate = formAction(evaluateRun, {
  parse: (data) => ({ run: text(data, "run") }),
  done: ({ sequence }) => `Evaluation ${sequence} of the run is there.`,
});

export const askAmendmentAction = async (state: FormState, data: FormData) => ask(state, data);
export const dropAmendmentAction = async (state: FormState, data: FormData) => drop(state, data);
export const signAmendmentAction = async (state: FormState, data: FormData) => sign(state, data);
export const withdrawAction = async (state: FormState, data: FormData) => withdraw(state, data);
export const evaluateAgainAction = async (state: FormState, data: FormData) => evaluate(state, data);
