"use server";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { answerComment } from "@/lib/operations/review/answer-comment";
import { comment } from "@/lib/operations/review/comment";
import { letSensorGo } from "@/lib/operations/review/let-sensor-go";
import { openResult } from "@/lib/operations/review/open-result";
import { returnRun } from "@/lib/operations/review/return";
import { secondLook } from "@/lib/operations/review/second-look";
import { formAction } from "@/lib/web/form-action";
import { list, secret, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const sign = formAction(signOff, {
  parse: (data) => ({
    runId: text(data, "runId"),
    evaluationId: text(data, "evaluationId"),
    // "<sensor id>[+<another of its lot>…] <hash that was on the page>", one for each ticked box.
    items: list(data, "items").map((item) => {
      const [sensors = "", reviewedHash = ""] = item.split(" ");
      const [sensorId = "", ...others] = sensors.split("+");
      return { sensorId, others, reviewedHash };
    }),
    exceptionReason: text(data, "exceptionReason"),
    act: {
      actId: text(data, "actId"),
      password: secret(data, "password"),
      code: text(data, "secretCode"),
    },
  }),
  done: ({ certificates }) =>
    `Signed off: ${certificates.map(({ number }) => number).join(", ")}. The documents are being made.`,
});

const letGo = formAction(letSensorGo, {
  parse: (data) => ({
    runId: text(data, "runId"),
    evaluationId: text(data, "evaluationId"),
    sensorId: text(data, "sensorId"),
    results: text(data, "results"),
    reason: text(data, "reason"),
  }),
  done: ({ tag, results }) =>
    results === "kept"
      ? `The results of ${tag} are kept for its certificate; it waits for what comes next.`
      : `${tag} is put back and waits for another run; these results stay on record.`,
});
export const letSensorGoAction = async (state: FormState, data: FormData) => letGo(state, data);

const giveBack = formAction(returnRun, {
  parse: (data) => ({
    runId: text(data, "runId"),
    evaluationId: text(data, "evaluationId"),
    reason: text(data, "reason"),
  }),
  done: () => ({ redirect: "/review" }),
});

const look = formAction(secondLook, {
  parse: (data) => ({ certificateId: text(data, "certificateId"), finding: text(data, "finding") }),
  done: ({ number }) => `The second look at ${number} is recorded.`,
});

export const signOffAction = async (state: FormState, data: FormData) => sign(state, data);
export const returnRunAction = async (state: FormState, data: FormData) => giveBack(state, data);
export const secondLookAction = async (state: FormState, data: FormData) => look(state, data);

const open = formAction(openResult, {
  parse: (data) => ({
    runId: text(data, "runId"),
    evaluationId: text(data, "evaluationId"),
    sensorId: text(data, "sensorId"),
    setpointId: text(data, "setpointId"),
  }),
  done: () => "Recorded as opened by you.",
});
export const openResultAction = async (state: FormState, data: FormData) => open(state, data);

const remark = formAction(comment, {
  parse: (data) => ({
    runId: text(data, "runId"),
    evaluationId: text(data, "evaluationId"),
    sensorId: text(data, "sensorId") || null,
    setpointId: text(data, "setpointId") || null,
    place: text(data, "place"),
    text: text(data, "text"),
  }),
  done: () => "The remark stands at its number.",
});
export const commentAction = async (state: FormState, data: FormData) => remark(state, data);

const reply = formAction(answerComment, {
  parse: (data) => ({
    commentId: text(data, "commentId"),
    text: text(data, "text"),
    settles: data.get("settles") === "yes",
  }),
  done: ({ settles }) => (settles ? "Settled." : "Answered; it is still open."),
});
export const answerCommentAction = async (state: FormState, data: FormData) => reply(state, data);
