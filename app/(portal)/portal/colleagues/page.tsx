import type { Metadata } from "next";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import { portalColleaguesView } from "@/lib/views/portal/colleagues";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { ColleagueItem } from "./colleague-item";

export const metadata: Metadata = { title: "Your colleagues" };

export default async function ColleaguesPage() {
  const actor = await requirePermission("portal.manage");
  const { people, invitations } = await load(portalColleaguesView(actor, new Date()));
  return (
    <Page title="Your colleagues" lead="Who of you can sign in here, and what each of them may do.">
      <Section title="People">
        <ul className="stack plain-list">
          {people.map((person) => (
            <ColleagueItem key={person.id} person={person} />
          ))}
        </ul>
      </Section>
      {invitations.length > 0 ? (
        <Section title="Invited, not here yet">
          <ul className="plain-list">
            {invitations.map(({ email, name, expiresAt }) => (
              <li key={`${email} ${expiresAt}`}>
                {name} ({email}), the invitation is open until <Timestamp at={expiresAt} precision="day" />
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
    </Page>
  );
}
