"use server";
import { headers } from "next/headers";
import { uploadedFile } from "@/app/(lab)/furnaces/survey-file";
import { receiveSensorFile } from "@/lib/operations/sensor/receive-file";
import { intakePreviewView } from "@/lib/views/order/intake-preview";
import { currentActor } from "@/lib/web/auth";
import { env } from "@/lib/web/env";
import { foreignOriginMessage, formAction, refusedState, stateOfError } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { isOwnOrigin } from "@/lib/web/origin";
import type { IntakeState } from "./intake-state";

const positionOf = (data: FormData): number | null => Number(text(data, "position")) || null;

const store = formAction(receiveSensorFile, {
  parse: (data) => ({
    orderNumber: text(data, "orderNumber"),
    position: positionOf(data),
    receivedOn: text(data, "receivedOn"),
    fileName: text(data, "keptName"),
    bytes: new Uint8Array(Buffer.from(text(data, "keptBytes"), "base64")),
  }),
  done: ({ orderNumber, tags, deviating }) => ({
    redirect: `/orders/${orderNumber}/receive?taken=${tags.length}&deviating=${deviating.length}`,
  }),
});

/** The kept bytes are no value to give back: they stand in the state already. */
const withoutBytes = (state: FormState): FormState => {
  if (state.status !== "refused") return state;
  const { keptBytes: _bytes, ...values } = state.values;
  return { ...state, values };
};

const look = async (data: FormData): Promise<IntakeState> => {
  const refused = (form: FormState): IntakeState => ({ form, looked: null });
  if (!isOwnOrigin((await headers()).get("origin"), env().publicOrigin))
    return refused(refusedState(data, foreignOriginMessage(env().publicOrigin)));
  const actor = await currentActor();
  if (!actor)
    return refused(
      refusedState(data, "Your session has ended. Sign in again in another tab, then send this once more."),
    );
  const file = await uploadedFile(data, "file");
  if (!file)
    return refused(refusedState(data, "Nothing is read yet.", { file: "Choose the list, CSV or XLSX." }));
  try {
    const asked = { number: text(data, "orderNumber"), position: positionOf(data), bytes: file.bytes };
    const preview = await intakePreviewView(actor, asked);
    const base64 = Buffer.from(file.bytes).toString("base64");
    return {
      form: { status: "idle" },
      looked: { preview, fileName: file.fileName, base64, position: text(data, "position") },
    };
  } catch (error) {
    return refused(stateOfError(error, data, "intake preview"));
  }
};

/** First looked at, then taken in: two buttons of one form. */
export const intakeFileAction = async (state: IntakeState, data: FormData): Promise<IntakeState> => {
  const step = text(data, "step");
  if (step === "again") return { form: { status: "idle" }, looked: null };
  if (step !== "store") return look(data);
  return { form: withoutBytes(await store(state.form, data)), looked: state.looked };
};
