import { ActionForm } from "@/app/_ui/action-form.client";
import { DataTable } from "@/app/_ui/data-table";
import { Disclosure } from "@/app/_ui/disclosure";
import { EmptyState } from "@/app/_ui/empty-state";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { mailStateLabels } from "@/lib/domain/mail/labels";
import type { MailPage } from "@/lib/views/mail";
import { sendAgainAction } from "./actions";
import styles from "./mail.module.css";

type Message = MailPage["messages"][number];

const columns = [
  { key: "message", header: "Message" },
  { key: "to", header: "To" },
  { key: "written", header: "Written" },
  { key: "state", header: "State" },
  { key: "again", header: "If not sent" },
];

const wordOf = ({ state, last }: Message): string =>
  state === "sent" && last?.transport === "file" ? "Written as a file" : mailStateLabels[state];

function StateCell({ message }: { readonly message: Message }) {
  const { state, last, attempts } = message;
  return (
    <>
      <StateMark state={state} label={wordOf(message)} />
      {last ? (
        <div className="quiet">
          <Timestamp at={last.at} />, attempt {attempts}: <span className={styles.wraps}>{last.detail}</span>
        </div>
      ) : (
        <div className="quiet">no attempt yet</div>
      )}
    </>
  );
}

function SendAgain({ message }: { readonly message: Message }) {
  return (
    <ActionForm action={sendAgainAction} shape="inline" label={`Send again: ${message.subject}`}>
      <input type="hidden" name="mailMessageId" value={message.id} />
      <SubmitButton kind="quiet" pending="Asking…">
        Send again now
      </SubmitButton>
    </ActionForm>
  );
}

/** Every message that was written, with how its sending went; the newest first. */
export function MessageTable({ messages }: { readonly messages: readonly Message[] }) {
  return (
    <DataTable
      caption="Messages, the newest first"
      captionUnseen
      columns={columns}
      rows={messages.map((message) => ({
        key: message.id,
        ...(message.state === "given-up" ? { tone: "bad" as const } : {}),
        ...(message.state === "failing" ? { tone: "watch" as const } : {}),
        cells: {
          message: (
            <Disclosure summary={message.subject}>
              <pre className={styles.letter}>{message.body}</pre>
              <p className={`quiet ${styles.wraps}`}>Message-ID {message.messageId}</p>
            </Disclosure>
          ),
          to: <span className={styles.address}>{message.recipient}</span>,
          written: <Timestamp at={message.writtenAt} />,
          state: <StateCell message={message} />,
          again:
            message.state === "failing" || message.state === "given-up" ? (
              <SendAgain message={message} />
            ) : (
              ""
            ),
        },
      }))}
      empty={
        <EmptyState title="No message yet">
          The first one is written when something comes due, and goes to every quality manager.
        </EmptyState>
      }
    />
  );
}
