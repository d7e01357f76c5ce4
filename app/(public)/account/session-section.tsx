import { ActionForm } from "@/app/_ui/action-form.client";
import { DataTable } from "@/app/_ui/data-table";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { endOtherSessionsAction, endSessionAction } from "./actions";

type Session = {
  readonly id: string;
  readonly device: string;
  readonly atBench: boolean;
  readonly isThis: boolean;
  readonly startedAt: string;
  readonly lastSeenAt: string;
};

const columns = [
  { key: "device", header: "Where" },
  { key: "started", header: "Since" },
  { key: "seen", header: "Last used" },
  { key: "end", header: "This session" },
];

function Ending({ session }: { readonly session: Session }) {
  if (session.isThis) return <strong>the one you are in</strong>;
  return (
    <ActionForm action={endSessionAction} shape="inline" label={`End the session: ${session.device}`}>
      <input type="hidden" name="sessionId" value={session.id} />
      <SubmitButton kind="quiet">End it</SubmitButton>
    </ActionForm>
  );
}

/** Where a person is signed in. */
export function SessionSection({ sessions }: { readonly sessions: readonly Session[] }) {
  return (
    <Section
      title="Where you are signed in"
      note="What a browser says of itself. A session ends after twelve hours; earlier when nobody uses it, except at the bench."
      wide
    >
      <DataTable
        caption="Your sessions"
        captionUnseen
        columns={columns}
        rows={sessions.map((session) => ({
          key: session.id,
          cells: {
            device: `${session.device || "an unknown device"}${session.atBench ? ", at the bench" : ""}`,
            started: <Timestamp at={session.startedAt} />,
            seen: <Timestamp at={session.lastSeenAt} />,
            end: <Ending session={session} />,
          },
        }))}
      />
      {sessions.length > 1 ? (
        <ActionForm action={endOtherSessionsAction} label="End all other sessions">
          <div className="form-actions">
            <SubmitButton kind="quiet">End all the others</SubmitButton>
          </div>
        </ActionForm>
      ) : null}
    </Section>
  );
}
