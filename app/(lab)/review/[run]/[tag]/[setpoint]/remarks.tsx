import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { type CommentPlace, commentPlaceLabels } from "@/lib/domain/review/comment-places";
import type { ReviewResultPage } from "@/lib/views/review-result";
import type { Remark } from "@/lib/views/review-result-duty";
import { answerCommentAction, commentAction } from "../../../actions";

type Duty = ReviewResultPage["duty"];

function Answer({ remark }: { readonly remark: Remark }) {
  return (
    <ActionForm action={answerCommentAction} label={`Answer remark ${remark.id}`}>
      <input type="hidden" name="commentId" value={remark.id} />
      <TextArea name="text" label="Answer" rows={2} />
      {remark.maySettle ? (
        <CheckboxField name="settles" label="This settles it" />
      ) : (
        <p className="quiet">Whoever made the remark settles it, or a signatory.</p>
      )}
      <div className="form-actions">
        <SubmitButton kind="quiet">Answer</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** One remark with its answers, where it stands. */
export function RemarkThread({
  remark,
  mayAnswer,
}: {
  readonly remark: Remark;
  readonly mayAnswer: boolean;
}) {
  return (
    <div data-remark={remark.isSettled ? "settled" : "open"}>
      <p>
        <StateMark
          state={remark.isSettled ? "done" : "exception"}
          label={remark.isSettled ? "Settled" : "Open remark"}
        />{" "}
        {remark.text}{" "}
        <span className="quiet">
          {remark.by}, <Timestamp at={remark.at} precision="minute" />, evaluation {remark.evaluation}
        </span>
      </p>
      {remark.answers.length > 0 ? (
        <ul className="plain-list">
          {remark.answers.map((answer) => (
            <li key={answer.id}>
              {answer.text}{" "}
              <span className="quiet">
                {answer.by}, <Timestamp at={answer.at} precision="minute" />
                {answer.settles ? ", settled it" : ""}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
      {mayAnswer && !remark.isSettled ? (
        <Disclosure summary="Answer">
          <Answer remark={remark} />
        </Disclosure>
      ) : null}
    </div>
  );
}

/** What was said of one number, at that number, and room to say something. */
export function RemarksAt({ duty, place }: { readonly duty: Duty; readonly place: CommentPlace }) {
  const here = duty.remarks.filter((one) => one.place === place && one.setpointId !== null);
  if (here.length === 0 && !duty.mayRemark) return null;
  const { ids } = duty;
  return (
    <div id={`remarks-${place}`}>
      {here.map((remark) => (
        <RemarkThread key={remark.id} remark={remark} mayAnswer={duty.mayRemark} />
      ))}
      {duty.mayRemark ? (
        <Disclosure summary={`Remark on ${commentPlaceLabels[place]}`}>
          <ActionForm action={commentAction} label={`Remark on ${commentPlaceLabels[place]}`}>
            <input type="hidden" name="runId" value={ids.runId} />
            <input type="hidden" name="evaluationId" value={ids.evaluationId} />
            <input type="hidden" name="sensorId" value={ids.sensorId} />
            <input type="hidden" name="setpointId" value={ids.setpointId} />
            <input type="hidden" name="place" value={place} />
            <TextArea
              name="text"
              label="Remark"
              hint="It stays at this number. Until it is settled, the sensor is not signed for."
              rows={2}
            />
            <div className="form-actions">
              <SubmitButton kind="quiet">Leave the remark</SubmitButton>
            </div>
          </ActionForm>
        </Disclosure>
      ) : null}
    </div>
  );
}
