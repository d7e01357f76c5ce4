import type { ReactNode } from "react";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { InDoubtNotice } from "@/app/_ui/in-doubt-notice";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { StateMark } from "@/app/_ui/state-mark";
import { Tabs } from "@/app/_ui/tabs";
import { Thread } from "@/app/_ui/thread";
import type { RunHead } from "@/lib/views/run/run-head";
import { runMarks } from "../run-marks";
import { OrderChangeBanner } from "./order-change/order-change-banner";

type Props = {
  readonly head: RunHead;
  /** The last part of this page's address; "" is the overview. */
  readonly at: "" | "load" | "gate" | "readings" | "windows" | "channels" | "results";
  readonly actions?: ReactNode;
  readonly children: ReactNode;
};

const pages = [
  ["", "At the furnace"],
  ["load", "Load and tips"],
  ["gate", "Gate"],
  ["readings", "Readings"],
  ["windows", "Windows"],
  ["channels", "Channels"],
  ["results", "Results"],
] as const;

/** The frame of every page of a run: its thread, what comes next, and the way to its other pages. */
export function RunPage({ head, at, actions, children }: Props) {
  const href = (page: string) => `/runs/${head.number}${page ? `/${page}` : ""}`;
  return (
    <Page
      title={`Run ${head.number}`}
      crumbs={<Breadcrumb trail={[{ label: "Runs", href: "/runs" }]} />}
      state={<StateMark {...runMarks(head.state)} />}
      lead={`${head.furnace}, ${head.configuration}: ${head.sensorCount} sensor${head.sensorCount === 1 ? "" : "s"} of ${head.customers.join(" and ")}.`}
      thread={
        <Thread
          label={`Thread of run ${head.number}`}
          beads={head.thread.map(({ label, state, page }) => ({
            label,
            state,
            href: page ? href(page) : undefined,
          }))}
          last={`Performed by ${head.performer}.`}
          next={head.next}
        />
      }
      actions={actions}
    >
      <Tabs
        label="Pages of this run"
        current={href(at)}
        tabs={pages.map(([page, label]) => ({ label, href: href(page) }))}
      />
      {head.returnedBecause ? (
        <Notice kind="caution" title="Returned by the signatory">
          {head.returnedBecause}
        </Notice>
      ) : null}
      <OrderChangeBanner run={head.number} mayWork={head.mayWork} changes={head.orderChanges} />
      <InDoubtNotice equipment={head.inDoubt} />
      {children}
    </Page>
  );
}
