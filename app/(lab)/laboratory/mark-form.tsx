import { ActionForm } from "@/app/_ui/action-form.client";
import { FileField } from "@/app/_ui/file-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { setMarkAction } from "./actions";

type Props = { readonly version: number; readonly documentId: string | null };

/** The mark as the body gave it. It reaches certificates on which at least one result lies within the scope. */
export function MarkForm({ version, documentId }: Props) {
  return (
    <>
      {documentId === null ? (
        <p className="quiet">None: certificates carry no mark.</p>
      ) : (
        <p>
          {/* biome-ignore lint/performance/noImgElement: no optimiser is used here; the image is the laboratory's own */}
          <img src={`/api/documents/${documentId}`} alt="The accreditation mark in use" height={60} />
        </p>
      )}
      <ActionForm action={setMarkAction} label="Accreditation mark">
        <input type="hidden" name="version" value={version} />
        <FileField
          name="mark"
          label="Image of the mark"
          hint="PNG or JPEG, at most 400 kB, as the accreditation body gave it. It is printed where at least one result lies within the scope."
          accept="image/png,image/jpeg"
          optional
        />
        <div className="form-actions">
          <SubmitButton name="step" value="set">
            Take the mark in
          </SubmitButton>
          {documentId === null ? null : (
            <SubmitButton kind="quiet" name="step" value="remove">
              Take it off
            </SubmitButton>
          )}
        </div>
      </ActionForm>
    </>
  );
}
