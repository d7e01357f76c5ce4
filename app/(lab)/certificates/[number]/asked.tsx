import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { FieldList } from "@/app/_ui/field-list";
import { Hash } from "@/app/_ui/hash";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { canSign, SignatureFields, SigningObstacle } from "@/app/(lab)/review/[run]/signature-fields";
import { amendmentKindLabels } from "@/lib/domain/amendment/amendment";
import { intervalCaution } from "@/lib/domain/review/speaks-of-interval";
import type { Actor } from "@/lib/domain/staff/actor";
import type { CertificatePage } from "@/lib/views/certificate-page";
import { signingStandingView } from "@/lib/views/signing-standing";
import { load } from "@/lib/web/load";
import { dropAmendmentAction, evaluateAgainAction, signAmendmentAction } from "../actions";
import { ComparedResults } from "./compared-results";

type Asked = NonNullable<CertificatePage["asked"]>;

const whyNot = {
  own: "You asked for this yourself. Another signatory signs it.",
  performer: "You measured or evaluated this run yourself. Another signatory signs the new results.",
  "not-permitted": "A signatory decides here.",
} as const;

async function Sign({ actor, asked }: { readonly actor: Actor; readonly asked: Asked }) {
  const { reviewedHash, signing } = asked;
  if (signing !== "open") return <p className="quiet">{whyNot[signing]}</p>;
  if (reviewedHash === null) return null;
  if (asked.reading?.next)
    return <p className="quiet">It is signed here once each new result was opened by you.</p>;
  const standing = await load(signingStandingView(actor, new Date()));
  if (!canSign(standing)) return <SigningObstacle standing={standing} />;
  return (
    <ActionForm action={signAmendmentAction} label="Sign the new certificate">
      <input type="hidden" name="amendmentId" value={asked.id} />
      <input type="hidden" name="reviewedHash" value={reviewedHash} />
      <SignatureFields standing={standing} />
      <div className="form-actions">
        <SubmitButton>Sign off the new certificate</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** The draft; and of new results, how many were opened in the review of their run, as any are before they are signed for. */
function Reading({ asked, run }: { readonly asked: Asked; readonly run: string }) {
  const { draft, reading, reviewedHash } = asked;
  if (!reviewedHash && !reading) return null;
  return (
    <div className="row">
      {reviewedHash ? (
        <LinkButton href={draft} kind="quiet" download>
          Open the draft
        </LinkButton>
      ) : null}
      {reading ? (
        <>
          <LinkButton href={reading.next ?? `/review/${run}`} kind="quiet">
            {reading.next ? "Next that must be opened" : "The review of its run"}
          </LinkButton>
          <StateMark
            state={reading.next ? "waiting" : "done"}
            label={`You opened ${reading.opened} of ${reading.mustOpen} that must be`}
          />
        </>
      ) : null}
    </div>
  );
}

/** Its run is signed off and open for this alone, or returned; while it is in review, nobody changes it under the reader. */
function EvaluateAgain({ page: { content, mayEvaluate, runState } }: { readonly page: CertificatePage }) {
  const { number } = content.run;
  if (runState === "submitted")
    return (
      <p className="quiet">
        Run {number} is in review for its other sensors. It is evaluated again once they are signed for, or
        once it is returned.
      </p>
    );
  if (!mayEvaluate) return null;
  return (
    <ActionForm action={evaluateAgainAction} label="Evaluate the run again">
      <input type="hidden" name="run" value={number} />
      <div className="form-actions">
        <SubmitButton kind="quiet">Evaluate run {number} again</SubmitButton>
        <LinkButton href={`/runs/${number}/windows`} kind="quiet">
          Its windows and states
        </LinkButton>
      </div>
    </ActionForm>
  );
}

type Props = { readonly actor: Actor; readonly page: CertificatePage };

/** What is asked for and waits: what would be said, the draft of it, and who may sign or drop it. */
export function Asked({ actor, page }: Props) {
  const { asked, content } = page;
  if (!asked) return null;
  return (
    <Section title="Asked for, not decided" id="asked">
      <FieldList
        items={[
          { label: "What", value: amendmentKindLabels[asked.kind] },
          { label: "Reason", value: asked.reason },
          {
            label: "Asked by",
            value: (
              <>
                {asked.askedBy}, <Timestamp at={asked.askedAt} precision="minute" />
              </>
            ),
          },
          ...asked.corrections.map(({ label, now, text }) => ({
            label,
            value: now ? (
              <>
                <del>{now}</del> <ins>{text}</ins>
              </>
            ) : (
              text
            ),
          })),
          ...(asked.reviewedHash
            ? [
                {
                  label: "Content hash of the draft",
                  value: <Hash value={asked.reviewedHash} label="Content hash of the draft" />,
                },
              ]
            : []),
        ]}
      />
      {asked.obstacle ? <Notice kind="info">{asked.obstacle}</Notice> : null}
      {asked.speaksOfInterval ? (
        <Notice kind="caution" title="A recalibration interval?">
          {intervalCaution}
        </Notice>
      ) : null}
      <ComparedResults rows={asked.results} />
      <Reading asked={asked} run={content.run.number} />
      {asked.kind === "replacement" ? <EvaluateAgain page={page} /> : null}
      <Sign actor={actor} asked={asked} />
      {asked.mayDrop ? (
        <Disclosure summary="Drop it">
          <ActionForm action={dropAmendmentAction} label="Drop what was asked for">
            <input type="hidden" name="amendmentId" value={asked.id} />
            <TextArea name="reason" label="Why it is not done" rows={2} />
            <div className="form-actions">
              <SubmitButton kind="quiet">Drop it</SubmitButton>
            </div>
          </ActionForm>
        </Disclosure>
      ) : null}
    </Section>
  );
}
