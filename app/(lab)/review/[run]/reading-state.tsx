import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { LinkButton } from "@/app/_ui/link-button";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { ReviewRunPage } from "@/lib/views/review-run";
import { commentAction } from "../actions";
import { RemarkThread } from "./[tag]/[setpoint]/remarks";

function RemarkOnRun({ review }: { readonly review: ReviewRunPage }) {
  return (
    <Disclosure summary="Remark on the run as a whole">
      <ActionForm action={commentAction} label="Remark on the run">
        <input type="hidden" name="runId" value={review.runId} />
        <input type="hidden" name="evaluationId" value={review.evaluationId} />
        <input type="hidden" name="place" value="draft" />
        <TextArea
          name="text"
          label="Remark"
          hint="Until it is settled, no sensor of the run is signed for. A remark on one number is left at that number."
          rows={2}
        />
        <div className="form-actions">
          <SubmitButton kind="quiet">Leave the remark</SubmitButton>
        </div>
      </ActionForm>
    </Disclosure>
  );
}

/** Which number it speaks of, then what was said. */
function RemarkWithPlace({
  remark,
  mayAnswer,
}: {
  readonly remark: ReviewRunPage["remarks"][number];
  readonly mayAnswer: boolean;
}) {
  return (
    <div>
      {remark.sensor ? (
        <p className="quiet">
          {remark.sensor}
          {remark.setpoint ? ` at ${remark.setpoint}` : ""}, {remark.place}
        </p>
      ) : null}
      <RemarkThread remark={remark} mayAnswer={mayAnswer} />
    </div>
  );
}

/** How far whoever reviews has come, and what was remarked and is open. */
export function ReadingState({ review }: { readonly review: ReviewRunPage }) {
  const { duty } = review;
  const isWaiting = review.state === "submitted" || review.replacing.length > 0;
  const mayRemark = isWaiting || review.state === "returned";
  const open = review.remarks.filter(({ isSettled }) => !isSettled);
  const settled = review.remarks.filter(({ isSettled }) => isSettled);
  if (!mayRemark && review.remarks.length === 0) return null;
  return (
    <Section title="Reading" id="reading">
      {isWaiting && review.standing !== "not-permitted" ? (
        <div className="row">
          <strong>
            opened {duty.opened} of {duty.mustOpen} that must be
          </strong>
          {duty.next ? (
            <LinkButton href={duty.next} kind="quiet">
              Next that must be opened
            </LinkButton>
          ) : null}
        </div>
      ) : null}
      {open.map((remark) => (
        <RemarkWithPlace key={remark.id} remark={remark} mayAnswer={mayRemark} />
      ))}
      {settled.length > 0 ? (
        <Disclosure
          summary={settled.length === 1 ? "1 remark is settled" : `${settled.length} remarks are settled`}
        >
          {settled.map((remark) => (
            <RemarkWithPlace key={remark.id} remark={remark} mayAnswer={false} />
          ))}
        </Disclosure>
      ) : null}
      {mayRemark ? <RemarkOnRun review={review} /> : null}
    </Section>
  );
}
