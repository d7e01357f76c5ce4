"use server";
import { uploadedFile } from "@/app/(lab)/furnaces/survey-file";
import { BuildDraft } from "@/lib/domain/sensor/build-draft";
import { addPhoto } from "@/lib/operations/sensor/add-photo";
import { collectSensor } from "@/lib/operations/sensor/collect";
import { stateBuild } from "@/lib/operations/sensor/state-build";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const buildFields = Object.keys(BuildDraft.shape);

const collect = formAction(collectSensor, {
  parse: (data) => ({
    tag: text(data, "tag"),
    handedOver: text(data, "handedOver"),
    reason: text(data, "reason"),
  }),
  done: ({ tag }) => `Sensor ${tag} is handed back.`,
});

const build = formAction(stateBuild, {
  parse: (data) => ({
    ...Object.fromEntries(buildFields.map((name) => [name, text(data, name)])),
    tag: text(data, "tag"),
    version: text(data, "version"),
    reason: text(data, "reason"),
  }),
  done: ({ tag }) => `Recorded how ${tag} is made.`,
});
export const stateBuildAction = async (state: FormState, data: FormData) => build(state, data);

export const collectSensorAction = async (state: FormState, data: FormData) => collect(state, data);

/** A file is read before the form is. */
export const addPhotoAction = async (state: FormState, data: FormData) => {
  const file = await uploadedFile(data, "photo");
  const add = formAction(addPhoto, {
    parse: (form) => ({
      tag: text(form, "tag"),
      caption: text(form, "caption"),
      bytes: file?.bytes ?? new Uint8Array(),
    }),
    done: ({ tag }) => `The photo of ${tag} is kept.`,
  });
  return add(state, data);
};
