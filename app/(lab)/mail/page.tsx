import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { PageTurns } from "@/app/_ui/page-turns";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import { isoDay } from "@/lib/domain/calibration/due";
import { readMailQuery } from "@/lib/domain/mail/list-query";
import { mailView } from "@/lib/views/mail";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { DueTable } from "./due-table";
import { MessageTable } from "./message-table";

export const metadata = { title: "Mail" };

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export default async function MailPage({ searchParams }: Props) {
  const actor = await requirePermission("mail.manage");
  const today = isoDay(new Date());
  const query = readMailQuery(await searchParams);
  const { due, nextReminderOn, recipients, messages, ...turns } = await load(mailView(actor, today, query));
  const unsent = messages.filter(({ state }) => state === "given-up").length;
  const next =
    nextReminderOn === null ? (
      "Nothing that is known will come due."
    ) : (
      <>
        Next reminder: <Timestamp at={nextReminderOn} precision="day" />
        {recipients.length > 0 ? `, to ${recipients.join(", ")}` : null}
      </>
    );
  return (
    <Page
      title="Mail"
      lead="What is due, who is told, and every message the platform has written. Reminders go out once a day: once when a thing comes due, and once when it is out of date."
    >
      {recipients.length === 0 ? (
        <Notice kind="caution" title="Caution: nobody is reminded">
          There is no active quality manager. Reminders wait until there is one.
        </Notice>
      ) : null}
      {unsent > 0 ? (
        <Notice kind="caution" title={`Caution: ${unsent} not sent`}>
          The mail server refused every attempt; what it said stands beside each. They are not tried again by
          themselves.
        </Notice>
      ) : null}
      <Section title="Due and out of date" note={next} wide>
        <DueTable due={due} />
      </Section>
      <Section title="Messages" note="The newest first." wide>
        <MessageTable messages={messages} />
        <PageTurns path="/mail" query={query} next={turns.next} previous={turns.previous} of="messages" />
      </Section>
    </Page>
  );
}
