import Link from "next/link";
import { FurnaceDaysChart } from "@/app/_ui/drawing/furnace-days-chart";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { Stat } from "@/app/_ui/stat";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { shortCount } from "@/lib/domain/list/page";
import { boardView } from "@/lib/views/board";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { DoubtfulTable, FurnaceTable } from "./board-tables";

export const metadata = { title: "The week" };

export default async function BoardPage() {
  const actor = await requireStaff();
  const board = await load(boardView(actor, new Date()));
  const view = { ...board, title: "Furnaces in the next ten days" };
  return (
    <Page
      title="The week"
      actions={
        <LinkButton href="/board/hours" kind="quiet">
          Hours and rates
        </LinkButton>
      }
      lead={
        <>
          What was promised, what is here, what is hot, what is late, what can be sent. As of{" "}
          <Timestamp at={board.now} precision="minute" />.
        </>
      }
    >
      <div className="board">
        {board.numbers.map(({ key, label, count, href, tone }) => (
          <Stat
            key={key}
            value={
              tone && count > 0 ? (
                <StateMark state={tone === "bad" ? "out-of-date" : "due"} label={shortCount(count)} />
              ) : (
                shortCount(count)
              )
            }
            label={label}
            href={href}
          />
        ))}
      </div>
      <Section
        id="furnaces"
        title="Furnaces"
        note="Ten days: reserved for promised orders, and the hours of runs and characterisations, as reckoned."
        wide
      >
        {board.furnaces.length === 0 ? (
          <EmptyState title="No furnace yet">A furnace appears here once it is recorded.</EmptyState>
        ) : (
          <>
            <FurnaceDaysChart view={view} />
            <FurnaceTable furnaces={board.furnaces} />
          </>
        )}
      </Section>
      <Section
        title="Late and at risk"
        note={
          board.doubtfulMore > 0 ? (
            <>
              And {board.doubtfulMore} more: <Link href="/orders?only=late">late</Link>,{" "}
              <Link href="/orders?only=risk">at risk</Link>.
            </>
          ) : (
            "By what is left against the working days until the promised day, and by the furnace hours kept for it."
          )
        }
        wide
      >
        {board.doubtful.length === 0 ? (
          <p>Nothing that was promised is late or at risk.</p>
        ) : (
          <DoubtfulTable orders={board.doubtful} />
        )}
      </Section>
    </Page>
  );
}
