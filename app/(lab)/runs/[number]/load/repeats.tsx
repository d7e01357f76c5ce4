import Link from "next/link";
import { ActionForm } from "@/app/_ui/action-form.client";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { RunLoadView } from "@/lib/views/run/run-load";
import { authoriseRepeatAction } from "../../actions";

type Repeat = RunLoadView["repeats"][number];

function AuthoriseForm({ run, repeat }: { readonly run: string; readonly repeat: Repeat }) {
  return (
    <ActionForm action={authoriseRepeatAction} label={`Authorise the repeat of ${repeat.tag}`}>
      <input type="hidden" name="run" value={run} />
      <input type="hidden" name="sensor" value={repeat.tag} />
      <TextArea
        name="reason"
        label={`Why ${repeat.tag} is measured again`}
        hint={`By the order, before anybody knows the result: ${repeat.rule.toLowerCase()}. Both measurements stay, and the certificate says that there were two.`}
        rows={2}
      />
      <div className="form-actions">
        <SubmitButton>Authorise</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** Sensors that were measured before: which measurement will count is said before the first reading. */
export function Repeats({ view }: { readonly view: RunLoadView }) {
  if (view.repeats.length === 0) return null;
  const { number, progress } = view.head;
  const open = view.repeats.filter(({ isAuthorised }) => !isAuthorised);
  return (
    <Section title="Measured again" id="repeats" note="Authorised before the first reading of this run.">
      <ul className="plain-list">
        {view.repeats.map((repeat) => (
          <li key={repeat.tag}>
            {repeat.tag}, after run <Link href={`/runs/${repeat.earlierRun}`}>{repeat.earlierRun}</Link>:{" "}
            <StateMark
              state={repeat.isAuthorised ? "done" : "waiting"}
              label={repeat.isAuthorised ? `Authorised. ${repeat.rule}` : "Not authorised yet"}
            />
            {repeat.reason ? ` ${repeat.reason}` : ""}
          </li>
        ))}
      </ul>
      {open.length > 0 && !progress.hasReadings && !view.mayAuthoriseRepeat ? (
        <Notice kind="caution" title="A repeat waits for its authorisation">
          A signatory or the quality manager authorises it here. Until then no reading is taken in.
        </Notice>
      ) : null}
      {view.mayAuthoriseRepeat && !progress.hasReadings
        ? open.map((repeat) => <AuthoriseForm key={repeat.tag} run={number} repeat={repeat} />)
        : null}
    </Section>
  );
}
