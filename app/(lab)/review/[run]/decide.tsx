import Link from "next/link";
import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { FieldGroup } from "@/app/_ui/field-group";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { ReviewRunPage } from "@/lib/views/review-run";
import { signingStandingView } from "@/lib/views/signing-standing";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { returnRunAction, signOffAction } from "../actions";
import { LetSensorGo } from "./let-sensor-go";
import { SensorChoice } from "./sensor-choice.client";
import { canSign, SignatureFields, SigningObstacle } from "./signature-fields";

type Props = { readonly review: ReviewRunPage };

const whyNot = {
  performer:
    "You measured or evaluated this run yourself. Another signatory reviews it; the quality manager can set a policy for laboratories of two.",
  "not-permitted": "A signatory decides here. You can look at everything.",
} as const;

function Identity({ review }: Props) {
  return (
    <>
      <input type="hidden" name="runId" value={review.runId} />
      <input type="hidden" name="evaluationId" value={review.evaluationId} />
    </>
  );
}

async function SignOffForm({ review }: Props) {
  if (review.doubtObstacle !== "")
    return (
      <Notice kind="caution" title="Nothing can be signed here yet">
        {review.doubtObstacle}{" "}
        {review.inDoubt.flatMap(({ id, isExamined, report, tag }) =>
          isExamined
            ? []
            : [
                <Link key={id} href={report ? `/quality/${report}` : `/standards/${id}`}>
                  {report ?? tag}
                </Link>,
                " ",
              ],
        )}
      </Notice>
    );
  const standing = await load(signingStandingView(await requirePermission("review.read"), new Date()));
  const lots = review.lots.flatMap(({ sensorIds, tags, customer, part, draftHash, obstacle }) =>
    draftHash && obstacle === ""
      ? [
          {
            value: `${sensorIds.join("+")} ${draftHash}`,
            label: `${tags.join(", ")} (${customer}), ${part}`,
            contentHash: draftHash,
          },
        ]
      : [],
  );
  const open = review.sensors.filter((sensor) => !sensor.certificate && sensor.reviewedHash);
  if (open.length + lots.length === 0)
    return (
      <p>
        No certificate can be signed off here. Settle what stands in its way, or return the run with a reason.
      </p>
    );
  if (!canSign(standing)) return <SigningObstacle standing={standing} />;
  return (
    <ActionForm action={signOffAction} label="Sign off">
      <Identity review={review} />
      <FieldGroup
        legend="Certificates to sign off"
        hint="What you sign is what the draft says: its content hash, shown with each, goes with your signature."
      >
        <SensorChoice
          choices={[
            ...lots,
            ...open.map((sensor) => ({
              value: `${sensor.id} ${sensor.reviewedHash}`,
              label: `${sensor.tag}, ${sensor.serial} (${sensor.customer})`,
              contentHash: sensor.reviewedHash ?? "",
            })),
          ]}
        />
      </FieldGroup>
      {review.standing === "with-reason" ? (
        <TextArea
          name="exceptionReason"
          label="Why you sign what you measured"
          hint="You took part in this measurement. The policy allows it with a reason; somebody else takes a second look later."
          rows={2}
        />
      ) : null}
      <SignatureFields standing={standing} />
      <div className="form-actions">
        <SubmitButton>Sign off</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** The two ways out of a review: sign off, or return with a reason. */
export function Decide({ review }: Props) {
  const { standing } = review;
  if (standing === "not-permitted" || standing === "performer")
    return (
      <Section title="Decide" id="decide">
        <Notice kind="info">{whyNot[standing]}</Notice>
      </Section>
    );
  return (
    <Section title="Decide" id="decide">
      <SignOffForm review={review} />
      <LetSensorGo review={review} />
      <Disclosure summary="Return the run to the technician">
        <ActionForm action={returnRunAction} label="Return">
          <Identity review={review} />
          <TextArea
            name="reason"
            label="What to look at"
            hint="The technician reads this. Readings, windows and results stay; certificates already signed off stay valid."
            rows={3}
          />
          <div className="form-actions">
            <SubmitButton kind="quiet">Return the run</SubmitButton>
          </div>
        </ActionForm>
      </Disclosure>
    </Section>
  );
}
