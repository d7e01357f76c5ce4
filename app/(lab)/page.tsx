import Link from "next/link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { Stat } from "@/app/_ui/stat";
import { StateMark } from "@/app/_ui/state-mark";
import { isoDay } from "@/lib/domain/calibration/due";
import { shortCount } from "@/lib/domain/list/page";
import { todayView } from "@/lib/views/today";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";

export const metadata = { title: "Today" };

export default async function TodayPage() {
  const actor = await requireStaff();
  const lists = await load(todayView(actor, isoDay(new Date())));
  const waiting = lists.filter((list) => list.count > 0);
  return (
    <Page
      title="Today"
      lead={`What waits for you, ${actor.name}, in the order it goes through the laboratory.`}
    >
      {lists.length > 0 ? (
        <div className="stats" style={{ marginBottom: "var(--s-5)" }}>
          {lists.map((list) => (
            <Stat key={list.key} value={shortCount(list.count)} label={list.title} href={list.href} />
          ))}
        </div>
      ) : null}
      {waiting.length === 0 ? (
        <EmptyState title="Nothing waits for you">
          New orders, sensors, runs and results appear here as soon as they need somebody with your roles.
        </EmptyState>
      ) : null}
      {waiting.map((list) => (
        <Section
          key={list.key}
          title={list.title}
          note={
            list.count > list.items.length ? <Link href={list.href}>All {shortCount(list.count)}</Link> : null
          }
        >
          <ul className="list">
            {list.items.map((item) => (
              <li key={item.key} className="row">
                <Link href={item.href}>{item.label}</Link>
                {item.state ? (
                  <StateMark state={item.state} label={item.detail} />
                ) : (
                  <span>{item.detail}</span>
                )}
              </li>
            ))}
          </ul>
        </Section>
      ))}
    </Page>
  );
}
