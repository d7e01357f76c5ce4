"use client";
import { type ChangeEvent, useState } from "react";
import { ActionForm } from "@/app/_ui/action-form.client";
import { describedBy } from "@/app/_ui/described-by";
import { FieldFrame } from "@/app/_ui/field-frame";
import { useField } from "@/app/_ui/form-context.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { addPhotoAction } from "../actions";
import { shrinkPhoto } from "./shrink-photo.client";

type Props = { readonly tag: string; readonly longestBytes: number };

const hint = "JPEG, PNG or WebP. A phone offers its camera.";

/** A photo is made small enough as soon as it is chosen; without script it is sent as it is. */
const PhotoInput = ({ longestBytes }: { readonly longestBytes: number }) => {
  const { id, error: refused } = useField("photo");
  const [tooLarge, setTooLarge] = useState("");
  const choose = async ({ currentTarget: input }: ChangeEvent<HTMLInputElement>) => {
    const file = input.files?.[0];
    setTooLarge("");
    if (!file) return;
    const small = await shrinkPhoto(file, longestBytes);
    const given = new DataTransfer();
    if (small.size <= longestBytes) given.items.add(small);
    else
      setTooLarge(`“${file.name}” is larger than ${longestBytes / 1_000_000} MB. Save it smaller as JPEG.`);
    input.files = given.files;
  };
  const error = tooLarge || refused;
  return (
    <FieldFrame id={id} label="Photo" hint={hint} error={error}>
      <input
        id={id}
        name="photo"
        type="file"
        className="input"
        accept="image/jpeg,image/png,image/webp"
        capture="environment"
        required
        onChange={choose}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
      />
    </FieldFrame>
  );
};

export function PhotoForm({ tag, longestBytes }: Props) {
  return (
    <ActionForm action={addPhotoAction} label="Add a photo">
      <input type="hidden" name="tag" value={tag} />
      <PhotoInput longestBytes={longestBytes} />
      <TextField name="caption" label="What it shows" optional maxLength={200} />
      <div className="form-actions">
        <SubmitButton>Keep the photo</SubmitButton>
      </div>
    </ActionForm>
  );
}
